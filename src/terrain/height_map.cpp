#include "terrain/height_map.h"

#include <algorithm>
#include <cmath>
#include <tuple>
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

bool row_major_less(BlockIndex a, BlockIndex b) {
  return std::tie(a.row, a.column) < std::tie(b.row, b.column);
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
    std::ranges::sort(wanted, row_major_less);
    const auto repeated = std::ranges::unique(wanted);
    wanted.erase(repeated.begin(), repeated.end());
  }
  return wanted;
}

}  // namespace

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

const double* HeightMap::block_at(BlockIndex index) const {
  const std::int64_t row = index.row - first_row_;
  if (row < 0 || row >= std::ssize(rows_)) {
    return nullptr;
  }
  const BlockRow& blocks = rows_[static_cast<std::size_t>(row)];
  const std::int64_t column = index.column - blocks.first;
  if (column < 0 || column >= std::ssize(blocks.blocks)) {
    return nullptr;
  }
  return blocks.blocks[static_cast<std::size_t>(column)];
}

std::optional<geo::Height> HeightMap::at(CellIndex cell) const {
  if (cell.column < 0 || cell.row < 0 || cell.column >= size_.column || cell.row >= size_.row) {
    return std::nullopt;
  }
  const double* block = block_at({cell.column / kBlockSide, cell.row / kBlockSide});
  if (block == nullptr) {
    return std::nullopt;
  }
  const double height_m = block[cell.row % kBlockSide * kBlockSide + cell.column % kBlockSide];
  return std::isfinite(height_m) ? std::optional{geo::Height{height_m}} : std::nullopt;
}

std::optional<geo::Height> HeightMap::at(geo::MapPoint place) const {
  const auto under = patch_under(*this, place);
  if (!under) {
    return std::nullopt;
  }
  return under->patch.height_at(under->within);
}

}  // namespace rimehaul::terrain
