// What would open a blocked way, asked of the real judge on a small site.
#include "search/obstacles.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "passage/demo_scene.h"

using namespace rimehaul;
using namespace rimehaul::search;
using namespace rimehaul::testing;

namespace {

/// The answer for a trail that is closed as the rig stands, explained.
NoRoute explained(const passage::Scene& scene, const passage::Judge& judge) {
  RouteQuestion question;
  question.stations = {0, 1};
  question.depart = mid_morning();
  const RouteAnswer answer = find_routes(scene.network, judge, question);
  REQUIRE(std::holds_alternative<NoRoute>(answer));
  return explain_obstacles(std::get<NoRoute>(answer), judge, question);
}

/// One straight trail; leg 0 climbs where the grade is above 0.
passage::Scene sloping_scene(double grade) {
  return scene_of({.ground = plane(0.0, grade)}, straight_trail(0));
}

}  // namespace

TEST_CASE("on gentle ground the rig finds its way and nothing has to be opened") {
  const passage::Scene scene = sloping_scene(-0.05);
  const rig::Rig rig = towing_rig();
  const auto snow = snow_of(snow::Wetness::dry);
  const passage::Judge judge{scene, rig, snow};
  RouteQuestion question;
  question.stations = {0, 1};
  question.depart = mid_morning();
  CHECK(std::holds_alternative<std::vector<Route>>(find_routes(scene.network, judge, question)));
}

TEST_CASE("a climb that the trailer closes is said to open without it, if it does") {
  bool met = false;
  for (double grade = 0.06; grade < 0.3; grade += 0.01) {
    const passage::Scene scene = sloping_scene(grade);
    const rig::Rig towing = towing_rig();
    const auto snow = snow_of(snow::Wetness::dry);
    const passage::Judge judge{scene, towing, snow};
    if (judge.judge(trails::LegId{0}, mid_morning()).verdict == passage::Verdict::open) {
      continue;
    }
    const NoRoute none = explained(scene, judge);
    REQUIRE(none.obstacles.size() == 1);
    rig::Rig alone = towing;
    alone.trailer.reset();
    alone.load.towed = units::Kilograms{0};
    const passage::Judge judge_alone{scene, alone, snow};
    const bool opens =
        judge_alone.judge(trails::LegId{0}, mid_morning()).verdict == passage::Verdict::open;
    CHECK(none.obstacles[0].opens.without_trailer == opens);
    met = met || opens;
  }
  CHECK(met);
}

TEST_CASE("every snow state that is said to open a leg opens it, and no other does") {
  const passage::Scene scene = sloping_scene(-0.05);
  const rig::Rig rig = towing_rig();
  const auto slush = snow_of(snow::Wetness::slush);
  const passage::Judge judge{scene, rig, slush};
  const NoRoute none = explained(scene, judge);
  REQUIRE(none.obstacles.size() == 1);
  const auto& told = none.obstacles[0].opens.snow;
  CHECK_FALSE(told.empty());
  for (const auto wetness : {snow::Wetness::dry, snow::Wetness::moist, snow::Wetness::wet,
                             snow::Wetness::very_wet, snow::Wetness::slush}) {
    for (const auto surface : {snow::Surface::groomed, snow::Surface::fresh,
                               snow::Surface::refrozen, snow::Surface::ice}) {
      const auto there = snow_of(wetness, surface);
      const passage::Judge other{scene, rig, there};
      const bool opens =
          other.judge(trails::LegId{0}, mid_morning()).verdict == passage::Verdict::open;
      const bool is_told =
          std::find(told.begin(), told.end(), snow::SnowState{wetness, surface}) != told.end();
      CHECK(opens == is_told);
    }
  }
}

TEST_CASE("an overloaded bed is said to open with the loads that the judge itself finds open") {
  const passage::Scene scene = sloping_scene(0.05);
  rig::Rig rig = solo_rig();
  rig.load.bed = units::Kilograms{240};  // over 0.7 of the bed's rating
  const auto snow = snow_of(snow::Wetness::dry);
  const passage::Judge judge{scene, rig, snow};
  const NoRoute none = explained(scene, judge);
  REQUIRE(none.obstacles.size() == 1);
  const auto& loads = none.obstacles[0].opens.loads.bed;
  REQUIRE_FALSE(loads.empty());
  CHECK(loads.back().to < units::Kilograms{240});
  rig.load.bed = loads.back().to;
  const passage::Judge lighter{scene, rig, snow};
  CHECK(lighter.judge(trails::LegId{0}, mid_morning()).verdict == passage::Verdict::open);
  CHECK(none.obstacles[0].opens.loads.towed.empty());
  CHECK_FALSE(none.obstacles[0].opens.without_trailer);
  CHECK(none.opens.loads == none.obstacles[0].opens.loads);
}
