// The ground as a picture: means per pixel, holes that stay holes, and light in closed form.
#include "terrain/relief.h"

#include <doctest/doctest.h>

#include <cmath>

#include "base/require.h"
#include "ground/surfaces.h"
#include "near.h"

namespace rimehaul {

namespace {

using terrain::Relief;
using terrain::ReliefFrame;
using testing::near;
using testing::point;
using units::Metres;

Relief picture(testing::Surface ground, const ReliefFrame& frame) {
  auto source = testing::source_of(std::move(ground), 5, {0, 0, 1000, 1000});
  return relief_of(source, frame);
}

/// 20 m pixels well inside the raster. Cells lie at whole multiples of 5 m.
const ReliefFrame kInside{point(201, 801), Metres{20}, 12, 10};

double middle_light(const testing::Surface& ground) {
  return hillshade(picture(ground, kInside))[5 * 12 + 6];
}

}  // namespace

TEST_CASE("a pixel of the relief is the mean of the cells in it") {
  const Relief relief = picture(testing::plane(0.25, -0.5), kInside);
  // Cells of pixel (2, 3): E 245, 250, 255, 260 and N 740, 735, 730, 725.
  CHECK(near(relief.at({2, 3}), 1000 + 0.25 * 252.5 - 0.5 * 732.5, 1e-9));
}

TEST_CASE("the very first cell of the raster counts in its pixel as every other does") {
  const Relief relief = picture(testing::plane(0.25, -0.5), {point(-10, 1010), Metres{20}, 2, 2});
  // Cells E 0 and 5, N 1000 and 995.
  CHECK(near(relief.at({0, 0}), 1000 + 0.25 * 2.5 - 0.5 * 997.5, 1e-9));
}

TEST_CASE("a pixel across the corner of four blocks has the mean of cells of all four") {
  auto source = testing::source_of(testing::plane(0.25, -0.5), 0.5, {0, 0, 200, 200});
  // Blocks end at E 63.5 and N 136.5; the pixel holds E 63.5 and 64, N 136.5 and 136.
  const Relief relief = relief_of(source, {point(63.3, 136.7), Metres{1}, 1, 1});
  CHECK(source.blocks_read() == 4);
  CHECK(near(relief.at({0, 0}), 1000 + 0.25 * 63.75 - 0.5 * 136.25, 1e-9));
}

TEST_CASE("one cell without a height leaves its whole pixel without one, and its neighbours dark") {
  const auto ground = testing::with_void(testing::plane(0.25, 0),
                                         [](double e, double n) { return e == 250 && n == 730; });
  const Relief relief = picture(ground, kInside);
  CHECK(std::isnan(relief.at({2, 3})));
  CHECK_FALSE(std::isnan(relief.at({3, 3})));
  const auto light = hillshade(relief);
  for (const int row : {2, 3, 4}) {
    for (const int column : {1, 2, 3}) {
      CHECK(std::isnan(light.at(static_cast<std::size_t>(row * 12 + column))));
    }
  }
  CHECK_FALSE(std::isnan(light.at(3 * 12 + 4)));
}

TEST_CASE("a picture that reaches beyond the raster knows nothing there") {
  const Relief relief = picture(testing::plane(0, 0), {point(-100, 1100), Metres{20}, 60, 60});
  CHECK(std::isnan(relief.at({0, 0})));
  CHECK(std::isnan(relief.at({59, 59})));
  CHECK(near(relief.at({30, 30}), 1000, 1e-9));
}

TEST_CASE("each block is read once, and those beside the picture not at all") {
  auto source = testing::source_of(testing::plane(0, 0), 5, {0, 0, 5000, 5000});
  const auto relief = relief_of(source, {point(650, 4340), Metres{20}, 10, 10});
  CHECK(near(relief.at({5, 5}), 1000, 1e-9));
  CHECK(source.blocks_read() == 1);
}

TEST_CASE("every pixel of the smallest size has a cell in it, turned grids too") {
  const terrain::GridFrame turned{point(0, 1000),
                                  {{Metres{3}, Metres{4}}, {Metres{4}, Metres{-3}}}};
  testing::SurfaceSource source{turned, {400, 400}, testing::plane(0.1, 0.2)};
  const Metres pixel = terrain::smallest_pixel(turned);
  CHECK(near(pixel.value(), 5 * std::sqrt(2.0), 1e-12));
  const auto relief = relief_of(source, {point(1200, 1200), pixel, 40, 40});
  for (const double height_m : relief.heights_m) {
    CHECK_FALSE(std::isnan(height_m));
  }
}

// Closed form: the cosine of the angle between the ground's normal and a sun 45 degrees high in the
// north-west.
TEST_CASE("light is full on ground that faces the sun, cos 45 on the level, none at its back") {
  CHECK(near(middle_light(testing::plane(0, 0)), std::sqrt(0.5), 1e-12));
  CHECK(near(middle_light(testing::hillside(45, 315)), 1.0, 1e-12));
  CHECK(near(middle_light(testing::hillside(45, 135)), 0.0, 1e-12));
  CHECK(near(middle_light(testing::hillside(60, 135)), 0.0, 1e-12));
  const double right = std::sqrt(0.5) * std::cos(30 * std::acos(-1.0) / 180);
  CHECK(near(middle_light(testing::hillside(30, 45)), right, 1e-12));
}

TEST_CASE("all pixels that have eight neighbours are lit, and none at the picture's rim") {
  const auto light = hillshade(picture(testing::plane(0, 0), kInside));
  REQUIRE(light.size() == 120);
  for (std::size_t row = 0; row < 10; ++row) {
    for (std::size_t column = 0; column < 12; ++column) {
      CAPTURE(row);
      CAPTURE(column);
      const double here = light[row * 12 + column];
      const bool rim = row == 0 || row == 9 || column == 0 || column == 11;
      CHECK((rim ? std::isnan(here) : near(here, std::sqrt(0.5), 1e-12)));
    }
  }
}

TEST_CASE("a picture wholly beside the raster reads no block and knows nothing") {
  auto source = testing::source_of(testing::plane(0, 0), 5, {0, 0, 1000, 1000});
  for (const geo::MapPoint corner : {point(-900, 500), point(1500, 500), point(500, 1900),
                                     point(500, -500), point(NAN, 500), point(500, INFINITY)}) {
    const Relief relief = relief_of(source, {corner, Metres{20}, 10, 10});
    REQUIRE(relief.heights_m.size() == 100);
    for (const double height_m : relief.heights_m) {
      CHECK(std::isnan(height_m));
    }
  }
  CHECK(source.blocks_read() == 0);
}

TEST_CASE("a picture without pixels is our fault") {
  auto source = testing::source_of(testing::plane(0, 0), 5, {0, 0, 1000, 1000});
  for (const ReliefFrame& frame : {ReliefFrame{point(0, 1000), Metres{0}, 10, 10},
                                   ReliefFrame{point(0, 1000), Metres{NAN}, 10, 10},
                                   ReliefFrame{point(0, 1000), Metres{20}, 0, 10},
                                   ReliefFrame{point(0, 1000), Metres{20}, 10, 0}}) {
    CHECK_THROWS_AS((void)relief_of(source, frame), base::OurFault);
  }
}

}  // namespace rimehaul
