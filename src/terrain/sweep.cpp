#include "terrain/sweep.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "base/require.h"

namespace rimehaul::terrain {

namespace {

constexpr double kUnknown = std::numeric_limits<double>::quiet_NaN();

/// Rows and columns of earlier blocks that stand before a block.
constexpr std::int64_t kBefore = 2;
/// One more behind it, for the raster's far edges; nothing is ever known there.
constexpr std::int64_t kBehind = 1;

SweepCut not_too_narrow(const SweepCut& cut) {
  return {cut.raster, {std::max(cut.block.column, kBefore), std::max(cut.block.row, kBefore)}};
}

CellIndex blocks_in(const SweepCut& cut) {
  return {(cut.raster.column + cut.block.column - 1) / cut.block.column,
          (cut.raster.row + cut.block.row - 1) / cut.block.row};
}

/// From where to where is told along one axis.
struct Along {
  std::int64_t first = 0;
  std::int64_t count = 0;
};

Along told_along(Along read, std::int64_t cells) {
  const std::int64_t first = std::max<std::int64_t>(read.first - 1, 0);
  const std::int64_t end = read.first + read.count;
  return {first, (end == cells ? end : end - 1) - first};
}

}  // namespace

Sweep::Sweep(const SweepCut& cut)
    : size_{cut.raster},
      block_{not_too_narrow(cut).block},
      blocks_{blocks_in(not_too_narrow(cut))} {
  base::require(size_.column > 0 && size_.row > 0, "a raster that is swept has cells");
}

std::size_t Sweep::count() const {
  return static_cast<std::size_t>(blocks_.column * blocks_.row);
}

CellIndex Sweep::place_of(std::size_t block) const {
  base::require(block < count(), "a block of a sweep is one of those it has");
  const auto index = static_cast<std::int64_t>(block);
  return {index % blocks_.column, index / blocks_.column};
}

CellWindow Sweep::read_at(std::size_t block) const {
  const CellIndex place = place_of(block);
  return CellWindow{{place.column * block_.column, place.row * block_.row}, block_}.shared_with(
      {{0, 0}, size_});
}

CellWindow Sweep::told_at(std::size_t block) const {
  const CellWindow read = read_at(block);
  const Along columns = told_along({read.first.column, read.size.column}, size_.column);
  const Along rows = told_along({read.first.row, read.size.row}, size_.row);
  return {{columns.first, rows.first}, {columns.count, rows.count}};
}

Sweep::Before Sweep::before(std::size_t block) const {
  const CellIndex place = place_of(block);
  const auto wide = static_cast<std::size_t>(blocks_.column);
  Before before;
  if (place.column > 0) {
    before.left = block - 1;
  }
  if (place.row > 0) {
    before.above = block - wide;
  }
  if (place.column > 0 && place.row > 0) {
    before.corner = block - wide - 1;
  }
  return before;
}

int Sweep::wanted_by(std::size_t block) const {
  const CellIndex place = place_of(block);
  const bool has_right = place.column + 1 < blocks_.column;
  const bool has_below = place.row + 1 < blocks_.row;
  return (has_right ? 1 : 0) + (has_below ? 1 : 0) + (has_right && has_below ? 1 : 0);
}

std::ptrdiff_t SweptBlock::index_of(CellIndex from_first) const {
  return (from_first.row + kBefore) * static_cast<std::ptrdiff_t>(stride_) + from_first.column +
         kBefore;
}

void SweptBlock::read(BlockSource& source, const CellWindow& window) {
  window_ = window;
  const auto [wide, high] = window.size;
  stride_ = static_cast<std::size_t>(kBefore + wide + kBehind);
  heights_m_.resize(stride_ * static_cast<std::size_t>(kBefore + high + kBehind));
  const auto forget = [this](CellIndex first, std::int64_t count) {
    std::fill_n(heights_m_.begin() + index_of(first), count, kUnknown);
  };
  for (std::int64_t row = -kBefore; row < 0; ++row) {
    forget({-kBefore, row}, kBefore + wide + kBehind);
  }
  for (std::int64_t row = 0; row < high; ++row) {
    forget({-kBefore, row}, kBefore);
    forget({wide, row}, kBehind);
  }
  forget({-kBefore, high}, kBefore + wide + kBehind);
  const auto first = static_cast<std::size_t>(index_of({0, 0}));
  source.read_window(window, {std::span{heights_m_}.subspan(first), stride_});
}

BlockEdges SweptBlock::edges() const {
  BlockEdges edges;
  const auto [wide, high] = window_.size;
  const auto from = [this](CellIndex cell) { return heights_m_.begin() + index_of(cell); };
  for (std::int64_t row = high - kBefore; row < high; ++row) {
    edges.rows_m.insert(edges.rows_m.end(), from({0, row}), from({wide, row}));
  }
  for (std::int64_t row = 0; row < high; ++row) {
    edges.columns_m.insert(edges.columns_m.end(), from({wide - kBefore, row}), from({wide, row}));
  }
  return edges;
}

void SweptBlock::join(const EdgesBefore& before) {
  const auto [wide, high] = window_.size;
  const auto to = [this](CellIndex cell) { return heights_m_.begin() + index_of(cell); };
  if (before.above != nullptr) {
    for (std::int64_t row = 0; row < kBefore; ++row) {
      std::copy_n(before.above->rows_m.begin() + row * wide, wide, to({0, row - kBefore}));
    }
  }
  if (before.left != nullptr) {
    for (std::int64_t row = 0; row < high; ++row) {
      std::copy_n(before.left->columns_m.begin() + row * kBefore, kBefore, to({-kBefore, row}));
    }
  }
  if (before.corner != nullptr) {
    for (std::int64_t row = -kBefore; row < 0; ++row) {
      std::copy_n(before.corner->columns_m.end() + row * kBefore, kBefore, to({-kBefore, row}));
    }
  }
}

HeightSheet SweptBlock::around(const CellWindow& cells) const {
  const CellWindow here = cells.seen_from(window_.first);
  const auto first =
      static_cast<std::size_t>(index_of({here.first.column - 1, here.first.row - 1}));
  return {std::span{heights_m_}.subspan(first), stride_,
          static_cast<std::size_t>(cells.size.column), static_cast<std::size_t>(cells.size.row)};
}

SweepCut cut_to_sweep(const SweepCut& kept) {
  // Wide, as what crosses from tile to tile of a file that is written is written row by row.
  constexpr std::int64_t kWide = 2048;
  constexpr std::int64_t kCells = 256 * kWide;
  const std::int64_t column = std::clamp<std::int64_t>(kept.block.column, 1, kept.raster.column);
  const std::int64_t row = std::clamp<std::int64_t>(kept.block.row, 1, kept.raster.row);
  const std::int64_t wide = std::max<std::int64_t>(kWide / column, 1) * column;
  const std::int64_t high = std::max<std::int64_t>(kCells / wide / row, 1) * row;
  // A file that keeps far too much together is read in parts of that.
  const bool too_much = wide * high > 8 * kCells;
  return {kept.raster, too_much ? CellIndex{std::min(wide, 4 * kWide), 64} : CellIndex{wide, high}};
}

}  // namespace rimehaul::terrain
