// Rules as a person orders them, laid over those of the site.
#include <doctest/doctest.h>

#include "examples.h"
#include "ports/toml/rules_file.h"

namespace rimehaul::ports::toml {

namespace {

using testing::TestFolder;
using testing::told_of;

std::string refusal_of(const std::string& text) {
  try {
    return rule_change(text).key;
  } catch (const base::BadInput& bad) {
    return bad.what();
  }
}

}  // namespace

TEST_CASE("an ordered rule is one key and its value") {
  CHECK(rule_change("most_wind_kmh = 50").key == "most_wind_kmh");
  CHECK(rule_change("passengers.wettest = \"dry\"").key == "passengers.wettest");
  for (const char* none :
       {"", "# nothing", "most_wind_kmh = 50\nsetback_m = 4", "passengers = {}"}) {
    CAPTURE(none);
    CHECK(refusal_of(none).find("is no single rule") != std::string::npos);
  }
  CHECK(refusal_of("most_wind_kmh").find("correct the TOML there") != std::string::npos);
}

TEST_CASE(
    "ordered rules stand in place of the file's, the later ones winning, all else as it was") {
  const TestFolder folder;
  const auto file = folder.with("rules.toml", testing::rules_example());
  const passage::Rules plain = read_rules(file).data;
  const auto [rules, faults] =
      read_rules_with(file, {rule_change("passengers.wettest = \"moist\""),
                             rule_change("most_wind_kmh = 36"), rule_change("most_wind_kmh = 18")});
  CHECK(faults.empty());
  CHECK(rules.passengers.wettest == snow::Wetness::moist);
  CHECK(rules.passengers.with_trailer == plain.passengers.with_trailer);
  CHECK(rules.most_wind == units::MetresPerSecond{5});
  CHECK(rules.setback == plain.setback);
  CHECK(rules.driver_levels == plain.driver_levels);
  CHECK(rules.bulletin == plain.bulletin);
}

TEST_CASE(
    "an ordered rule out of range, or that there is none of, closes and is told by its text") {
  const TestFolder folder;
  const auto file = folder.with("rules.toml", testing::rules_example());
  CHECK(told_of([&] { return read_rules_with(file, {rule_change("most_wind_kmh = 500")}); }) ==
        std::vector<std::string>{"most_wind_kmh = 500: line 1 (most_wind_kmh): 500 is out of "
                                 "range; write a number above 0, up to 200"});
  const auto [rules, faults] = read_rules_with(file, {rule_change("most_snow = 5")});
  CHECK(faults.size() == 1);
  CHECK_FALSE(passage::allowed_share_for(rules, "seasoned").has_value());
}

}  // namespace rimehaul::ports::toml
