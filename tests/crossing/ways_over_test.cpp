// Ways over open ground between trails: found, drawn, judged as any trail, and one graph with them.
#include "crossing/ways_over.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "near.h"
#include "passage/demo_scene.h"

namespace rimehaul::crossing {

namespace {

using passage::Judge;
using passage::Scene;
using testing::near;
using testing::place;
using units::Metres;

trails::OpenGround crossed_by(double width_m) {
  return {.width = Metres{width_m},
          .lanes = 2,
          .shared_with_skiers = false,
          .hours = trails::OpenHours{{0}, {1440}},
          .line_error = Metres{1},
          .sight = Metres{60},
          .most_wind = {},
          .least_visibility = Metres{300}};
}

geo::Region square(double west, double south, double east, double north) {
  return {{{place(west, south), place(east, south), place(east, north), place(west, north),
            place(west, south)}}};
}

trails::Zone open_ground(geo::Region region) {
  return {.name = "Moor",
          .kind = trails::ZoneKind::open_ground,
          .region = std::move(region),
          .speed = {},
          .file = "zones.gpkg",
          .crossing = crossed_by(6)};
}

/// Two trails to the north, 200 m apart, that never meet; a hut at the foot of each; open ground
/// between them.
testing::TestTrails two_trails() {
  return {.trails = {testing::plain_trail("West", {place(100, 100), place(100, 400)}),
                     testing::plain_trail("East", {place(300, 100), place(300, 400)})},
          .stations = {testing::plain_station("Depot", place(100, 100)),
                       testing::plain_station("Lodge", place(300, 400))},
          .zones = {open_ground(square(80, 150, 320, 350))},
          .marks = {}};
}

/// What a rig finds in a scene.
std::vector<trails::OpenWay> ways_in(const Scene& scene, const rig::Rig& rig) {
  const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry, snow::Surface::fresh);
  const Judge judge{scene, rig, snow};
  return ways_over_open_ground(judge, testing::mid_morning());
}

Metres nearest_to(const trails::OpenWay& way, geo::MapPoint there) {
  return way.as_trail.line.nearest(there).away;
}

}  // namespace

TEST_CASE("level open ground between two trails is crossed both ways, from trail to trail") {
  const Scene scene = testing::scene_of({}, two_trails());
  rig::Rig towing = testing::towing_rig();
  towing.load.towed = units::Kilograms{0};
  towing.trailer->empty.mass = units::Kilograms{20};  // fresh snow is hard to tow in
  for (const rig::Rig& rig : {testing::solo_rig(), towing}) {
    const auto ways = ways_in(scene, rig);
    REQUIRE(!ways.empty());
    for (const trails::OpenWay& way : ways) {
      CHECK(way.from.trail != way.to.trail);
      CHECK_FALSE(way.as_trail.marked);
      CHECK(way.as_trail.groomed == false);
      CHECK(way.as_trail.missing().empty());
      CHECK(way.as_trail.line.points().front() ==
            scene.network.trails[way.from.trail].line.at(way.from.at));
      CHECK(way.as_trail.line.points().back() ==
            scene.network.trails[way.to.trail].line.at(way.to.at));
    }
  }
}

TEST_CASE("ways keep off forbidden ground in the open, and go round it") {
  testing::TestTrails all = two_trails();
  const Scene free = testing::scene_of({}, all);
  all.zones.push_back({.name = "Tarn",
                       .kind = trails::ZoneKind::forbidden,
                       .region = square(180, 150, 220, 320),
                       .speed = {},
                       .file = "zones.gpkg"});
  const Scene barred = testing::scene_of({}, all);
  const geo::MapPoint middle = place(200, 250);
  const auto within_tarn = [&](const trails::OpenWay& way) {
    return geo::touches(all.zones.back().region, way.as_trail.line, Metres{0.75});
  };
  const auto freely = ways_in(free, testing::solo_rig());
  CHECK(std::ranges::any_of(freely, within_tarn));
  CHECK(std::ranges::any_of(
      freely, [&](const trails::OpenWay& way) { return nearest_to(way, middle) < Metres{15}; }));
  const auto round = ways_in(barred, testing::solo_rig());
  CHECK(!round.empty());
  CHECK(std::ranges::none_of(round, within_tarn));
}

TEST_CASE("a steep step across open ground is crossed at its gap, and not at all without one") {
  // 6 m up to the east at E 200: over 8 m of way, 37 degrees, and over 120 m, 3 degrees, within
  // 20 m of N 250 where there is a gap.
  const auto step = [](bool gap) {
    return testing::TestGround{.ground = [=](double east, double north) {
      const double off = std::clamp((std::abs(north - 250) - 20) / 40, 0.0, 1.0);
      const double long_m = 8 + (gap ? 112 * (1 - off) : 0);
      return 1200 + 6 * std::clamp((east - 200) / long_m + 0.5, 0.0, 1.0);
    }};
  };
  const auto gapped = ways_in(testing::scene_of(step(true), two_trails()), testing::solo_rig());
  REQUIRE(!gapped.empty());
  for (const trails::OpenWay& way : gapped) {
    CHECK(nearest_to(way, place(200, 250)) < Metres{35});
  }
  CHECK(ways_in(testing::scene_of(step(false), two_trails()), testing::solo_rig()).empty());
}

TEST_CASE("no way is looked for where something of the open ground was not said") {
  using Forget = void (*)(trails::OpenGround&);
  for (const Forget forget :
       {Forget{[](trails::OpenGround& said) { said.width.reset(); }},
        Forget{[](trails::OpenGround& said) { said.lanes.reset(); }},
        Forget{[](trails::OpenGround& said) { said.hours.reset(); }},
        Forget{[](trails::OpenGround& said) { said.line_error.reset(); }},
        Forget{[](trails::OpenGround& said) { said.shared_with_skiers.reset(); }},
        Forget{[](trails::OpenGround& said) { said.least_visibility.reset(); }}}) {
    testing::TestTrails all = two_trails();
    forget(all.zones.front().crossing);
    CHECK(ways_in(testing::scene_of({}, all), testing::solo_rig()).empty());
  }
}

TEST_CASE("a hole in the heights is never crossed") {
  const testing::TestGround holed{.ground = [](double east, double north) {
    const bool hole = std::abs(east - 200) < 30 && std::abs(north - 250) < 60;
    return hole ? std::nan("") : 1200.0;
  }};
  const auto ways = ways_in(testing::scene_of(holed, two_trails()), testing::solo_rig());
  REQUIRE(!ways.empty());
  for (const trails::OpenWay& way : ways) {
    CHECK_FALSE(geo::touches(square(170, 190, 230, 310), way.as_trail.line, Metres{0}));
  }
}

}  // namespace rimehaul::crossing
