// Another way than the nearest to open, which another load, trailer or snow opens.
#include "search/other_ways.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "passage/demo_scene.h"
#include "search/obstacles.h"

using namespace rimehaul;
using namespace rimehaul::search;
using namespace rimehaul::testing;

namespace {

const std::vector<trails::LegId> kWideWay{trails::LegId{2}, trails::LegId{4}};

/// Straight to the north over a trail too narrow for any rig; or by two that are wide enough.
TestTrails narrow_or_wide() {
  TestTrails all;
  all.trails = {plain_trail("Narrow", {place(0, 0), place(0, 300)}),
                plain_trail("There", rounded({place(0, 0), place(80, 80), place(100, 150)})),
                plain_trail("And Back", rounded({place(100, 150), place(80, 220), place(0, 300)}))};
  all.trails[0].width = units::Metres{1};
  all.stations = {plain_station("Start", place(0, 0)), plain_station("End", place(0, 300))};
  return all;
}

passage::Scene rising(double grade, const TestTrails& all) {
  return scene_of({.ground = plane(0.0, grade)}, all);
}

RouteQuestion start_to_end() {
  RouteQuestion question;
  question.stations = {0, 1};
  question.depart = mid_morning();
  return question;
}

bool is_open(const passage::Scene& scene, const passage::Judge& judge) {
  return std::holds_alternative<std::vector<Route>>(
      find_routes(scene.network, judge, start_to_end()));
}

NoRoute explained(const passage::Scene& scene, const passage::Judge& judge) {
  const RouteAnswer answer = find_routes(scene.network, judge, start_to_end());
  REQUIRE(std::holds_alternative<NoRoute>(answer));
  return explain_obstacles(std::get<NoRoute>(answer), judge, start_to_end());
}

/// Every state of the snow in which this rig finds a way, asked of the search itself.
std::vector<snow::SnowState> open_snow(const passage::Scene& scene, const rig::Rig& rig) {
  std::vector<snow::SnowState> states;
  for (int wetness = 0; wetness < snow::kWetnessCount; ++wetness) {
    for (int surface = 0; surface < snow::kSurfaceCount; ++surface) {
      const snow::SnowState state{static_cast<snow::Wetness>(wetness),
                                  static_cast<snow::Surface>(surface)};
      const auto snow = snow_of(state.wetness, state.surface);
      if (is_open(scene, passage::Judge{scene, rig, snow})) {
        states.push_back(state);
      }
    }
  }
  return states;
}

}  // namespace

TEST_CASE("where the nearest way opens with no load but another does, the other is told") {
  const passage::Scene scene = rising(0.0, narrow_or_wide());
  rig::Rig rig = solo_rig();
  rig.load.bed = units::Kilograms{250};
  const auto snow = snow_of(snow::Wetness::dry);
  const passage::Judge judge{scene, rig, snow};
  const NoRoute none = explained(scene, judge);
  CHECK(none.way == std::vector{trails::LegId{0}});
  CHECK_FALSE(none.opens.any());
  REQUIRE(none.other_ways.size() == 1);
  CHECK(none.other_ways[0].legs == kWideWay);
  CHECK(none.other_ways[0].opens.loads.bed ==
        std::vector<passage::LoadInterval>{{units::Kilograms{0}, units::Kilograms{175}}});
}

TEST_CASE("where the nearest way opens in no snow but another does, the other is told with it") {
  const passage::Scene scene = rising(0.07, narrow_or_wide());
  const rig::Rig rig = solo_rig();
  const std::vector<snow::SnowState> open = open_snow(scene, rig);
  REQUIRE_FALSE(open.empty());
  // Ice is no better than groomed snow at any wetness, so the other surface has to be tried too.
  for (const auto surface : {snow::Surface::groomed, snow::Surface::ice}) {
    const auto slush = snow_of(snow::Wetness::slush, surface);
    const passage::Judge judge{scene, rig, slush};
    const NoRoute none = explained(scene, judge);
    CHECK(none.way == std::vector{trails::LegId{0}});
    CHECK_FALSE(none.opens.any());
    REQUIRE(none.other_ways.size() == 1);
    CHECK(none.other_ways[0].legs == kWideWay);
    CHECK(none.other_ways[0].opens.snow == open);
    CHECK_FALSE(none.other_ways[0].opens.and_decision);
  }
}

TEST_CASE("a way that opens in other snow and asks for a decision there says so") {
  TestTrails all = narrow_or_wide();
  trails::Zone above;
  above.name = "Gully";
  above.kind = trails::ZoneKind::release_area;
  above.region.rings = {
      {place(90, 140), place(120, 140), place(120, 160), place(90, 160), place(90, 140)}};
  all.zones = {above};
  const passage::Scene scene = rising(0.07, all);
  const rig::Rig rig = solo_rig();
  CHECK(open_snow(scene, rig).empty());
  const auto slush = snow_of(snow::Wetness::slush);
  const NoRoute none = explained(scene, passage::Judge{scene, rig, slush});
  REQUIRE(none.other_ways.size() == 1);
  CHECK(none.other_ways[0].legs == kWideWay);
  CHECK_FALSE(none.other_ways[0].opens.snow.empty());
  CHECK(none.other_ways[0].opens.and_decision);
}

TEST_CASE(
    "where neither another snow nor leaving the trailer opens a way, both together are tried") {
  const passage::Scene scene = rising(0.07, narrow_or_wide());
  rig::Rig rig = towing_rig();
  rig.carrier.towing = {};  // nobody rates it for towing
  const std::vector<snow::SnowState> alone = open_snow(scene, rig::without_trailer(rig));
  REQUIRE_FALSE(alone.empty());
  CHECK(open_snow(scene, rig).empty());
  const auto slush = snow_of(snow::Wetness::slush);
  const NoRoute none = explained(scene, passage::Judge{scene, rig, slush});
  CHECK_FALSE(none.opens.any());
  REQUIRE(none.other_ways.size() == 1);
  CHECK(none.other_ways[0].legs == kWideWay);
  CHECK(none.other_ways[0].opens.snow.empty());
  CHECK(none.other_ways[0].opens.snow_without_trailer == alone);
}

TEST_CASE("where no way is open in any snow, or every way is barred, no other is told") {
  TestTrails all = narrow_or_wide();
  all.trails[2].width = units::Metres{1};
  const rig::Rig rig = solo_rig();
  const auto slush = snow_of(snow::Wetness::slush);
  const passage::Scene too_narrow = rising(0.07, all);
  CHECK(explained(too_narrow, passage::Judge{too_narrow, rig, slush}).other_ways.empty());

  all = narrow_or_wide();
  all.trails[0].direction = trails::AllowedDirection::backward;
  all.trails[2].direction = trails::AllowedDirection::backward;
  const passage::Scene one_way = rising(0.07, all);
  CHECK(explained(one_way, passage::Judge{one_way, rig, slush}).other_ways.empty());
}
