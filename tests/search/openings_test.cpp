// What would open a whole way and each cause, asked of the real judge on small sites.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "passage/demo_scene.h"
#include "search/obstacles.h"

using namespace rimehaul;
using namespace rimehaul::search;
using namespace rimehaul::testing;

namespace {

/// Three trails in a line to the north, 100 m each, between Start and End.
testing::TestTrails three_in_a_line() {
  testing::TestTrails all;
  for (int i = 0; i < 3; ++i) {
    all.trails.push_back(
        testing::plain_trail("Part " + std::to_string(i + 1),
                             {testing::place(0, 100.0 * i), testing::place(0, 100.0 * (i + 1))}));
  }
  all.stations = {testing::plain_station("Start", testing::place(0, 0)),
                  testing::plain_station("End", testing::place(0, 300))};
  return all;
}

RouteQuestion start_to_end() {
  RouteQuestion question;
  question.stations = {0, 1};
  question.depart = mid_morning();
  return question;
}

/// The answer for a way that is closed as the rig stands, explained.
NoRoute explained(const passage::Scene& scene, const passage::Judge& judge) {
  const RouteAnswer answer = find_routes(scene.network, judge, start_to_end());
  REQUIRE(std::holds_alternative<NoRoute>(answer));
  return explain_obstacles(std::get<NoRoute>(answer), judge, start_to_end());
}

/// A single turn, as if it had been found in the way.
NoRoute of_turn(trails::LegId from, trails::LegId into, const passage::Judge& judge) {
  NoRoute none;
  none.obstacles.push_back({.leg = into,
                            .turn_from = from,
                            .entry = mid_morning(),
                            .finding = judge.judge_turn(from, into, mid_morning()).binding});
  return explain_obstacles(none, judge, start_to_end());
}

bool within(const std::vector<passage::LoadInterval>& intervals, units::Kilograms load) {
  return std::ranges::any_of(intervals, [&](const passage::LoadInterval& interval) {
    return interval.from <= load && load <= interval.to;
  });
}

}  // namespace

TEST_CASE("a rule against trailers in this snow is one cause on all legs, and no trailer opens") {
  passage::Scene scene = scene_of({.ground = plane(0.0, 0.0)}, three_in_a_line());
  scene.rules.wettest_towing = snow::Wetness::dry;
  const rig::Rig rig = towing_rig();
  const auto moist = snow_of(snow::Wetness::moist);
  const passage::Judge judge{scene, rig, moist};
  const NoRoute none = explained(scene, judge);
  REQUIRE(none.obstacles.size() == 5);
  CHECK(none.way == std::vector{trails::LegId{0}, trails::LegId{2}, trails::LegId{4}});
  const auto by_rule = std::ranges::find_if(none.causes, [](const Cause& cause) {
    return cause.finding.check == passage::Check::towing_in_wet_snow;
  });
  REQUIRE(by_rule != none.causes.end());
  CHECK(by_rule == none.causes.begin());
  CHECK(by_rule->obstacles.size() == 5);
  CHECK(by_rule->lifts.without_trailer);
  CHECK_FALSE(by_rule->lifts.loads.any());
  // What opens the whole way opens every leg and every turn of it, and nothing else does.
  rig::Rig alone = rig;
  alone.trailer.reset();
  alone.load.towed = units::Kilograms{0};
  const passage::Judge without{scene, alone, moist};
  CHECK(none.opens.without_trailer == std::holds_alternative<std::vector<Route>>(
                                          find_routes(scene.network, without, start_to_end())));
  CHECK(none.opens.without_trailer);
}

TEST_CASE("one load that opens one leg but not the next opens no way") {
  // 6 % on the first trail, 1 % on the others.
  const auto bent = [](double /*east*/, double north) {
    return 1000.0 + (north < 100 ? 0.06 * north : 6.0 + 0.01 * (north - 100));
  };
  const passage::Scene scene = scene_of({.ground = bent}, three_in_a_line());
  rig::Rig rig = towing_rig();
  rig.load.towed = units::Kilograms{300};
  const auto snow = snow_of(snow::Wetness::dry);
  const passage::Judge judge{scene, rig, snow};
  const NoRoute none = explained(scene, judge);
  REQUIRE(none.obstacles.size() >= 2);
  for (double towed = 0; towed <= 300; towed += 5) {
    rig::Rig other = rig;
    other.load.towed = units::Kilograms{towed};
    const passage::Judge then{scene, other, snow};
    const bool open = std::holds_alternative<std::vector<Route>>(
        find_routes(scene.network, then, start_to_end()));
    CAPTURE(towed);
    CHECK(open == within(none.opens.loads.towed, other.load.towed));
  }
}

TEST_CASE("a turn that the load closes is told with the loads that open it") {
  // Up 4 % and round a gentle corner with a heavy sled.
  TestTrails all = three_in_a_line();
  all.trails[1] = testing::plain_trail("Part 2", {testing::place(0, 100), testing::place(20, 200)});
  all.trails.pop_back();
  all.stations.pop_back();
  const passage::Scene scene = scene_of({.ground = plane(0.0, 0.04)}, all);
  rig::Rig rig = towing_rig();
  rig.load.towed = units::Kilograms{300};
  const auto snow = snow_of(snow::Wetness::dry);
  const passage::Judge judge{scene, rig, snow};
  REQUIRE(judge.judge_turn(trails::LegId{0}, trails::LegId{2}, mid_morning()).verdict ==
          passage::Verdict::closed);
  NoRoute none;
  none.obstacles.push_back(
      {.leg = trails::LegId{2},
       .turn_from = trails::LegId{0},
       .entry = mid_morning(),
       .finding = judge.judge_turn(trails::LegId{0}, trails::LegId{2}, mid_morning()).binding});
  RouteQuestion question;
  question.stations = {0, 0};
  question.depart = mid_morning();
  none = explain_obstacles(none, judge, question);
  const auto& towed = none.obstacles[0].opens.loads.towed;
  REQUIRE(towed.size() == 1);
  CHECK(towed[0].to < units::Kilograms{300});
  const auto open_with = [&](units::Kilograms load) {
    rig::Rig other = rig;
    other.load.towed = load;
    return passage::Judge{scene, other, snow}
               .judge_turn(trails::LegId{0}, trails::LegId{2}, mid_morning())
               .verdict == passage::Verdict::open;
  };
  CHECK(open_with(towed[0].from));
  CHECK(open_with(towed[0].to));
  CHECK_FALSE(open_with(towed[0].to + units::Kilograms{1}));
}

TEST_CASE("a turn too tight for the trailer is told to open without it, and with no load") {
  const passage::Scene scene = scene_of({testing::rolling()}, two_ways());
  const rig::Rig rig = towing_rig();
  const auto snow = snow_of(snow::Wetness::dry);
  const passage::Judge judge{scene, rig, snow};
  rig::Rig alone = rig;
  alone.trailer.reset();
  alone.load.towed = units::Kilograms{0};
  const passage::Judge judge_alone{scene, alone, snow};
  int opened = 0;
  const auto& legs = scene.network.legs;
  for (std::uint32_t from = 0; from < legs.size(); ++from) {
    for (std::uint32_t into = 0; into < legs.size(); ++into) {
      const trails::LegId before{from};
      const trails::LegId after{into};
      if (legs[from].to != legs[into].from || after == trails::opposite_of(before) ||
          judge.judge_turn(before, after, mid_morning()).verdict != passage::Verdict::closed) {
        continue;
      }
      const NoRoute none = of_turn(before, after, judge);
      const bool opens =
          judge_alone.judge_turn(before, after, mid_morning()).verdict == passage::Verdict::open;
      CHECK(none.obstacles[0].opens.without_trailer == opens);
      CHECK_FALSE(none.obstacles[0].opens.loads.any());
      CHECK(none.causes.size() >= 1);
      opened += opens ? 1 : 0;
    }
  }
  CHECK(opened > 0);
}

TEST_CASE("bed and sled both too heavy open with a pair of loads, every judged pair of it") {
  const passage::Scene scene = scene_of({.ground = plane(0.0, 0.0)}, straight_trail(0));
  rig::Rig rig = towing_rig();
  rig.load.bed = units::Kilograms{250};
  rig.load.towed = units::Kilograms{300};
  const auto snow = snow_of(snow::Wetness::dry);
  const passage::Judge judge{scene, rig, snow};
  const NoRoute none = explained(scene, judge);
  CHECK(none.opens.loads.bed.empty());
  CHECK(none.opens.loads.towed.empty());
  REQUIRE(none.opens.loads.both.size() == 1);
  const passage::LoadPair pair = none.opens.loads.both[0];
  for (units::Kilograms bed = pair.bed.from; bed <= pair.bed.to; bed += units::Kilograms{50}) {
    for (units::Kilograms towed = pair.towed.from; towed <= pair.towed.to;
         towed += units::Kilograms{50}) {
      rig::Rig other = rig;
      other.load.bed = bed;
      other.load.towed = towed;
      const passage::Judge then{scene, other, snow};
      CHECK(then.judge(trails::LegId{0}, mid_morning()).verdict == passage::Verdict::open);
    }
  }
}

TEST_CASE("a load that opens a way which also waits for a decision says so, unless it is taken") {
  // Ground of 40 degrees within 10 m of the trail, where level 1 of the bulletin asks.
  const Surface bank = [](double east_m, double /*north_m*/) {
    return 1000.0 + (east_m < 7.0 ? 0.0 : std::min(east_m - 7.0, 60.0) * 0.84);
  };
  const passage::Scene scene = scene_of({.ground = bank, .cell_m = 2.0}, straight_trail(0));
  rig::Rig rig = solo_rig();
  rig.load.bed = units::Kilograms{250};
  const auto snow = snow_of(snow::Wetness::dry);
  const passage::Judge judge{scene, rig, snow};
  const NoRoute none = explained(scene, judge);
  REQUIRE(none.opens.loads.bed.size() == 1);
  CHECK(none.opens.loads.bed[0] ==
        passage::LoadInterval{units::Kilograms{0}, units::Kilograms{175}});  // 0.7 of 250
  CHECK(none.opens.and_decision);
  CHECK(none.causes.size() == 2);
  RouteQuestion permitted = start_to_end();
  permitted.permitted_by = "A. Planner";
  const RouteAnswer answer = find_routes(scene.network, judge, permitted);
  REQUIRE(std::holds_alternative<NoRoute>(answer));
  const NoRoute with = explain_obstacles(std::get<NoRoute>(answer), judge, permitted);
  CHECK(with.opens.loads == none.opens.loads);
  CHECK_FALSE(with.opens.and_decision);
  CHECK(with.causes.size() == 1);
}
