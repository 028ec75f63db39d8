// Open ground and trails are one graph: a route leaves a trail, crosses and joins another, and the
// walk that trusts nothing finds it as promised.
#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "crossing/ways_over.h"
#include "day/withhold.h"
#include "passage/demo_scene.h"

namespace rimehaul::day {

namespace {

using testing::place;
using units::Metres;

trails::Zone moor(std::optional<Metres> least_visibility) {
  return {.name = "Moor",
          .kind = trails::ZoneKind::open_ground,
          .region = {{{place(80, 150), place(320, 150), place(320, 350), place(80, 350),
                       place(80, 150)}}},
          .speed = {},
          .file = "zones.gpkg",
          .crossing = {.width = Metres{6},
                       .lanes = 2,
                       .shared_with_skiers = false,
                       .hours = trails::OpenHours{{0}, {1440}},
                       .line_error = Metres{1},
                       .sight = Metres{60},
                       .most_wind = {},
                       .least_visibility = least_visibility}};
}

/// Two trails that never meet, a station on each, a moor between them that rolls a little.
passage::Scene two_trails(std::optional<Metres> least_visibility) {
  const testing::TestGround ground{.ground = [](double east, double north) {
    return 1200 + 0.4 * std::sin(east / 40) * std::cos(north / 50);
  }};
  return testing::scene_of(
      ground, {.trails = {testing::plain_trail("West", {place(100, 100), place(100, 400)}),
                          testing::plain_trail("East", {place(300, 100), place(300, 400)})},
               .stations = {testing::plain_station("Depot", place(100, 100)),
                            testing::plain_station("Lodge", place(300, 400))},
               .zones = {moor(least_visibility)},
               .marks = {}});
}

struct Answer {
  passage::Scene scene;
  search::RouteAnswer found;
};

Answer asked(const passage::Scene& trails_alone, const rig::Rig& rig, const snow::SnowAt& snow) {
  const passage::Judge before{trails_alone, rig, snow};
  const std::array judges{&before};
  Answer answer{trails_alone, {}};
  answer.scene.network = trails::joined_with(
      trails_alone.network, crossing::ways_for_any(judges, testing::mid_morning()));
  const passage::Judge judge{answer.scene, rig, snow};
  search::RouteQuestion question;
  question.stations = {0, 1};
  question.depart = testing::mid_morning();
  answer.found = search::find_routes(answer.scene.network, judge, question);
  return answer;
}

}  // namespace

TEST_CASE("a route over open ground is found from trail to trail, and walked again as promised") {
  const rig::Rig rig = testing::solo_rig();
  const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry, snow::Surface::groomed);
  const auto [scene, found] = asked(two_trails(Metres{300}), rig, snow);
  const auto* routes = std::get_if<std::vector<search::Route>>(&found);
  REQUIRE(routes != nullptr);
  const search::Route& route = routes->front();
  std::vector<bool> marked;
  for (const search::RouteLeg& part : route.legs) {
    const trails::Leg& leg = scene.network.legs[static_cast<std::size_t>(part.leg)];
    marked.push_back(scene.network.trails[leg.trail].marked);
    const bool open_ground = !marked.back();
    CHECK(part.judgement.snow.front().surface ==
          (open_ground ? snow::Surface::fresh : snow::Surface::groomed));
  }
  CHECK(marked.front());
  CHECK(marked.back());
  CHECK(std::ranges::count(marked, false) >= 1);
  CHECK(route.length < Metres{700});
  const audit::Rewalk again = audit::rewalk(scene, rig, snow, promise_of(route, scene.network));
  CHECK(again.discrepancies.empty());
  CHECK(again.places_judged > 400);
}

TEST_CASE("without enough visibility, or a word about it, nobody is sent over open ground") {
  const rig::Rig rig = testing::solo_rig();
  snow::DayWeather hazy = testing::plain_weather();
  hazy.visibility = Metres{250};
  const snow::ConstantSnow snow{{snow::Wetness::dry, snow::Surface::groomed}, hazy, "test"};
  CHECK(std::holds_alternative<search::NoRoute>(asked(two_trails(Metres{300}), rig, snow).found));
  CHECK(std::holds_alternative<std::vector<search::Route>>(
      asked(two_trails(Metres{250}), rig, snow).found));
  CHECK(std::holds_alternative<search::NoRoute>(asked(two_trails({}), rig, snow).found));
}

}  // namespace rimehaul::day
