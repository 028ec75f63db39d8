// The lattice: any affine raster must put cells and slopes in the right place.
#include "terrain/grid.h"

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>
#include <vector>

#include "base/require.h"
#include "ground/surfaces.h"
#include "near.h"

namespace rimehaul {

namespace {

using terrain::GridFrame;
using terrain::GridStep;
using testing::near;
using testing::point;
using units::Metres;

GridStep step(double east, double north) {
  return {Metres{east}, Metres{north}};
}

std::vector<GridFrame> every_kind_of_frame() {
  const auto first = point(500'000.0, 5'100'000.0);
  return {GridFrame{first, {step(5, 0), step(0, -5)}}, GridFrame{first, {step(5, 0), step(0, 5)}},
          GridFrame{first, {step(3, 0), step(0, -7)}}, GridFrame{first, {step(4, 3), step(3, -4)}},
          GridFrame{first, {step(4, 1), step(-1, 6)}}};
}

}  // namespace

TEST_CASE("a cell is found again at its own centre, whatever way the raster lies") {
  for (const GridFrame& frame : every_kind_of_frame()) {
    const auto place = frame.locate(frame.centre_of({1234, 5678}));
    CHECK(near(place.column, 1234.0, 1e-6));
    CHECK(near(place.row, 5678.0, 1e-6));
  }
}

TEST_CASE("in a north-up raster rows go south and in a south-up raster they go north") {
  const GridFrame north_up{point(100, 900), {step(5, 0), step(0, -5)}};
  CHECK(north_up.centre_of({2, 3}) == point(110, 885));
  const GridFrame south_up{point(100, 900), {step(5, 0), step(0, 5)}};
  CHECK(south_up.centre_of({2, 3}) == point(110, 915));
}

TEST_CASE("a plane has its own gradient in every raster that holds it") {
  const double p = 0.3;
  const double q = -0.4;
  for (const GridFrame& frame : every_kind_of_frame()) {
    const auto rise = [&](GridStep by) {
      return Metres{p * by.east.value() + q * by.north.value()};
    };
    const auto found = frame.to_map({rise(frame.per_column()), rise(frame.per_row())});
    CHECK(near(found.east.ratio(), p, 1e-12));
    CHECK(near(found.north.ratio(), q, 1e-12));
  }
}

TEST_CASE("steps, the reach of a cell and the least stretch of oblong and rotated cells") {
  const GridFrame oblong{point(0, 0), {step(3, 0), step(0, -4)}};
  CHECK(near(oblong.smaller_step(), Metres{3}, Metres{1e-12}));
  CHECK(near(oblong.larger_step(), Metres{4}, Metres{1e-12}));
  CHECK(near(oblong.half_diagonal(), Metres{2.5}, Metres{1e-12}));
  CHECK(near(oblong.least_stretch(), Metres{3}, Metres{1e-9}));
  const GridFrame rotated{point(0, 0), {step(4, 3), step(3, -4)}};
  CHECK(near(rotated.larger_step(), Metres{5}, Metres{1e-12}));
  CHECK(near(rotated.least_stretch(), Metres{5}, Metres{1e-6}));
  CHECK(near(rotated.half_diagonal(), Metres{5 * std::numbers::sqrt2 / 2}, Metres{1e-9}));
}

TEST_CASE("no direction of a skewed raster is stretched less than its least stretch") {
  const GridFrame skewed{point(0, 0), {step(4, 0), step(3, 5)}};
  double least = 1e9;
  for (int i = 0; i < 36'000; ++i) {
    const double angle = i * std::numbers::pi / 36'000.0;
    const double east = 4 * std::cos(angle) + 3 * std::sin(angle);
    least = std::min(least, std::hypot(east, 5 * std::sin(angle)));
  }
  CHECK(near(skewed.least_stretch().value(), least, 1e-6));
}

TEST_CASE("a raster whose rows run along its columns is refused as our fault") {
  // A sine of less than a millionth is none, however large the cells.
  CHECK_THROWS_AS((GridFrame{point(0, 0), {step(100, 0), step(100, -0.95e-4)}}), base::OurFault);
  CHECK_NOTHROW((GridFrame{point(0, 0), {step(100, 0), step(100, -1.05e-4)}}));
  CHECK_THROWS_AS((GridFrame{point(0, 0), {step(5, 0), step(10, 0)}}), base::OurFault);
  CHECK_THROWS_AS((GridFrame{point(0, 0), {step(0, 0), step(0, 5)}}), base::OurFault);
  CHECK_THROWS_AS((GridFrame{point(0, 0), {step(NAN, 0), step(0, 5)}}), base::OurFault);
  CHECK_THROWS_AS((GridFrame{point(NAN, 0), {step(5, 0), step(0, 5)}}), base::OurFault);
  CHECK_THROWS_AS((GridFrame{point(0, NAN), {step(5, 0), step(0, 5)}}), base::OurFault);
}

}  // namespace rimehaul
