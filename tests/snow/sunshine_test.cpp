// Light on level and tilted ground: published values, closed forms, and bounds that hold.
#include "snow/sunshine.h"

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>
#include <random>

#include "near.h"

namespace rimehaul::snow {

namespace {

using testing::near;
using units::Oktas;
using units::Slope;
using units::WattsPerSquareMetre;

constexpr double kDegree = std::numbers::pi / 180.0;

SlopeRange slope(double degrees) {
  return {Slope::from_degrees(degrees), Slope::from_degrees(degrees)};
}

SunPosition sun(double zenith_deg, double azimuth_deg) {
  return {
      .zenith_deg = zenith_deg, .apparent_zenith_deg = zenith_deg, .true_azimuth_deg = azimuth_deg};
}

double facing(double slope_deg, double aspect_deg, const SunPosition& sun) {
  return most_facing({.slope = slope(slope_deg), .aspect = AspectSpan{aspect_deg, 0}}, sun);
}

}  // namespace

TEST_CASE("a clear sky is as bright as Haurwitz's formula worked by hand") {
  // 1098 cos Z e^(-0.059 / cos Z), Haurwitz (1945).
  const double wanted[][2] = {
      {0, 1035.092}, {30, 888.271}, {50.111622, 642.250}, {60, 487.894}, {80, 135.742}};
  for (const auto& [zenith, light] : wanted) {
    CHECK(near(clear_sky(zenith).value(), light, 0.0006));
  }
  CHECK(clear_sky(90.0).value() == 0.0);
  CHECK(clear_sky(120.0).value() == 0.0);
}

TEST_CASE("cloud over half the sky takes 7 % of the light, over all of it three quarters") {
  CHECK(near(share_through(Oktas{4}), 0.928951, 5e-7));
  CHECK(near(share_through(Oktas{8}), 0.25, 1e-15));
  CHECK(share_through(Oktas{0}) == 1.0);
}

TEST_CASE("the diffuse part follows Erbs, Klein and Duffie, worked by hand") {
  const WattsPerSquareMetre outside{1000};
  const auto share = [&](double clearness) {
    return split(WattsPerSquareMetre{500 * clearness}, 60.0, outside).diffuse.value() /
           (500 * clearness);
  };
  CHECK(near(share(0.1), 0.991, 1e-12));
  CHECK(near(share(0.5), 0.9511 - 0.0802 + 1.097 - 2.07975 + 0.771, 1e-12));
  CHECK(near(share(0.9), 0.165, 1e-12));
  // The three pieces meet, to what they were rounded to.
  CHECK(near(share(0.22), share(0.2200001), 5e-4));
  CHECK(near(share(0.8), share(0.8000001), 5e-4));
}

TEST_CASE("diffuse light and beam make up the whole on level ground, and the beam has its bound") {
  const WattsPerSquareMetre outside{1400};
  const Sunlight light = split(WattsPerSquareMetre{600}, 40.0, outside);
  CHECK(near((light.diffuse + light.beam * std::cos(40.0 * kDegree)).value(), 600.0, 1e-9));
  CHECK(split(WattsPerSquareMetre{600}, 89.9, outside).beam == outside);
  const Sunlight night = split(WattsPerSquareMetre{0}, 95.0, outside);
  CHECK(night.beam.value() == 0.0);
  CHECK(night.diffuse.value() == 0.0);
}

TEST_CASE("light above the air is strongest at the turn of the year") {
  CHECK(near(above_the_air(*units::parse_instant("1970-01-01T00:00:00Z")).value(), 1367 * 1.033,
             1e-9));
  CHECK(near(above_the_air(*units::parse_instant("1970-07-02T12:00:00Z")).value(), 1367 * 0.967,
             1e-9));
}

TEST_CASE("the sun falls on the tilted plane of the published example at 25.187 deg") {
  // Reda and Andreas (2004): slope 30, turned 10 to the east of south, sun as in their example.
  const double cosine = facing(30, 170, sun(50.111622, 194.340241));
  CHECK(near(std::acos(cosine) / kDegree, 25.187, 5e-6));
}

TEST_CASE("ground that faces away from a low sun gets no beam, and level ground its height") {
  CHECK(facing(40, 0, sun(70, 180)) == 0.0);
  CHECK(near(facing(0, 77, sun(70, 180)), std::cos(70 * kDegree), 1e-12));
}

TEST_CASE("what is not told of the ground may face the sun") {
  CHECK(most_facing({.slope = {}, .aspect = {}}, sun(70, 180)) == 1.0);
  CHECK(near(most_facing({.slope = slope(20), .aspect = {}}, sun(70, 180)), std::cos(50 * kDegree),
             1e-12));
}

TEST_CASE("no ground between the bounds gets more light than the bound, drawn at random") {
  constexpr unsigned kSeed = 20260201;
  CAPTURE(kSeed);
  std::mt19937 draw{kSeed};
  std::uniform_real_distribution<double> unit{0.0, 1.0};
  for (int i = 0; i < 2000; ++i) {
    const double least = 60 * unit(draw);
    const double most = least + 25 * unit(draw);
    const AspectSpan aspects{.middle_deg = 360 * unit(draw), .half_width_deg = 20 * unit(draw)};
    const SunPosition there = sun(88 * unit(draw), 360 * unit(draw));
    const SunnyGround ground{
        .slope = SlopeRange{Slope::from_degrees(least), Slope::from_degrees(most)},
        .aspect = aspects};
    const Sunlight light =
        split(clear_sky(there.zenith_deg), there.zenith_deg, WattsPerSquareMetre{1380});
    double brightest = 0.0;
    for (int j = 0; j < 30; ++j) {
      const double steep = least + (most - least) * unit(draw);
      const double aspect = aspects.middle_deg + aspects.half_width_deg * (2.0 * unit(draw) - 1.0);
      const SunnyGround one{.slope = slope(steep), .aspect = AspectSpan{aspect, 0}};
      for (const Shade shade : {Shade::none, Shade::in_shadow}) {
        CHECK(most_on(one, light, there, shade) <=
              most_on(ground, light, there, shade) + WattsPerSquareMetre{1e-9});
      }
      brightest = std::max(brightest, most_facing(one, there));
    }
    CHECK(brightest <= most_facing(ground, there) + 1e-12);
  }
}

TEST_CASE("light on a slope is that of sun, sky and the snow around, worked by hand") {
  // 60 deg: sky 3/4, ground around 1/4. 100 x 3/4 + 400 x 0.9 / 4 = 165, and 500 x cos(60 - 60).
  const Sunlight light{WattsPerSquareMetre{400}, WattsPerSquareMetre{100},
                       WattsPerSquareMetre{500}};
  const SunnyGround ground{.slope = slope(60), .aspect = AspectSpan{180, 0}};
  CHECK(near(most_on(ground, light, sun(60, 180), Shade::none).value(), 665.0, 1e-9));
  CHECK(near(most_on(ground, light, sun(60, 180), Shade::in_shadow).value(), 165.0, 1e-9));
  // Any slope: half the sky and half the snow around is the most here; the beam square on.
  CHECK(near(most_on({}, light, sun(60, 180), Shade::none).value(), 50 + 180 + 500, 1e-9));
}

}  // namespace rimehaul::snow
