// Gradients at cells against published methods worked by hand and closed forms.
#include "terrain/gradient.h"

#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <numbers>

#include "ground/surfaces.h"
#include "near.h"

namespace rimehaul {

namespace {

using terrain::CellIndex;
using terrain::Gradient;
using testing::cone;
using testing::map_of;
using testing::near;
using testing::near_degrees;
using testing::point;
using testing::sphere;
using testing::with_void;

/// The nine heights of a 3 x 3 window, north row first.
terrain::HeightMap window(const std::array<double, 9>& heights, double cell) {
  const auto surface = [=](double east, double north) {
    const auto column = static_cast<std::size_t>(std::lround(east / cell));
    const auto row = static_cast<std::size_t>(std::lround((2 * cell - north) / cell));
    return heights.at(row * 3 + column);
  };
  return map_of(surface, cell, {0, 0, 2 * cell, 2 * cell});
}

constexpr CellIndex kCentre{1, 1};

}  // namespace

// Horn 1981 (Proc. IEEE 69(1):14-47) and Zevenbergen and Thorne 1987 (ESPL 12:47-56) by hand:
// p = (50 + 60 + 10 - 50 - 60 - 8) / 40 = 0.05, q = (50 + 90 + 50 - 8 - 20 - 10) / 40 = 3.8.
TEST_CASE("a window worked by hand has Horn's and Zevenbergen and Thorne's slope and aspect") {
  const auto map = window({50, 45, 50, 30, 30, 30, 8, 10, 10}, 5);
  const auto horn = terrain::horn_gradient(map, kCentre);
  REQUIRE(horn.has_value());
  CHECK(near(horn->east.ratio(), 0.05, 1e-12));
  CHECK(near(horn->north.ratio(), 3.8, 1e-12));
  CHECK(near_degrees(terrain::slope_of(*horn), 75.25766, 5e-6));
  CHECK(near(terrain::slope_of(*horn).percent(), 380.033, 5e-4));
  REQUIRE(terrain::aspect_of(*horn).has_value());
  CHECK(near(terrain::aspect_of(*horn)->degrees(), 180.75385, 5e-6));
  const auto cross = terrain::zevenbergen_thorne_gradient(map, kCentre);
  REQUIRE(cross.has_value());
  CHECK(near_degrees(terrain::slope_of(*cross), 74.05460, 5e-6));
  CHECK(near(terrain::slope_of(*cross).percent(), 350.0, 1e-9));
  CHECK(near(terrain::aspect_of(*cross)->degrees(), 180.0, 1e-9));
}

TEST_CASE("a second window worked by hand, cell 1 m") {
  const auto map = window({101, 92, 85, 101, 92, 85, 101, 91, 84}, 1);
  const auto horn = terrain::horn_gradient(map, kCentre);
  REQUIRE(horn.has_value());
  CHECK(near_degrees(terrain::slope_of(*horn), 82.99089, 5e-6));
  CHECK(near(terrain::aspect_of(*horn)->degrees(), 92.64255, 5e-6));
  const auto cross = terrain::zevenbergen_thorne_gradient(map, kCentre);
  REQUIRE(cross.has_value());
  CHECK(near_degrees(terrain::slope_of(*cross), 82.88872, 5e-6));
  CHECK(near(terrain::aspect_of(*cross)->degrees(), 93.57633, 5e-6));
}

TEST_CASE("a plane of 50 % has its own slope and aspect by both methods, at any cell size") {
  for (const double cell : {0.5, 5.0, 30.0}) {
    const auto map = map_of(testing::plane(0.3, 0.4), cell, {0, 0, 4 * cell, 4 * cell});
    for (const auto& found :
         {terrain::horn_gradient(map, {2, 2}), terrain::zevenbergen_thorne_gradient(map, {2, 2})}) {
      REQUIRE(found.has_value());
      // atan 0.5 and the direction away from (3, 4).
      CHECK(near_degrees(terrain::slope_of(*found), 26.56505, 5e-6));
      CHECK(near(terrain::aspect_of(*found)->degrees(), 216.86990, 5e-6));
    }
  }
}

TEST_CASE("on a sphere both methods come near the closed form of 30 degrees") {
  // At (300, 400) on radius 1000 the slope is asin 0.5 = 30 deg, aspect atan(300 / 400).
  const auto map = map_of(sphere(1000), 10, {280, 380, 320, 420});
  const auto horn = terrain::horn_gradient(map, {2, 2});
  REQUIRE(horn.has_value());
  CHECK(near_degrees(terrain::slope_of(*horn), 30.00316, 5e-6));
  CHECK(near(terrain::aspect_of(*horn)->degrees(), 36.86998, 5e-6));
  const auto cross = terrain::zevenbergen_thorne_gradient(map, {2, 2});
  REQUIRE(cross.has_value());
  CHECK(near_degrees(terrain::slope_of(*cross), 30.00195, 5e-6));
}

TEST_CASE("the middle of z = E N2 shows where Horn smooths and the other method does not") {
  const auto map = map_of([](double e, double n) { return e * n * n; }, 1, {-1, -1, 1, 1});
  CHECK(near(terrain::horn_gradient(map, kCentre)->east.ratio(), 0.5, 1e-12));
  CHECK(near(terrain::zevenbergen_thorne_gradient(map, kCentre)->east.ratio(), 0.0, 1e-12));
}

TEST_CASE("a cone has one slope all around and falls away from its top") {
  const double cell = 1.0;
  const auto map = map_of(cone(0.5), cell, {-200, -200, 200, 200});
  for (const double azimuth : {15.0, 100.0, 190.0, 290.0}) {
    const double radians = azimuth * std::numbers::pi / 180;
    const auto place = map.frame().locate(point(150 * std::sin(radians), 150 * std::cos(radians)));
    const CellIndex cell_there{std::llround(place.column), std::llround(place.row)};
    const auto centre = map.frame().centre_of(cell_there);
    const auto horn = terrain::horn_gradient(map, cell_there);
    REQUIRE(horn.has_value());
    // Curvature 1/r spoils less than cell^2 / r^2 of the slope.
    CHECK(near(terrain::slope_of(*horn).ratio(), 0.5, 0.5 / (150.0 * 150.0)));
    CHECK(near(terrain::aspect_of(*horn)->degrees(), geo::bearing({point(0, 0), centre}).degrees(),
               0.01));
  }
}

TEST_CASE("a cell beside a hole or at the edge has no slope, the next one in has one") {
  const auto map = map_of(
      with_void(testing::plane(0.1, 0.1), [](double e, double n) { return e == 50 && n == 50; }), 5,
      {0, 0, 100, 100});
  CHECK_FALSE(terrain::horn_gradient(map, {10, 10}).has_value());
  CHECK_FALSE(terrain::horn_gradient(map, {9, 9}).has_value());
  CHECK_FALSE(terrain::horn_gradient(map, {11, 10}).has_value());
  CHECK(terrain::horn_gradient(map, {12, 10}).has_value());
  CHECK(terrain::horn_gradient(map, {8, 9}).has_value());
  for (const CellIndex beside : {CellIndex{10, 9}, {10, 11}, {9, 10}, {11, 10}}) {
    CHECK_FALSE(terrain::zevenbergen_thorne_gradient(map, beside).has_value());
  }
  CHECK(terrain::zevenbergen_thorne_gradient(map, {9, 9}).has_value());
  CHECK_FALSE(terrain::horn_gradient(map, {0, 5}).has_value());
  CHECK_FALSE(terrain::horn_gradient(map, {20, 5}).has_value());
  CHECK(terrain::horn_gradient(map, {1, 5}).has_value());
  CHECK(terrain::horn_gradient(map, {19, 5}).has_value());
}

// Carried on past the last column by 2 a - b, z = E2 would slope by 45 degrees where it is level,
// and a plane of 45 degrees by 26.565 at a corner where one side is carried on and one is not.
TEST_CASE("no slope is made up at an edge, where carrying heights on would tell a false one") {
  const auto bowl = map_of([](double e, double) { return e * e; }, 1, {0, 0, 4, 4});
  CHECK_FALSE(terrain::horn_gradient(bowl, {0, 2}).has_value());
  CHECK_FALSE(terrain::zevenbergen_thorne_gradient(bowl, {0, 2}).has_value());
  CHECK(near(terrain::horn_gradient(bowl, {1, 2})->east.ratio(), 2.0, 1e-12));
  const auto slope = map_of(testing::plane(1, 0), 1, {0, 0, 4, 4});
  CHECK_FALSE(terrain::horn_gradient(slope, {0, 0}).has_value());
  CHECK_FALSE(terrain::zevenbergen_thorne_gradient(slope, {0, 0}).has_value());
}

TEST_CASE("on cells that are not square the plane of 50 % faces where it faces on square ones") {
  const terrain::GridFrame oblong{
      point(0, 0), {{units::Metres{3}, units::Metres{0}}, {units::Metres{0}, units::Metres{-7}}}};
  testing::SurfaceSource source{oblong, {5, 5}, testing::plane(0.3, 0.4)};
  const auto map = testing::whole_map(source);
  for (const auto& found :
       {terrain::horn_gradient(map, {2, 2}), terrain::zevenbergen_thorne_gradient(map, {2, 2})}) {
    REQUIRE(found.has_value());
    CHECK(near_degrees(terrain::slope_of(*found), 26.56505, 5e-6));
    CHECK(near(terrain::aspect_of(*found)->degrees(), 216.86990, 5e-6));
  }
}

TEST_CASE("level ground faces nowhere and neither does unknown ground") {
  CHECK_FALSE(terrain::aspect_of(Gradient{}).has_value());
  CHECK_FALSE(
      terrain::aspect_of({units::Slope::from_ratio(NAN), units::Slope::from_ratio(1)}).has_value());
  CHECK_FALSE(
      terrain::aspect_of({units::Slope::from_ratio(1), units::Slope::from_ratio(NAN)}).has_value());
}

}  // namespace rimehaul
