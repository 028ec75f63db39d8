// Compiled with loops turned into vectors (see CMakeLists.txt); no contraction, so that the narrow
// and the wide ones round alike.
#include "terrain/slope_sheet.h"

#include <algorithm>
#include <array>
#include <bit>
#include <cmath>
#include <limits>
#include <numbers>

#include "base/require.h"

namespace rimehaul::terrain {

namespace {

/// Cells of a row that are worked on together, so that what lies between two steps stays near.
constexpr std::size_t kTogether = 512;

constexpr float kDegrees = static_cast<float>(180.0 / std::numbers::pi);

/// The gradient as a weighted sum of differences over two columns and two rows.
struct Weights {
  double east_per_column = 0.0;
  double east_per_row = 0.0;
  double north_per_column = 0.0;
  double north_per_row = 0.0;
};

/// Horn 1981: weights 1, 2, 1 over the three differences on each side, each over two steps.
Weights weights_of(const GridFrame& frame) {
  const Gradient column = frame.to_map({units::Metres{1.0 / 8.0}, units::Metres{0}});
  const Gradient row = frame.to_map({units::Metres{0}, units::Metres{1.0 / 8.0}});
  return {column.east.ratio(), row.east.ratio(), column.north.ratio(), row.north.ratio()};
}

/// Pointers to the cell before the first of three rows.
struct ThreeRows {
  const double* above;
  const double* here;
  const double* below;
};

struct Steepness {
  std::array<float, kTogether> east;
  std::array<float, kTogether> north;
  std::array<float, kTogether> length;
  std::array<float, kTogether> slope_deg;
};

[[gnu::always_inline]] inline void gradients(const ThreeRows& z, const Weights& by,
                                             std::size_t count, Steepness& out) {
  for (std::size_t i = 0; i < count; ++i) {
    const double along = (z.above[i + 2] - z.above[i]) + 2.0 * (z.here[i + 2] - z.here[i]) +
                         (z.below[i + 2] - z.below[i]);
    const double down = (z.below[i] - z.above[i]) + 2.0 * (z.below[i + 1] - z.above[i + 1]) +
                        (z.below[i + 2] - z.above[i + 2]);
    // Nothing, unless the cell's own height is unknown.
    const double own = z.here[i + 1] - z.here[i + 1];
    out.east[i] = static_cast<float>(along * by.east_per_column + down * by.east_per_row + own);
    out.north[i] = static_cast<float>(along * by.north_per_column + down * by.north_per_row + own);
  }
}

/// Degrees of an arctangent from 0 to 1: Abramowitz and Stegun 1964, 4.4.49, off by 2e-8 at most
/// beside rounding.
[[gnu::always_inline]] inline float arctangent_deg(float x) {
  const float square = x * x;
  float sum = 0.0028662257F;
  sum = sum * square - 0.0161657367F;
  sum = sum * square + 0.0429096138F;
  sum = sum * square - 0.0752896400F;
  sum = sum * square + 0.1065626393F;
  sum = sum * square - 0.1420889944F;
  sum = sum * square + 0.1999355085F;
  sum = sum * square - 0.3333314528F;
  sum = sum * square + 1.0F;
  return sum * x * kDegrees;
}

[[gnu::always_inline]] inline float or_none(float number) {
  return number == number ? number : kNoNumber;
}

[[gnu::always_inline]] inline void slopes(std::size_t count, Steepness& at) {
  for (std::size_t i = 0; i < count; ++i) {
    const float length = std::sqrt(at.east[i] * at.east[i] + at.north[i] * at.north[i]);
    const bool beyond = length > 1.0F;
    const float angle_deg = arctangent_deg((beyond ? 1.0F : length) / (beyond ? length : 1.0F));
    at.length[i] = length;
    at.slope_deg[i] = or_none(beyond ? 90.0F - angle_deg : angle_deg);
  }
}

[[gnu::always_inline]] inline void aspects(const Steepness& at, std::size_t count, float* out) {
  for (std::size_t i = 0; i < count; ++i) {
    const float east = -at.east[i];
    const float north = -at.north[i];
    const float wide = std::fabs(east);
    const float high = std::fabs(north);
    const bool lies = wide > high;
    // No number on level ground: nothing over nothing.
    float angle_deg = arctangent_deg((lies ? high : wide) / (lies ? wide : high));
    angle_deg = lies ? 90.0F - angle_deg : angle_deg;
    angle_deg = north < 0.0F ? 180.0F - angle_deg : angle_deg;
    angle_deg = east < 0.0F ? 360.0F - angle_deg : angle_deg;
    out[i] = or_none(angle_deg >= 360.0F ? 0.0F : angle_deg);
  }
}

[[gnu::always_inline]] inline void errors(const Steepness& at, float sigma, std::size_t count,
                                          float* out) {
  for (std::size_t i = 0; i < count; ++i) {
    out[i] = or_none(sigma * kDegrees / (1.0F + at.length[i] * at.length[i]));
  }
}

/// Numbers from 0 on are ordered as the integers of their bits are, and kNoNumber's is below all.
[[gnu::always_inline]] inline void count_in(const Steepness& at, std::size_t count,
                                            SlopeTally& tally) {
  std::int32_t known = 0;
  std::int32_t steepest = std::bit_cast<std::int32_t>(tally.steepest_deg);
  for (std::size_t i = 0; i < count; ++i) {
    const auto bits = std::bit_cast<std::int32_t>(at.slope_deg[i]);
    known += bits >= 0 ? 1 : 0;
    steepest = bits > steepest ? bits : steepest;
  }
  tally.known += known;
  tally.steepest_deg = std::bit_cast<float>(steepest);
}

[[gnu::always_inline]] inline void copy_to(std::span<float> out, std::size_t first,
                                           const float* from, std::size_t count) {
  if (!out.empty()) {
    std::copy_n(from, count, out.data() + first);
  }
}

[[gnu::always_inline]] inline SlopeTally fill(const HeightSheet& heights, const SheetTerms& terms,
                                              const SlopeSheets& sheets) {
  const Weights weights = weights_of(terms.frame);
  const auto sigma = static_cast<float>(terms.sigma.ratio());
  SlopeTally tally;
  Steepness at;  // NOLINT(cppcoreguidelines-pro-type-member-init): filled before it is read
  for (std::size_t row = 0; row < heights.rows; ++row) {
    for (std::size_t column = 0; column < heights.columns; column += kTogether) {
      const std::size_t count = std::min(kTogether, heights.columns - column);
      const double* above = heights.heights_m.data() + row * heights.stride + column;
      const std::size_t first = row * heights.columns + column;
      gradients({above, above + heights.stride, above + 2 * heights.stride}, weights, count, at);
      slopes(count, at);
      count_in(at, count, tally);
      copy_to(sheets.east, first, at.east.data(), count);
      copy_to(sheets.north, first, at.north.data(), count);
      copy_to(sheets.slope_deg, first, at.slope_deg.data(), count);
      if (!sheets.aspect_deg.empty()) {
        aspects(at, count, sheets.aspect_deg.data() + first);
      }
      if (!sheets.error_deg.empty()) {
        errors(at, sigma, count, sheets.error_deg.data() + first);
      }
    }
  }
  return tally;
}

SlopeTally fill_baseline(const HeightSheet& heights, const SheetTerms& terms,
                         const SlopeSheets& sheets) {
  return fill(heights, terms, sheets);
}

#if defined(__x86_64__)
[[gnu::target("avx2")]] SlopeTally fill_avx2(const HeightSheet& heights, const SheetTerms& terms,
                                             const SlopeSheets& sheets) {
  return fill(heights, terms, sheets);
}

[[gnu::target("avx512f,avx512bw,avx512dq,avx512vl")]] SlopeTally fill_avx512(
    const HeightSheet& heights, const SheetTerms& terms, const SlopeSheets& sheets) {
  return fill(heights, terms, sheets);
}

bool has_avx2() {
  return static_cast<bool>(__builtin_cpu_supports("avx2"));
}
bool has_avx512() {
  return static_cast<bool>(__builtin_cpu_supports("avx512f")) &&
         static_cast<bool>(__builtin_cpu_supports("avx512bw")) &&
         static_cast<bool>(__builtin_cpu_supports("avx512dq")) &&
         static_cast<bool>(__builtin_cpu_supports("avx512vl"));
}
#else
constexpr auto fill_avx2 = fill_baseline;
constexpr auto fill_avx512 = fill_baseline;
bool has_avx2() {
  return false;
}
bool has_avx512() {
  return false;
}
#endif

bool holds(std::span<const float> sheet, const HeightSheet& heights) {
  return sheet.empty() || sheet.size() == heights.columns * heights.rows;
}

}  // namespace

std::vector<VectorPath> vector_paths() {
  std::vector<VectorPath> paths{VectorPath::baseline};
  if (has_avx2()) {
    paths.push_back(VectorPath::avx2);
  }
  if (has_avx512()) {
    paths.push_back(VectorPath::avx512);
  }
  return paths;
}

SlopeTally fill_slopes(const HeightSheet& heights, const SheetTerms& terms,
                       const SlopeSheets& sheets, VectorPath path) {
  const std::size_t last = (heights.rows + 1) * heights.stride + heights.columns + 2;
  base::require(heights.stride >= heights.columns + 2 && heights.heights_m.size() >= last,
                "heights reach one cell around those whose slopes are asked for");
  base::require(holds(sheets.east, heights) && holds(sheets.north, heights) &&
                    holds(sheets.slope_deg, heights) && holds(sheets.aspect_deg, heights) &&
                    holds(sheets.error_deg, heights),
                "a sheet of slopes has a place for every cell");
  switch (path) {
    case VectorPath::avx512:
      return fill_avx512(heights, terms, sheets);
    case VectorPath::avx2:
      return fill_avx2(heights, terms, sheets);
    case VectorPath::baseline:
      break;
  }
  return fill_baseline(heights, terms, sheets);
}

}  // namespace rimehaul::terrain
