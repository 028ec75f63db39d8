#include "terrain/averaged_heights.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>

#include "base/require.h"

namespace rimehaul::terrain {

namespace {

/// Cells of 0.5 m are two to a metre though neither number may be exact.
constexpr double kHair = 1e-9;

GridStep times(GridStep step, double factor) {
  return {factor * step.east, factor * step.north};
}

/// Adds one fine block to the sums of the coarse block that it is a part of. A void (NaN) makes its
/// sum one.
void add_up(const HeightBlock& fine, BlockIndex within, std::int64_t side, HeightBlock& sums_m) {
  for (std::int64_t row = 0; row < kBlockSide; ++row) {
    const std::int64_t into_row = (within.row * kBlockSide + row) / side;
    for (std::int64_t column = 0; column < kBlockSide; ++column) {
      const std::int64_t into_column = (within.column * kBlockSide + column) / side;
      sums_m[static_cast<std::size_t>(into_row * kBlockSide + into_column)] +=
          fine[static_cast<std::size_t>(row * kBlockSide + column)];
    }
  }
}

}  // namespace

std::int64_t cells_across(const GridFrame& frame, units::Metres width) {
  const double cells = std::floor(width / frame.larger_step() + kHair);
  return cells >= 1.0 && cells <= static_cast<double>(kBlockSide) ? static_cast<std::int64_t>(cells)
                                                                  : 1;
}

AveragedHeights::AveragedHeights(std::unique_ptr<BlockSource> fine, std::int64_t side)
    : fine_{std::move(fine)}, side_{side} {
  base::require(fine_ != nullptr && side_ >= 1, "heights are averaged over no cells");
}

GridFrame AveragedHeights::frame() const {
  const GridFrame fine = fine_->frame();
  const auto side = static_cast<double>(side_);
  const GridStep to_middle_column = times(fine.per_column(), (side - 1.0) / 2.0);
  const GridStep to_middle_row = times(fine.per_row(), (side - 1.0) / 2.0);
  const geo::MapPoint first = fine.centre_of({0, 0});
  return {{first.east + to_middle_column.east + to_middle_row.east,
           first.north + to_middle_column.north + to_middle_row.north},
          {times(fine.per_column(), side), times(fine.per_row(), side)}};
}

CellIndex AveragedHeights::size() const {
  const CellIndex fine = fine_->size();
  return {fine.column / side_, fine.row / side_};
}

HeightBlock AveragedHeights::read(BlockIndex block) {
  HeightBlock heights_m(static_cast<std::size_t>(kBlockSide * kBlockSide), 0.0);
  const CellIndex fine = fine_->size();
  for (std::int64_t row = 0; row < side_; ++row) {
    for (std::int64_t column = 0; column < side_; ++column) {
      const BlockIndex source{block.column * side_ + column, block.row * side_ + row};
      const bool there =
          source.column * kBlockSide < fine.column && source.row * kBlockSide < fine.row;
      add_up(there ? fine_->read(source) : HeightBlock(heights_m.size(), std::nan("")),
             {column, row}, side_, heights_m);
    }
  }
  const auto cells = static_cast<double>(side_ * side_);
  std::ranges::transform(heights_m, heights_m.begin(), [&](double sum_m) { return sum_m / cells; });
  return heights_m;
}

}  // namespace rimehaul::terrain
