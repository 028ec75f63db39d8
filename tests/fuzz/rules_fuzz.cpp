// rules.toml of any bytes: with a fault nothing is open, without one every rule is in its range.
#include "fuzz/expect.h"
#include "fuzz/input_folder.h"
#include "ports/toml/rules_file.h"

namespace {

using namespace rimehaul;
using fuzz::expect;
using fuzz::expect_within;

void look_at_bulletin(const passage::Rules& rules) {
  const passage::BulletinStep* below = nullptr;
  for (const passage::BulletinStep& step : rules.bulletin) {
    expect_within(step.keep_off.value(), 0, 2000, "a distance to keep off");
    if (below != nullptr) {
      expect(below->keep_off <= step.keep_off, "a higher level keeps off no less");
      expect(step.all_closed || !below->all_closed, "a higher level closes what a lower one does");
      expect(below->decision_may_permit || !step.decision_may_permit || below->all_closed,
             "a higher level leaves no more to a decision");
    }
    below = &step;
  }
}

void look_at(const passage::Rules& rules, bool has_fault) {
  if (has_fault) {
    expect(std::isnan(rules.allowed_share), "with a fault in the rules nothing is open");
    return;
  }
  expect(rules.allowed_share > 0, "the allowed share is above 0");
  expect_within(rules.allowed_share, 0, 1, "the allowed share");
  expect_within(rules.confidence_k, 1.645, 6, "the confidence");
  expect_within(rules.roll_over_reserve, 0, 0.7, "the roll-over reserve");
  expect_within(rules.fuel_reserve, 0.1, 0.9, "the fuel reserve");
  expect_within(rules.reaction.value(), 1, 10, "the reaction time");
  expect_within(rules.start_slope_dry.degrees(), 15, 30.0001, "the start slope of dry snow");
  expect_within(rules.start_slope_wet.degrees(), 15, 25.0001, "the start slope of wet snow");
  for (const passage::DriverLevel& level : rules.driver_levels) {
    fuzz::expect_name(level.name);
    expect(level.allowed_share > 0 && level.allowed_share <= rules.allowed_share,
           "a driver's share is above 0 and not above the site's");
  }
  look_at_bulletin(rules);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  static const fuzz::InputFolder folder;
  folder.write("rules.toml", fuzz::text_of(bytes, size));
  fuzz::try_to_read(
      [] {
        return ports::toml::read_rules({folder.file("rules.toml"), "rules.toml"});
      },
      look_at);
  return 0;
}
