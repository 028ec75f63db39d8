// Means over cells: against planes, where a mean changes nothing, and against pure noise.
#include "terrain/averaged_heights.h"

#include <doctest/doctest.h>

#include <cmath>
#include <map>
#include <random>
#include <utility>

#include "base/require.h"
#include "ground/surfaces.h"
#include "near.h"
#include "terrain/error.h"
#include "terrain/plane.h"

namespace rimehaul {

namespace {

using terrain::AveragedHeights;
using terrain::CellIndex;
using terrain::GridFrame;
using testing::map_of;
using testing::near;
using testing::point;
using testing::Surface;
using testing::SurfaceSource;
using units::Metres;

GridFrame skewed() {
  return {point(100, 200), {{Metres{0.4}, Metres{0.3}}, {Metres{0.3}, Metres{-0.5}}}};
}

AveragedHeights averaged(const GridFrame& frame, CellIndex size, Surface ground,
                         std::int64_t side) {
  return {std::make_unique<SurfaceSource>(frame, size, std::move(ground)), side};
}

/// Independent normal heights of 0.1 m, the same each time that a place is asked for.
Surface noise(std::uint64_t seed) {
  return [seed](double east, double north) {
    static std::map<std::pair<double, double>, double> kept;
    static std::mt19937_64 random{seed};
    static std::normal_distribution<double> normal{1000.0, 0.1};
    return kept.try_emplace({east, north}, normal(random)).first->second;
  };
}

}  // namespace

TEST_CASE("so many cells as fit into a width are averaged, and never none") {
  const GridFrame half{point(0, 0), {{Metres{0.5}, Metres{0}}, {Metres{0}, Metres{-0.5}}}};
  CHECK(cells_across(half, Metres{1.0}) == 2);
  CHECK(cells_across(half, Metres{0.99}) == 1);
  CHECK(cells_across(half, Metres{1.5}) == 3);
  CHECK(cells_across(half, Metres{0.3}) == 1);
  CHECK(cells_across(half, Metres{NAN}) == 1);
  const GridFrame tenth{point(0, 0), {{Metres{0.1}, Metres{0}}, {Metres{0}, Metres{-0.1}}}};
  CHECK(cells_across(tenth, Metres{0.3}) == 3);  // 0.3 / 0.1 is less than 3 in floating point
  const GridFrame oblong{point(0, 0), {{Metres{0.2}, Metres{0}}, {Metres{0}, Metres{-0.5}}}};
  CHECK(cells_across(oblong, Metres{1.0}) == 2);
  // Beyond a block's side of 128 cells nothing is averaged, which hides nothing.
  CHECK(cells_across(half, Metres{64.0}) == 128);
  CHECK(cells_across(half, Metres{64.5}) == 1);
  CHECK(cells_across(half, Metres{INFINITY}) == 1);
}

TEST_CASE("means of a plane lie on the plane, on any lattice and across blocks") {
  const Surface ground = testing::plane(0.21, -0.34);
  AveragedHeights means = averaged(skewed(), {500, 431}, ground, 3);
  CHECK(means.size().column == 166);
  CHECK(means.size().row == 143);
  const terrain::HeightMap map = testing::whole_map(means);
  for (const CellIndex cell :
       {CellIndex{0, 0}, {1, 0}, {42, 17}, {127, 127}, {128, 3}, {165, 142}}) {
    const geo::MapPoint centre = map.frame().centre_of(cell);
    REQUIRE(map.at(cell).has_value());
    CHECK(near(map.at(cell)->above_datum_m(), ground(centre.east.value(), centre.north.value()),
               1e-9));
  }
  CHECK_FALSE(map.at(CellIndex{166, 0}).has_value());
  CHECK_FALSE(map.at(CellIndex{0, 143}).has_value());
}

TEST_CASE("a mean is that of its own cells, worked by hand, and one void makes it void") {
  const GridFrame frame{point(0, 0), {{Metres{1}, Metres{0}}, {Metres{0}, Metres{1}}}};
  const Surface ground = [](double east, double north) {
    return east == 2 && north == 3 ? testing::kVoid : 10 * north + east * east;
  };
  AveragedHeights means = averaged(frame, {5, 5}, ground, 2);
  const terrain::HeightMap map = testing::whole_map(means);
  CHECK(map.at(CellIndex{0, 0})->above_datum_m() == (0 + 1 + 10 + 11) / 4.0);
  CHECK(map.at(CellIndex{1, 0})->above_datum_m() == (4 + 9 + 14 + 19) / 4.0);
  CHECK_FALSE(map.at(CellIndex{1, 1}).has_value());
  CHECK(near(map.frame().centre_of({1, 1}).east.value(), 2.5, 0));
  CHECK(near(map.frame().centre_of({1, 1}).north.value(), 2.5, 0));
}

TEST_CASE("no block is asked for that the fine raster does not have") {
  auto fine = std::make_unique<SurfaceSource>(skewed(), CellIndex{128, 128}, testing::plane(0, 0));
  const SurfaceSource& read_from = *fine;
  AveragedHeights means{std::move(fine), 2};
  (void)means.read({0, 0});
  CHECK(read_from.blocks_read() == 1);
}

TEST_CASE("means over one cell change nothing, and over none are refused") {
  AveragedHeights same = averaged(skewed(), {7, 9}, testing::plane(0.1, 0.2), 1);
  SurfaceSource source{skewed(), {7, 9}, testing::plane(0.1, 0.2)};
  CHECK(testing::whole_map(same).at(CellIndex{6, 8}) ==
        testing::whole_map(source).at(CellIndex{6, 8}));
  CHECK_THROWS_AS(averaged(skewed(), {7, 9}, testing::plane(0, 0), 0), base::OurFault);
  CHECK_THROWS_AS((AveragedHeights{nullptr, 2}), base::OurFault);
}

// The simulation's own error is 1 / sqrt(2 x 10'000) = 0.7 %; neighbouring slopes share heights, so
// a little more.
TEST_CASE("slopes between means of pure noise spread as derived, within 3 %") {
  AveragedHeights means{
      std::make_unique<SurfaceSource>(testing::source_of(noise(20261126), 0.5, {0, 0, 150, 150})),
      3};
  const terrain::HeightMap map = testing::whole_map(means);
  double east2 = 0;
  int count = 0;
  for (std::int64_t row = 0; row < 100; ++row) {
    for (std::int64_t column = 0; column + 1 < 100; ++column) {
      const double rise =
          (*map.at(CellIndex{column + 1, row}) - *map.at(CellIndex{column, row})).value();
      east2 += rise * rise / (1.5 * 1.5);
      ++count;
    }
  }
  // Two means of nine: sqrt(2) s / 3 over 1.5 m; in the worst direction of a corner sqrt(3).
  const double derived = std::sqrt(2.0) * 0.1 / 3 / 1.5;
  CHECK(near(std::sqrt(east2 / count), derived, 0.03 * derived));
  const terrain::HeightTrust trust{
      .errors = {{Metres{0.1}, Metres{0}}}, .sub_cell = {}, .mean_over = 3};
  CHECK(near(gradient_sigma(map.frame(), trust)->ratio(), derived * std::sqrt(1.5), 1e-12));
}

// The plane's gradient is a mean of the surface's, so it spreads no more than the surface at its
// worst corner: for any place and heading.
TEST_CASE("planes under a rig on noise spread no more than is counted, whichever way it heads") {
  AveragedHeights means{
      std::make_unique<SurfaceSource>(testing::source_of(noise(20261126), 0.5, {0, 0, 150, 150})),
      2};
  const terrain::HeightMap map = testing::whole_map(means);
  const terrain::HeightTrust trust{
      .errors = {{Metres{0.1}, Metres{0}}}, .sub_cell = {}, .mean_over = 2};
  const double counted = gradient_sigma(map.frame(), trust)->ratio();
  std::mt19937_64 random{20261127};
  std::uniform_real_distribution<double> somewhere{5, 145};
  for (const double heading : {0.0, 17.0, 45.0, 90.0}) {
    double grade2 = 0;
    double cross2 = 0;
    const int places = 4000;
    for (int i = 0; i < places; ++i) {
      const units::Bearing way = units::Bearing::from_degrees(heading);
      const auto fitted = fitted_gradient(map, point(somewhere(random), somewhere(random)), way,
                                          {Metres{2.2}, Metres{1.1}});
      REQUIRE(fitted.has_value());
      const terrain::Attitude attitude = attitude_of(*fitted, way);
      grade2 += attitude.grade.ratio() * attitude.grade.ratio();
      cross2 += attitude.cross.ratio() * attitude.cross.ratio();
    }
    CHECK(std::sqrt(grade2 / places) < counted);
    CHECK(std::sqrt(cross2 / places) < counted);
    CHECK(std::sqrt(cross2 / places) > 0.2 * counted);  // and not idly more
  }
}

}  // namespace rimehaul
