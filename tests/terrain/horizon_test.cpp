// The skyline: never more of the sky than the ground hides, near it where the ground is plain.
#include "terrain/horizon.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>

#include "base/require.h"
#include "ground/surfaces.h"
#include "near.h"

namespace rimehaul {

namespace {

using terrain::Horizons;
using terrain::ReliefFrame;
using testing::near;
using testing::point;
using units::Bearing;
using units::Metres;

constexpr double kDegree = std::numbers::pi / 180.0;

/// 4 km of ground in 10 m cells, in pixels of 100 m.
Horizons over(testing::Surface ground) {
  auto source = testing::source_of(std::move(ground), 10, {-2000, -2000, 2000, 2000});
  return Horizons{source, {point(-2000, 2000), Metres{100}, 40, 40}};
}

double hidden(const Horizons& horizons, geo::MapPoint from, double height_m, double towards_deg) {
  return horizons.hidden_up_to_deg(
      {from, geo::Height{height_m}, Bearing::from_degrees(towards_deg)});
}

/// Degrees that the ground hides, marched in steps of 2 m.
double marched(const testing::Surface& ground, geo::MapPoint from, double towards_deg) {
  const double east = from.east.value();
  const double north = from.north.value();
  double steepest = 0.0;
  for (double away = 2; away < 4500; away += 2) {
    const double there = ground(east + away * std::sin(towards_deg * kDegree),
                                north + away * std::cos(towards_deg * kDegree));
    steepest =
        std::max(steepest, (there - ground(east, north) - away * away / (2 * 6.371e6)) / away);
  }
  return std::atan(steepest) / kDegree;
}

}  // namespace

TEST_CASE("flat ground hides nothing, nor does what lies lower") {
  const Horizons flat = over(testing::plane(0, 0));
  CHECK(hidden(flat, point(0, 0), 1000, 90) == 0.0);
  const Horizons top = over(testing::cone(0.5));
  CHECK(hidden(top, point(5, 5), 1000, 90) == 0.0);
}

TEST_CASE("a wall hides the sky up to its height over its distance, less a pixel or two") {
  // 300 m high from E 1000 to E 1600 on: closed form atan(300 / 955) = 17.4 deg from E 45.
  const Horizons walled =
      over([](double east, double) { return east >= 1000 && east <= 1600 ? 1300.0 : 1000.0; });
  const double found = hidden(walled, point(45, 55), 1000, 90);
  CHECK(found <= std::atan(300.0 / 955.0) / kDegree);
  CHECK(found >= std::atan(300.0 / 1155.0) / kDegree);
  CHECK(hidden(walled, point(45, 55), 1000, 270) == 0.0);
  // Askew it stands further off.
  CHECK(near(hidden(walled, point(45, 55), 1000, 45),
             std::atan(300.0 / (1155 * std::sqrt(2.0))) / kDegree, 1.5));
  // Who stands as high as its top sees over it.
  CHECK(hidden(walled, point(45, 55), 1300, 90) == 0.0);
}

TEST_CASE("the earth's curve takes a little off: 7.8 cm in a kilometre") {
  const Horizons walled = over([](double east, double) { return east >= 700 ? 1300.0 : 1000.0; });
  const double found = std::tan(hidden(walled, point(45, 55), 1000, 90) * kDegree);
  // The first pixel that surely stands so high is at 850 m from the middle of the own one.
  CHECK(near(found, (300.0 - 800.0 * 800.0 / (2 * 6.371e6)) / 800.0, 1e-9));
}

TEST_CASE("nowhere is more of the sky hidden than marching over the ground finds, at random") {
  constexpr unsigned kSeed = 4711;
  CAPTURE(kSeed);
  std::mt19937 draw{kSeed};
  std::uniform_real_distribution<double> unit{0.0, 1.0};
  const testing::Surface hills = [](double east, double north) {
    return 1000 + 180 * std::sin(east / 310) * std::cos(north / 270) + 0.05 * east;
  };
  const Horizons horizons = over(hills);
  double most = 0.0;
  for (int i = 0; i < 2000; ++i) {
    const geo::MapPoint from = point(-1000 + 2000 * unit(draw), -1000 + 2000 * unit(draw));
    const double towards = 360 * unit(draw);
    const double found =
        hidden(horizons, from, hills(from.east.value(), from.north.value()), towards);
    // A bilinear surface between 10 m cells lies up to 0.03 m beside these hills.
    CHECK(found <= marched(hills, from, towards) + 0.05);
    most = std::max(most, found);
  }
  CHECK(most > 5.0);
}

TEST_CASE("a void, and all beyond the edge of the heights, casts no shadow") {
  const testing::Surface wall = [](double east, double) { return east >= 1000 ? 1300.0 : 1000.0; };
  const Horizons holed = over(testing::with_void(
      wall, [](double east, double north) { return east > 1100 && std::abs(north) < 1500; }));
  CHECK(hidden(holed, point(45, 55), 1000, 90) == 0.0);
  CHECK(hidden(over(wall), point(-5000, 0), 1000, 90) == 0.0);
  // The same wall in the midst of pixels that reach beyond the heights on all sides.
  auto middle = testing::source_of(wall, 10, {-2000, -2000, 2000, 2000});
  const Horizons wide{middle, {point(-2450, 2450), Metres{100}, 49, 49}};
  CHECK(hidden(wide, point(45, 55), 1000, 90) > 0.0);
  CHECK(hidden(wide, point(45, 55), 1000, 90) <= std::atan(300.0 / 955.0) / kDegree);
  for (const geo::MapPoint outside :
       {point(-2451, 0), point(2451, 0), point(0, 2451), point(0, -2451)}) {
    CHECK_FALSE(wide.pixel_of(outside).has_value());
  }
  // Pixels that hang over the edge are not covered, though some cells lie in them.
  auto source = testing::source_of(wall, 10, {-2000, -2000, 1350, 2000});
  const Horizons cut{source, {point(-2000, 2000), Metres{100}, 40, 40}};
  CHECK(hidden(cut, point(45, 55), 1000, 90) <= std::atan(300.0 / 955.0) / kDegree);
  CHECK(hidden(cut, point(45, 55), 1000, 90) > 0.0);
  auto narrow = testing::source_of(wall, 10, {-2000, -2000, 1150, 2000});
  CHECK(hidden(Horizons{narrow, {point(-2000, 2000), Metres{100}, 40, 40}}, point(45, 55), 1000,
               90) == 0.0);
}

TEST_CASE("a pixel counts by the eight around it, and by none farther off") {
  // Nine pixels of 1300 m in the midst of low ground; seen from the west and from the south.
  const Horizons block = over([](double east, double north) {
    return east >= 995 && east <= 1305 && north >= -305 && north <= 5 ? 1300.0 : 1000.0;
  });
  CHECK(near(hidden(block, point(45, -155), 1000, 90),
             std::atan((300.0 - 1100.0 * 1100.0 / (2 * 6.371e6)) / 1100.0) / kDegree, 1e-6));
  CHECK(hidden(block, point(1145, -1155), 1000, 0) > 15.0);
  // One cell of the nine is low.
  for (const geo::MapPoint dip : {point(1010, -290), point(1290, -10), point(1150, -10)}) {
    const Horizons dipped = over([&](double east, double north) {
      const bool is_low = std::hypot(east - dip.east.value(), north - dip.north.value()) < 1.0;
      const bool high = east >= 995 && east <= 1305 && north >= -305 && north <= 5;
      return high && !is_low ? 1300.0 : 1000.0;
    });
    CHECK(hidden(dipped, point(45, -155), 1000, 90) == 0.0);
  }
}

TEST_CASE("pixels that hang over any edge of the heights are not covered") {
  // One block of the source, so that no void beyond its edge is read: 1270 m each way.
  const testing::Extent all{-635, -635, 635, 635};
  const auto with_rim = [](double rim_m) {
    return [rim_m](double east, double north) {
      return std::max(std::abs(east), std::abs(north)) > rim_m ? 1300.0 : 1000.0;
    };
  };
  const auto hidden_on_all_sides = [&](double rim_m, const ReliefFrame& frame) {
    auto source = testing::source_of(with_rim(rim_m), 10, all);
    REQUIRE(source.size().column == terrain::kBlockSide);
    const Horizons horizons{source, frame};
    std::vector<double> found;
    for (const double towards : {0.0, 90.0, 180.0, 270.0}) {
      found.push_back(hidden(horizons, point(5, 5), 1000, towards));
    }
    return found;
  };
  // The outermost pixels reach 15 m beyond the heights: of a rim of 290 m two that are covered
  // have one beside them that is not.
  const ReliefFrame hanging{point(-650, 650), Metres{100}, 13, 13};
  CHECK(std::ranges::all_of(hidden_on_all_sides(345, hanging),
                            [](double degrees) { return degrees == 0.0; }));
  // A pixel less on all sides, and all are covered.
  const ReliefFrame covered{point(-550, 550), Metres{100}, 11, 11};
  CHECK(std::ranges::all_of(hidden_on_all_sides(245, covered),
                            [](double degrees) { return degrees > 15.0; }));
}

TEST_CASE("pixels have to be far wider than cells, and number as many as needed") {
  auto source = testing::source_of(testing::plane(0, 0), 10, {0, 0, 1000, 1000});
  CHECK_THROWS_AS(Horizons(source, (ReliefFrame{point(0, 1000), Metres{99}, 10, 10})),
                  base::OurFault);
  const ReliefFrame fine = terrain::horizon_frame(source, {point(0, 0), point(1000, 950)});
  CHECK(fine.pixel == Metres{100});
  CHECK(fine.columns == 10);
  CHECK(fine.rows == 10);
  CHECK(fine.upper_left == point(0, 950));
  const ReliefFrame wide = terrain::horizon_frame(source, {point(100'000, 950), point(0, 0)});
  CHECK(wide.pixel == Metres{250});
  CHECK(wide.columns == terrain::kMostPixels);
  const ReliefFrame none = terrain::horizon_frame(source, {point(0, 0), point(0, 0)});
  CHECK(none.columns == 1);
  CHECK(none.rows == 1);
  CHECK(Horizons(source, fine).pixel_of(point(105, 945)) == 1U);
  CHECK_FALSE(Horizons(source, fine).pixel_of(point(1005, 5)).has_value());
}

}  // namespace rimehaul
