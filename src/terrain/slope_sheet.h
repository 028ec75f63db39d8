// Slope, aspect and slope error of many cells at once, by the widest vectors that the processor
// has.
#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

#include "terrain/grid.h"

namespace rimehaul::terrain {

/// What stands for an unknown number, as `gdaldem` has it.
inline constexpr float kNoNumber = -9999.0F;

/// Heights in metres around `columns` x `rows` cells, with one more cell on every side: row by row,
/// `stride` numbers from one row to the next, NaN where a height is unknown.
struct HeightSheet {
  std::span<const double> heights_m;
  std::size_t stride = 0;
  std::size_t columns = 0;  ///< without the cells around
  std::size_t rows = 0;
};

/// What holds for all cells of a raster.
struct SheetTerms {
  GridFrame frame;
  units::Slope sigma;  ///< standard deviation of the gradient in any direction; NaN: unknown
};

/// Where the numbers go, row by row without gaps; an empty span is not filled. Each holds
/// kNoNumber, the gradient NaN, where any of the nine heights around a cell is unknown.
struct SlopeSheets {
  std::span<float> east;   ///< rise over run towards map east
  std::span<float> north;  ///< and towards map north
  std::span<float> slope_deg;
  std::span<float> aspect_deg;  ///< downslope, clockwise from map north, 0 to below 360; none level
  std::span<float> error_deg;   ///< one standard deviation of the slope's angle
};

struct SlopeTally {
  std::int64_t known = 0;      ///< cells that have a slope
  float steepest_deg = -1.0F;  ///< below 0 where no cell has one
};

/// Ways to the same bits, narrow to wide.
enum class VectorPath { baseline, avx2, avx512 };

/// Those that this processor has; the last is the quickest.
[[nodiscard]] std::vector<VectorPath> vector_paths();

/// Horn's gradient (Horn 1981) by differences of double precision; slope = atan of its length and
/// aspect by a polynomial (Abramowitz and Stegun 1964, 4.4.49) in single precision, both within
/// 0.01 degrees of double precision throughout. The error is sigma cos2(slope), which is first
/// order in sigma: as atan bends down, the slope is steeper by one sigma by no more than that.
/// Every path gives the same bits. Requires that the spans hold so many cells, and that the
/// processor has the path.
SlopeTally fill_slopes(const HeightSheet& heights, const SheetTerms& terms,
                       const SlopeSheets& sheets, VectorPath path);

}  // namespace rimehaul::terrain
