#include "terrain/relief.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>
#include <optional>

#include "base/require.h"

namespace rimehaul::terrain {

using units::Metres;

namespace {

constexpr double kUnknown = std::numeric_limits<double>::quiet_NaN();

/// Sums of the cells that fell into each pixel so far. A void makes its pixel's sum NaN.
class Tally final : public PixelCells {
 public:
  explicit Tally(std::size_t count) : sums_m(count, 0.0), counts(count, 0) {}

  void take(std::size_t pixel, double height_m) override {
    sums_m[pixel] += height_m;
    ++counts[pixel];
  }

  std::vector<double> sums_m;
  std::vector<std::uint32_t> counts;
};

/// Range of whole numbers, both ends included; empty when last < first.
struct Range {
  std::int64_t first = 0;
  std::int64_t last = -1;
};

/// Places along one side of the heights, in cells.
struct CellSpan {
  double from = std::numeric_limits<double>::infinity();
  double to = -std::numeric_limits<double>::infinity();

  void take_in(double place) {
    from = std::min(from, place);
    to = std::max(to, place);
  }
};

Range blocks_over(const CellSpan& span, std::int64_t cells) {
  const double last_cell = static_cast<double>(cells) - 1.0;
  const double first = std::floor(span.from);
  const double last = std::ceil(span.to);
  if (!(last >= 0.0 && first <= last_cell)) {
    return {};
  }
  return {static_cast<std::int64_t>(std::max(first, 0.0)) / kBlockSide,
          static_cast<std::int64_t>(std::min(last, last_cell)) / kBlockSide};
}

struct BlockRange {
  Range columns;
  Range rows;
};

/// The blocks under the picture's four corners and all between them.
BlockRange blocks_under(const ReliefFrame& frame, const GridFrame& grid, CellIndex size) {
  const Metres width = frame.pixel * static_cast<double>(frame.columns);
  const Metres height = frame.pixel * static_cast<double>(frame.rows);
  CellSpan columns;
  CellSpan rows;
  for (const Metres east : {Metres{0}, width}) {
    for (const Metres south : {Metres{0}, height}) {
      const GridPlace corner =
          grid.locate({frame.upper_left.east + east, frame.upper_left.north - south});
      columns.take_in(corner.column);
      rows.take_in(corner.row);
    }
  }
  return {blocks_over(columns, size.column), blocks_over(rows, size.row)};
}

void pour_block(const HeightBlock& block, BlockIndex index, const GridFrame& grid,
                const ReliefFrame& frame, PixelCells& into) {
  for (std::int64_t i = 0; i < static_cast<std::int64_t>(block.size()); ++i) {
    const CellIndex cell{index.column * kBlockSide + i % kBlockSide,
                         index.row * kBlockSide + i / kBlockSide};
    if (const auto pixel = pixel_of(frame, grid.centre_of(cell))) {
      into.take(*pixel, block[static_cast<std::size_t>(i)]);
    }
  }
}

/// Light on ground of one gradient.
double light_on(Gradient gradient) {
  // From the south-east up to a sun in the north-west, 45 degrees high.
  constexpr double kHigh = std::numbers::sqrt2 / 2.0;
  constexpr double kAside = 0.5;
  const double east = gradient.east.ratio();
  const double north = gradient.north.ratio();
  // The upward normal is (-p, -q, 1) over its length; the sun stands at (-1/2, 1/2, 1/root 2).
  const double cosine =
      (kAside * east - kAside * north + kHigh) / std::sqrt(east * east + north * north + 1.0);
  return std::max(cosine, 0.0);
}

}  // namespace

std::optional<std::size_t> pixel_of(const ReliefFrame& frame, geo::MapPoint place) {
  const double column = std::floor((place.east - frame.upper_left.east) / frame.pixel);
  const double row = std::floor((frame.upper_left.north - place.north) / frame.pixel);
  const bool inside = column >= 0.0 && column < static_cast<double>(frame.columns) && row >= 0.0 &&
                      row < static_cast<double>(frame.rows);
  if (!inside) {
    return std::nullopt;
  }
  return static_cast<std::size_t>(row) * static_cast<std::size_t>(frame.columns) +
         static_cast<std::size_t>(column);
}

Metres smallest_pixel(const GridFrame& grid) {
  return grid.larger_step() * std::numbers::sqrt2;
}

void pour_cells(BlockSource& source, const ReliefFrame& frame, PixelCells& into) {
  base::require(frame.pixel > Metres{0} && frame.columns > 0 && frame.rows > 0,
                "a relief has pixels");
  const GridFrame grid = source.frame();
  const BlockRange blocks = blocks_under(frame, grid, source.size());
  for (std::int64_t row = blocks.rows.first; row <= blocks.rows.last; ++row) {
    for (std::int64_t column = blocks.columns.first; column <= blocks.columns.last; ++column) {
      pour_block(source.read({column, row}), {column, row}, grid, frame, into);
    }
  }
}

Relief relief_of(BlockSource& source, const ReliefFrame& frame) {
  const auto count =
      static_cast<std::size_t>(std::max<std::int64_t>(frame.columns * frame.rows, 0));
  Tally tally{count};
  pour_cells(source, frame, tally);
  Relief relief{frame, std::move(tally.sums_m)};
  for (std::size_t i = 0; i < count; ++i) {
    relief.heights_m[i] = tally.counts[i] == 0 ? kUnknown : relief.heights_m[i] / tally.counts[i];
  }
  return relief;
}

std::vector<double> hillshade(const Relief& relief) {
  const ReliefFrame& frame = relief.frame;
  std::vector<double> light(relief.heights_m.size(), kUnknown);
  const double run_m = 8.0 * frame.pixel.value();
  for (std::int64_t row = 1; row + 1 < frame.rows; ++row) {
    for (std::int64_t column = 1; column + 1 < frame.columns; ++column) {
      // Horn's 3 x 3 heights, row by row from the north-west: the middle is the pixel's own.
      std::array<double, 9> z{};
      for (std::int64_t i = 0; i < 9; ++i) {
        z[static_cast<std::size_t>(i)] = relief.at({column + i % 3 - 1, row + i / 3 - 1});
      }
      const double east = (z[2] + 2.0 * z[5] + z[8] - z[0] - 2.0 * z[3] - z[6]) / run_m;
      const double north = (z[0] + 2.0 * z[1] + z[2] - z[6] - 2.0 * z[7] - z[8]) / run_m;
      // Horn leaves the middle out; a hole in it is unknown all the same.
      const double here = 0.0 * z[4];
      light[static_cast<std::size_t>(row * frame.columns + column)] =
          here + light_on({units::Slope::from_ratio(east), units::Slope::from_ratio(north)});
    }
  }
  return light;
}

}  // namespace rimehaul::terrain
