// Work shared out over the cores is all done, once, and a fault of any part is told.
#include "app/crew_on_cores.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <atomic>
#include <stdexcept>
#include <string>
#include <vector>

#include "day/round_plan.h"
#include "passage/demo_scene.h"

namespace rimehaul::app {
namespace {

class Tally final : public base::Work {
 public:
  explicit Tally(std::size_t parts) : done(parts) {}
  void do_part(std::size_t part) override {
    if (part == fails_at) {
      throw std::runtime_error{"a part that fails"};
    }
    ++done[part];
  }
  std::vector<std::atomic<int>> done;
  std::size_t fails_at = ~std::size_t{0};
};

/// What the work throws to whoever gave it out; empty: nothing.
std::string thrown_by(Tally& tally) {
  try {
    CrewOnCores{}.do_all(tally, tally.done.size());
  } catch (const std::runtime_error& thrown) {
    return thrown.what();
  }
  return "";
}

day::Errand sacks(const std::string& to, double kg) {
  return {.what = "sacks", .from = "Depot", .to = to, .bed = units::Kilograms{kg}};
}

}  // namespace

TEST_CASE("every part is done once, whether there are fewer or more than cores") {
  CHECK(hands() >= 1);
  for (const std::size_t parts :
       {std::size_t{0}, std::size_t{1}, std::size_t{3}, std::size_t{1000}}) {
    Tally tally{parts};
    CrewOnCores{}.do_all(tally, parts);
    CHECK(std::ranges::all_of(tally.done, [](const auto& times) { return times == 1; }));
  }
}

TEST_CASE("a part that throws is told, what is under way ends, and nothing long after it begins") {
  Tally tally{100'000};
  tally.fails_at = 10;
  CHECK(thrown_by(tally) == "a part that fails");
  CHECK(std::ranges::all_of(tally.done, [](const auto& times) { return times <= 1; }));
  CHECK(tally.done.back() == 0);
}

TEST_CASE("a round planned on all cores is the one planned on one, to the last digit") {
  const passage::Scene scene =
      testing::scene_of({.ground = testing::rolling()}, testing::two_ways());
  rig::Rig rig = testing::solo_rig();
  rig.load.bed = units::Kilograms{0};
  const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::moist);
  const passage::Judge judge{scene, rig, snow};
  const day::Round round{
      .start = "Depot", .end = "Depot", .errands = {sacks("Hut", 90), sacks("Lodge", 41)}};
  const auto stops = std::get<day::RoundStops>(day::stops_of(round, scene.network));
  const units::Instant depart = testing::mid_morning();
  day::RoundQuestion question{.round = round,
                              .stops = stops,
                              .hours = {depart, {depart.seconds + 36'000}},
                              .permitted_by = ""};
  const auto alone = std::get<day::RoundPlan>(day::plan_round(judge, question));
  CrewOnCores crew;
  question.crew = &crew;
  const auto on_all = std::get<day::RoundPlan>(day::plan_round(judge, question));
  REQUIRE(on_all.hops.size() == 3);
  REQUIRE(alone.hops.size() == 3);
  for (std::size_t i = 0; i < 3; ++i) {
    CHECK(on_all.hops[i].hop == alone.hops[i].hop);
    CHECK(on_all.hops[i].arrives == alone.hops[i].arrives);
    CHECK(on_all.hops[i].rig.load == alone.hops[i].rig.load);
    CHECK(on_all.hops[i].route.worst_share == alone.hops[i].route.worst_share);
  }
  CHECK(on_all.fuel == alone.fuel);
}

}  // namespace rimehaul::app
