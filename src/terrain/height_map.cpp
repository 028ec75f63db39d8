#include "terrain/height_map.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "base/require.h"
#include "terrain/patch.h"
#include "terrain/strip.h"

namespace rimehaul::terrain {

namespace {

/// Cells around a corridor that come along: one for the far corner of a bilinear patch, one more
/// for the ring around a cell in Horn's gradient.
constexpr double kHaloCells = 2.0;

constexpr auto kSide = static_cast<double>(kBlockSide);

std::pair<std::int64_t, std::int64_t> row_major(BlockIndex index) {
  return {index.row, index.column};
}

struct BlockRange {
  std::int64_t first = 0;
  std::int64_t last = -1;  ///< below first: none
};

/// The blocks that hold cells of a range, of those that a raster of `cells` cells has.
BlockRange blocks_of(CellRange range, std::int64_t cells) {
  const double last_cell = static_cast<double>(cells) - 1.0;
  if (!(range.low <= last_cell && range.high >= 0.0)) {
    return {};
  }
  return {static_cast<std::int64_t>(std::floor(std::max(range.low, 0.0) / kSide)),
          static_cast<std::int64_t>(std::floor(std::min(range.high, last_cell) / kSide))};
}

CellRange with_halo(CellRange range) {
  return {std::floor(range.low) - kHaloCells, std::ceil(range.high) + kHaloCells};
}

void add_blocks(const StripOnGrid& strip, CellIndex size, std::vector<BlockIndex>& wanted) {
  const CellRange rows = strip.rows();
  const BlockRange block_rows = blocks_of(with_halo(rows), size.row);
  for (std::int64_t row = block_rows.first; row <= block_rows.last; ++row) {
    const auto top = static_cast<double>(row) * kSide;
    const CellRange reached = with_halo({top, top + kSide - 1.0});
    const CellRange within{std::clamp(reached.low, rows.low, rows.high),
                           std::clamp(reached.high, rows.low, rows.high)};
    const BlockRange columns = blocks_of(with_halo(strip.columns_between(within)), size.column);
    for (std::int64_t column = columns.first; column <= columns.last; ++column) {
      wanted.push_back({.column = column, .row = row});
    }
  }
}

/// Blocks that any corridor touches, each once, row by row.
std::vector<BlockIndex> blocks_under(const BlockSource& source,
                                     std::span<const Corridor> corridors) {
  std::vector<BlockIndex> wanted;
  for (const Corridor& corridor : corridors) {
    const auto points = corridor.line.points();
    for (std::size_t i = 0; i + 1 < points.size(); ++i) {
      const Strip strip{points[i], points[i + 1], corridor.each_side, corridor.each_side};
      add_blocks(StripOnGrid{source.frame(), strip}, source.size(), wanted);
    }
    std::ranges::sort(wanted, {}, row_major);
    wanted.erase(std::unique(wanted.begin(), wanted.end()), wanted.end());
  }
  return wanted;
}

}  // namespace

void BlockSource::read_window(const CellWindow& window, HeightRows into) {
  const auto block_of = [](std::int64_t cell) { return cell / kBlockSide; };
  const std::int64_t last_row = block_of(window.first.row + window.size.row - 1);
  const std::int64_t last_column = block_of(window.first.column + window.size.column - 1);
  for (std::int64_t row = block_of(window.first.row); row <= last_row; ++row) {
    for (std::int64_t column = block_of(window.first.column); column <= last_column; ++column) {
      const CellIndex corner{column * kBlockSide, row * kBlockSide};
      const HeightBlock heights_m = read({column, row});
      const CellWindow part = window.shared_with({corner, {kBlockSide, kBlockSide}});
      const CellWindow from = part.seen_from(corner);
      const CellWindow to = part.seen_from(window.first);
      for (std::int64_t line = 0; line < part.size.row; ++line) {
        const auto start = static_cast<std::size_t>(to.first.row + line) * into.stride +
                           static_cast<std::size_t>(to.first.column);
        std::copy_n(heights_m.begin() + (from.first.row + line) * kBlockSide + from.first.column,
                    part.size.column, into.heights_m.begin() + static_cast<std::ptrdiff_t>(start));
      }
    }
  }
}

HeightMap HeightMap::load(BlockSource& source, std::span<const Corridor> corridors) {
  HeightMap map{source.frame(), source.size()};
  for (const BlockIndex index : blocks_under(source, corridors)) {
    map.add(index, source.read(index));
  }
  return map;
}

void HeightMap::add(BlockIndex index, HeightBlock heights) {
  base::require(heights.size() == static_cast<std::size_t>(kBlockSide * kBlockSide),
                "a block of heights has the wrong number of cells");
  blocks_.push_back(std::make_shared<const HeightBlock>(std::move(heights)));
  if (rows_.empty()) {
    first_row_ = index.row;
  }
  rows_.resize(static_cast<std::size_t>(index.row - first_row_) + 1);
  BlockRow& row = rows_.back();
  if (row.blocks.empty()) {
    row.first = index.column;
  }
  row.blocks.resize(static_cast<std::size_t>(index.column - row.first) + 1, nullptr);
  row.blocks.back() = blocks_.back()->data();
}

const double* HeightMap::kept_at(CellIndex cell) const {
  // Unsigned, so that dividing by the side is a shift; below the first block wraps to far beyond.
  constexpr auto kSideCells = static_cast<std::size_t>(kBlockSide);
  const auto column = static_cast<std::size_t>(cell.column);
  const auto row = static_cast<std::size_t>(cell.row);
  const std::size_t block_row = row / kSideCells - static_cast<std::size_t>(first_row_);
  if (block_row >= rows_.size()) {
    return nullptr;
  }
  const BlockRow& blocks = rows_[block_row];
  const std::size_t block = column / kSideCells - static_cast<std::size_t>(blocks.first);
  if (block >= blocks.blocks.size() || blocks.blocks[block] == nullptr) {
    return nullptr;
  }
  return blocks.blocks[block] + row % kSideCells * kSideCells + column % kSideCells;
}

std::optional<geo::Height> HeightMap::at(CellIndex cell) const {
  if (cell.column < 0 || cell.row < 0 || cell.column >= size_.column || cell.row >= size_.row) {
    return std::nullopt;
  }
  const double* height_m = kept_at(cell);
  return height_m != nullptr && std::isfinite(*height_m) ? std::optional{geo::Height{*height_m}}
                                                         : std::nullopt;
}

std::optional<FourHeights> HeightMap::four_from(CellIndex first) const {
  const CellIndex last{first.column + 1, first.row + 1};
  const bool in_raster =
      first.column >= 0 && first.row >= 0 && last.column < size_.column && last.row < size_.row;
  if (in_raster && last.column % kBlockSide != 0 && last.row % kBlockSide != 0) {
    const double* z = kept_at(first);
    if (z == nullptr || !std::isfinite(z[0] + z[1] + z[kBlockSide] + z[kBlockSide + 1])) {
      return std::nullopt;
    }
    return FourHeights{geo::Height{z[0]}, geo::Height{z[1]}, geo::Height{z[kBlockSide]},
                       geo::Height{z[kBlockSide + 1]}};
  }
  const auto here = at(first);
  const auto next_column = at(CellIndex{last.column, first.row});
  const auto next_row = at(CellIndex{first.column, last.row});
  const auto next_both = at(last);
  if (!here || !next_column || !next_row || !next_both) {
    return std::nullopt;
  }
  return FourHeights{*here, *next_column, *next_row, *next_both};
}

std::optional<geo::Height> HeightMap::at(geo::MapPoint place) const {
  const auto under = patch_under(*this, place);
  if (!under) {
    return std::nullopt;
  }
  return under->patch.height_at(under->within);
}

}  // namespace rimehaul::terrain
