// Slopes of many cells at once: the same bits whatever the processor, and near double precision.
#include "terrain/slope_sheet.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <bit>
#include <cmath>
#include <random>
#include <vector>

#include "base/require.h"
#include "ground/surfaces.h"
#include "near.h"
#include "terrain/gradient.h"

namespace rimehaul::terrain {

namespace {

using testing::kVoid;
using testing::near;
using testing::plane;
using testing::point;
using testing::rough;
using testing::with_void;
using units::Metres;
using units::Slope;

/// A source's heights with one unknown cell around them, and the answers of one path.
struct Answered {
  SlopeTally tally;
  std::vector<float> east;
  std::vector<float> north;
  std::vector<float> slope_deg;
  std::vector<float> aspect_deg;
  std::vector<float> error_deg;
};

Answered answered(BlockSource& source, VectorPath path, Slope sigma = Slope::from_ratio(0.01)) {
  const CellIndex size = source.size();
  const auto stride = static_cast<std::size_t>(size.column) + 2;
  std::vector<double> heights_m(stride * (static_cast<std::size_t>(size.row) + 2), kVoid);
  source.read_window({{0, 0}, size}, {std::span{heights_m}.subspan(stride + 1), stride});
  const auto count = static_cast<std::size_t>(size.column * size.row);
  Answered out{.tally = {},
               .east = std::vector<float>(count),
               .north = std::vector<float>(count),
               .slope_deg = std::vector<float>(count),
               .aspect_deg = std::vector<float>(count),
               .error_deg = std::vector<float>(count)};
  out.tally =
      fill_slopes({heights_m, stride, static_cast<std::size_t>(size.column),
                   static_cast<std::size_t>(size.row)},
                  {source.frame(), sigma},
                  {out.east, out.north, out.slope_deg, out.aspect_deg, out.error_deg}, path);
  return out;
}

bool same_bits(const std::vector<float>& one, const std::vector<float>& other) {
  return std::ranges::equal(one, other, [](float a, float b) {
    return std::bit_cast<std::uint32_t>(a) == std::bit_cast<std::uint32_t>(b);
  });
}

/// Between two directions, degrees.
double apart(double one_deg, double other_deg) {
  return std::abs(std::remainder(one_deg - other_deg, 360.0));
}

/// How far the answers are from those of double precision throughout, at most; degrees.
struct Farthest {
  double slope_deg = 0.0;
  double aspect_deg = 0.0;
  std::int64_t known = 0;
};

Farthest farthest_from_double(BlockSource& source) {
  const Answered found = answered(source, vector_paths().back());
  const HeightMap heights = testing::whole_map(source);
  Farthest far;
  std::size_t next = 0;
  for (std::int64_t row = 0; row < source.size().row; ++row) {
    for (std::int64_t column = 0; column < source.size().column; ++column, ++next) {
      const auto gradient = horn_gradient(heights, {column, row});
      const auto slope_deg = static_cast<double>(found.slope_deg[next]);
      const auto aspect_deg = static_cast<double>(found.aspect_deg[next]);
      CHECK((found.slope_deg[next] != kNoNumber) == gradient.has_value());
      if (!gradient) {
        CHECK(found.aspect_deg[next] == kNoNumber);
        CHECK(found.error_deg[next] == kNoNumber);
        CHECK(std::isnan(found.east[next]));
        CHECK(std::isnan(found.north[next]));
        continue;
      }
      ++far.known;
      far.slope_deg = std::max(far.slope_deg, std::abs(slope_deg - slope_of(*gradient).degrees()));
      if (const auto aspect = aspect_of(*gradient)) {
        CHECK((aspect_deg >= 0.0 && aspect_deg < 360.0));
        far.aspect_deg = std::max(far.aspect_deg, apart(aspect_deg, aspect->degrees()));
      } else {
        CHECK(found.aspect_deg[next] == kNoNumber);
      }
    }
  }
  return far;
}

}  // namespace

TEST_CASE("every path that the processor has gives the same bits") {
  REQUIRE(vector_paths().front() == VectorPath::baseline);
  const auto holes = [](double east, double north) {
    return std::fmod(std::abs(east * 7 + north * 13), 97.0) < 1.0;
  };
  for (const double bump : {0.0, 0.001, 0.5, 40.0, 4000.0}) {
    auto source = testing::source_of(with_void(rough(7, bump, 0.2), holes), 5.0, {0, 0, 3000, 700});
    const Answered narrow = answered(source, VectorPath::baseline);
    CHECK(narrow.tally.known > 40'000);
    for (const VectorPath path : vector_paths()) {
      CAPTURE(static_cast<int>(path));
      const Answered wide = answered(source, path);
      CHECK(same_bits(narrow.east, wide.east));
      CHECK(same_bits(narrow.north, wide.north));
      CHECK(same_bits(narrow.slope_deg, wide.slope_deg));
      CHECK(same_bits(narrow.aspect_deg, wide.aspect_deg));
      CHECK(same_bits(narrow.error_deg, wide.error_deg));
      CHECK(narrow.tally.known == wide.tally.known);
      CHECK(narrow.tally.steepest_deg == wide.tally.steepest_deg);
    }
  }
}

TEST_CASE("slope and aspect lie within a hundredth of a degree of double precision on any ground") {
  const auto holes = [](double east, double north) {
    return std::fmod(std::abs(east * 3 + north * 11), 401.0) < 3.0;
  };
  double slope_deg = 0.0;
  double aspect_deg = 0.0;
  for (const double bump : {1e-6, 1e-3, 0.1, 2.0, 30.0, 500.0}) {
    for (const double height : {0.0, 3.0, 8500.0}) {
      // A micrometre on 8500 m is lost on double precision itself.
      if (bump < 1e-4 && height > 3.0) {
        continue;
      }
      auto source =
          testing::source_of(with_void(rough(11, bump, 0.0, height), holes), 2.0, {0, 0, 400, 300});
      const Farthest far = farthest_from_double(source);
      CHECK(far.known > 10'000);
      slope_deg = std::max(slope_deg, far.slope_deg);
      aspect_deg = std::max(aspect_deg, far.aspect_deg);
    }
  }
  MESSAGE("farthest: slope " << slope_deg << " deg, aspect " << aspect_deg << " deg");
  CHECK(slope_deg <= 2e-4);
  CHECK(aspect_deg <= 2e-4);
}

TEST_CASE("rotated, flipped and narrow cells are seen on the map as they lie there") {
  const std::vector<GridSteps> all{
      {{Metres{4}, Metres{0}}, {Metres{0}, Metres{4}}},
      {{Metres{3}, Metres{4}}, {Metres{4}, Metres{-3}}},
      {{Metres{1}, Metres{0}}, {Metres{0}, Metres{-7}}},
  };
  for (const GridSteps& steps : all) {
    testing::SurfaceSource source{{point(0, 0), steps}, {70, 50}, plane(-0.3, 0.4)};
    const Answered found = answered(source, vector_paths().back());
    const std::size_t middle = 25 * 70 + 35;
    CHECK(near(static_cast<double>(found.slope_deg[middle]), 26.565051177, 1e-4));
    CHECK(near(static_cast<double>(found.aspect_deg[middle]), 143.130102354, 1e-4));
    CHECK(farthest_from_double(source).slope_deg < 1e-4);
  }
}

TEST_CASE("a hillside falls the way it is made to, all round the compass") {
  for (int downhill_deg = 0; downhill_deg < 360; downhill_deg += 5) {
    auto source = testing::source_of(testing::hillside(30, downhill_deg), 10, {0, 0, 100, 100});
    const Answered found = answered(source, vector_paths().back());
    CAPTURE(downhill_deg);
    CHECK(near(static_cast<double>(found.slope_deg[60]), 30.0, 1e-4));
    CHECK(apart(static_cast<double>(found.aspect_deg[60]), downhill_deg) < 1e-4);
    CHECK(near(static_cast<double>(found.tally.steepest_deg), 30.0, 1e-4));
  }
}

// A hair west of north is 360 degrees less a hair, which rounds to 360: the same as 0.
TEST_CASE("an aspect is never 360 degrees, however little west of north the ground falls") {
  for (const double west : {0.0, 1e-12, 1e-9, 1e-6}) {
    auto source = testing::source_of(plane(west, -0.1, 0.0), 10, {0, 0, 100, 100});
    for (const VectorPath path : vector_paths()) {
      const double aspect_deg = static_cast<double>(answered(source, path).aspect_deg[60]);
      CHECK(0.0 <= aspect_deg);
      CHECK(aspect_deg < 360.0);
      CHECK(apart(aspect_deg, 0.0) < 1e-3);
    }
  }
}

TEST_CASE("level ground has a slope of nothing and no aspect; ground all unknown has neither") {
  auto level = testing::source_of(plane(0, 0), 10, {0, 0, 100, 100});
  const Answered flat = answered(level, vector_paths().back());
  CHECK(flat.slope_deg[60] == 0.0F);
  CHECK(flat.aspect_deg[60] == kNoNumber);
  CHECK(flat.tally.known == 81);
  CHECK(flat.tally.steepest_deg == 0.0F);
  auto unknown = testing::source_of([](double, double) { return kVoid; }, 10, {0, 0, 100, 100});
  const Answered none = answered(unknown, vector_paths().back());
  CHECK(none.tally.known == 0);
  CHECK(none.tally.steepest_deg < 0.0F);
}

TEST_CASE("an unknown height leaves itself and its eight neighbours without a slope") {
  const auto hole = [](double east, double north) { return east == 50 && north == 50; };
  auto source = testing::source_of(with_void(plane(0.1, 0), hole), 10, {0, 0, 100, 100});
  CHECK(answered(source, vector_paths().back()).tally.known == 81 - 9);
}

// On a slope b the angle is off by sigma cos2(b): 0.01 of level ground is 0.572958 degrees, half of
// it on 45 degrees. The true angle one sigma steeper is never more than that away.
TEST_CASE(
    "the slope error is that of the gradient brought to the angle, and bounds a steeper one") {
  for (const double tangent : {0.0, 0.2, 1.0, 3.0}) {
    auto source = testing::source_of(plane(tangent, 0), 10, {0, 0, 100, 100});
    const double error_deg =
        static_cast<double>(answered(source, vector_paths().back()).error_deg[60]);
    CHECK(near(error_deg, 0.5729577951 / (1.0 + tangent * tangent), 1e-6));
    CHECK(Slope::from_ratio(tangent + 0.01).degrees() - Slope::from_ratio(tangent).degrees() <=
          error_deg + 1e-6);
  }
  auto source = testing::source_of(plane(0.2, 0), 10, {0, 0, 100, 100});
  CHECK(answered(source, vector_paths().back(), Slope::from_ratio(kVoid)).error_deg[60] ==
        kNoNumber);
}

TEST_CASE("only what is asked for is filled, and heights or room that fall short are our fault") {
  const GridFrame frame{point(0, 0), {{Metres{1}, Metres{0}}, {Metres{0}, Metres{-1}}}};
  const SheetTerms terms{frame, Slope::from_ratio(0.1)};
  std::vector<double> heights_m(5 * 5, 7.0);
  std::vector<float> out(9, 1.0F);
  const HeightSheet sheet{heights_m, 5, 3, 3};
  CHECK(fill_slopes(sheet, terms, {}, VectorPath::baseline).known == 9);
  for (const auto member : {&SlopeSheets::east, &SlopeSheets::north, &SlopeSheets::slope_deg,
                            &SlopeSheets::aspect_deg, &SlopeSheets::error_deg}) {
    SlopeSheets sheets;
    sheets.*member = out;
    CHECK(fill_slopes(sheet, terms, sheets, VectorPath::baseline).known == 9);
    sheets.*member = std::span{out}.first(8);
    CHECK_THROWS_AS(fill_slopes(sheet, terms, sheets, VectorPath::baseline), base::OurFault);
  }
  const std::span<const double> few = std::span{heights_m}.first(24);
  CHECK_THROWS_AS(fill_slopes({few, 5, 3, 3}, terms, {}, VectorPath::baseline), base::OurFault);
  CHECK_THROWS_AS(fill_slopes({heights_m, 4, 3, 3}, terms, {}, VectorPath::baseline),
                  base::OurFault);
}

}  // namespace rimehaul::terrain
