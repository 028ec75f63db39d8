// Prices of open ground: the checks of the rig in that snow, heading by heading.
#include "crossing/open_ground.h"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <random>

#include "base/require.h"
#include "crossing/turning.h"
#include "near.h"
#include "passage/demo_scene.h"
#include "passage/turning.h"

namespace rimehaul::crossing {

namespace {

using passage::Judge;
using testing::place;
using units::Bearing;
using units::Metres;
using units::Slope;

trails::Zone moor() {
  return {.name = "Moor",
          .kind = trails::ZoneKind::open_ground,
          .region = {{{place(0, 0), place(80, 0), place(80, 80), place(0, 80), place(0, 0)}}},
          .speed = {},
          .file = "zones.gpkg",
          .crossing = {.width = Metres{6},
                       .lanes = 2,
                       .shared_with_skiers = false,
                       .hours = trails::OpenHours{{0}, {1440}},
                       .line_error = Metres{1},
                       .sight = Metres{60},
                       .most_wind = {},
                       .least_visibility = Metres{300}}};
}

testing::TestTrails on_moor() {
  testing::TestTrails all = testing::straight_trail(0);
  all.zones.push_back(moor());
  return all;
}

/// The middle of the moor.
Cell middle_of(const OpenGround& ground) {
  return *cell_of(ground.lattice(), place(40, 40));
}

}  // namespace

// On a plane the attitude of a heading is known in closed form; a move is open only if every
// bearing of its sector passes the judge of planes, the heights' error added.
TEST_CASE("on a slope a heading is open only where the judge of planes passes its whole sector") {
  const rig::Rig rig = testing::solo_rig();
  const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry);
  int open = 0;
  int closed = 0;
  for (const double steep : {0.0, 0.01, 0.02, 0.04, 0.07}) {
    const passage::Scene scene = testing::scene_of(
        {.ground = [=](double, double north) { return 1000 + steep * north; }}, on_moor());
    const Judge judge{scene, rig, snow};
    const OpenGround ground{judge, scene.network.zones.front(), Metres{2.5},
                            testing::mid_morning()};
    const passage::PlaneJudge plane{{rig, scene.rules, {snow::Wetness::dry, snow::Surface::fresh}}};
    const double more = judge.tolerance()->ratio();
    for (unsigned h = 0; h < kHeadings; ++h) {
      const State state{middle_of(ground), Heading{static_cast<std::uint8_t>(h)}};
      const Sector sector = sector_of(state.heading);
      bool passes = true;
      for (double share = 0; share <= 1; share += 0.25) {
        const Bearing heading =
            Bearing::from_degrees(sector.from.degrees() + share * sector.from.turn_to(sector.to));
        for (const double off : {-more, 0.0, more}) {
          passes = passes && plane.passes({Slope::from_ratio(steep * heading.cosine() + off),
                                           Slope::from_ratio(steep * heading.sine() + off)});
        }
      }
      const bool priced = price_of(ground.prices(), state) != 0;
      CHECK((passes || !priced));
      open += priced ? 1 : 0;
      closed += priced ? 0 : 1;
    }
  }
  CHECK(open > 20);
  CHECK(closed > 20);
}

TEST_CASE("a level move costs its length, and no heading is dearer than another of its length") {
  const passage::Scene scene = testing::scene_of({}, on_moor());
  const rig::Rig rig = testing::solo_rig();
  const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry);
  const Judge judge{scene, rig, snow};
  const OpenGround ground{judge, scene.network.zones.front(), Metres{2.5}, testing::mid_morning()};
  const auto price = [&](unsigned h) {
    return price_of(ground.prices(), {middle_of(ground), Heading{static_cast<std::uint8_t>(h)}});
  };
  CHECK(price(0) >= 50);
  CHECK(price(0) <= 100);
  for (unsigned h = 0; h < kHeadings; ++h) {
    CHECK(price(h) == price(h % 4 == 0 ? 0 : h % 2 == 0 ? 2 : 1));
  }
  CHECK(testing::near(price(2) / static_cast<double>(price(0)), std::sqrt(2.0), 0.03));
  CHECK(testing::near(price(1) / static_cast<double>(price(0)), std::sqrt(5.0), 0.03));
}

TEST_CASE(
    "cells whose corridor leaves the zone, or whose ground or snow nobody knows, are barred") {
  const passage::Scene scene = testing::scene_of(
      {.ground = [](double east, double) { return east > 60 ? std::nan("") : 1000.0; }}, on_moor());
  const rig::Rig rig = testing::solo_rig();
  const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry);
  const Judge judge{scene, rig, snow};
  const OpenGround ground{judge, scene.network.zones.front(), Metres{2.5}, testing::mid_morning()};
  const auto share_at = [&](const OpenGround& of, double east, double north) {
    return of.share_on(*cell_of(of.lattice(), place(east, north)),
                       terrain::HeadingArc{Bearing::from_degrees(0)});
  };
  CHECK(std::isfinite(share_at(ground, 40, 40)));
  CHECK(std::isfinite(share_at(ground, 5, 40)));
  CHECK_FALSE(std::isfinite(share_at(ground, 2, 40)));
  CHECK_FALSE(std::isfinite(share_at(ground, 40, 79)));
  CHECK_FALSE(std::isfinite(share_at(ground, 58, 40)));
  CHECK_FALSE(
      std::isfinite(ground.share_on({-1, 3}, terrain::HeadingArc{Bearing::from_degrees(0)})));
  snow::DayWeather unsaid = testing::plain_weather();
  unsaid.new_snow.reset();
  const snow::ConstantSnow unknown{{snow::Wetness::dry, snow::Surface::groomed}, unsaid, "test"};
  const Judge in_the_dark{scene, rig, unknown};
  CHECK_FALSE(std::isfinite(share_at(
      OpenGround{in_the_dark, scene.network.zones.front(), Metres{2.5}, testing::mid_morning()}, 40,
      40)));
}

TEST_CASE("ground of which something was not said is no open ground") {
  const passage::Scene scene = testing::scene_of({}, on_moor());
  const rig::Rig rig = testing::solo_rig();
  const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry);
  const Judge judge{scene, rig, snow};
  trails::Zone unsaid = moor();
  unsaid.crossing.lanes.reset();
  CHECK_THROWS_AS((OpenGround{judge, unsaid, Metres{2.5}, testing::mid_morning()}), base::OurFault);
}

TEST_CASE("the pitch lets every turn pass the checks of trails; too narrow a corridor has none") {
  const rig::Rig towing = testing::towing_rig();
  const auto pitch = pitch_for(towing, Metres{6}, 0.7);
  REQUIRE(pitch.has_value());
  const passage::Bend tightest{Metres{0}, smallest_radius(*pitch), towing.carrier.overall_length};
  CHECK(passage::judge_turning(towing, tightest).share.value() <= 0.7);
  CHECK(passage::judge_off_tracking(towing, tightest, Metres{6}).share.value() <= 0.7);
  CHECK(smallest_radius(*pitch) >= passage::least_radius(towing));
  CHECK_FALSE(pitch_for(towing, Metres{1.5}, 0.7).has_value());
  CHECK_FALSE(pitch_for(towing, Metres{std::nan("")}, 0.7).has_value());
  CHECK_FALSE(pitch_for(towing, Metres{6}, 0.0).has_value());
  rig::Rig unknown = towing;
  unknown.carrier.turning_radius = Metres{std::nan("")};
  CHECK_FALSE(pitch_for(unknown, Metres{6}, 0.7).has_value());
}

}  // namespace rimehaul::crossing
