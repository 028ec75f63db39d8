// Immutable heights in sparse blocks: memory follows what was asked for, not the raster.
#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <span>
#include <vector>

#include "geo/polyline.h"
#include "terrain/cell_window.h"

namespace rimehaul::terrain {

/// Cells along each side of a block. Blocks at the far edges are filled up with void cells.
inline constexpr std::int64_t kBlockSide = 128;

struct BlockIndex {
  std::int64_t column = 0;
  std::int64_t row = 0;

  friend auto operator<=>(const BlockIndex&, const BlockIndex&) = default;
};

/// kBlockSide x kBlockSide heights in metres above the site's datum, row by row; NaN is a void.
using HeightBlock = std::vector<double>;

/// Where the heights of a window are to be put: row by row, `stride` numbers from one row to the
/// next.
struct HeightRows {
  std::span<double> heights_m;
  std::size_t stride = 0;
};

/// Where blocks come from. Implemented by a port; tests bring their own.
class BlockSource {
 public:
  virtual ~BlockSource() = default;
  [[nodiscard]] virtual GridFrame frame() const = 0;
  /// Number of columns and rows of the whole raster.
  [[nodiscard]] virtual CellIndex size() const = 0;
  /// One block, voids as NaN. A port throws BadInput when the file cannot be read there.
  [[nodiscard]] virtual HeightBlock read(BlockIndex block) = 0;

  /// Any rectangle of cells of the raster, voids as NaN: cut from its blocks, unless a source knows
  /// a quicker way. Requires that it lies in the raster and that there is room for it.
  virtual void read_window(const CellWindow& window, HeightRows into);
  /// The rectangles of cells that a file keeps together, side by side from the first cell on.
  [[nodiscard]] virtual CellIndex kept_together() const { return {kBlockSide, kBlockSide}; }
};

/// A line and how far to each side of it heights are wanted.
struct Corridor {
  geo::Polyline line;
  units::Metres each_side;
};

/// Heights at four neighbouring cells.
struct FourHeights {
  geo::Height first;
  geo::Height next_column;
  geo::Height next_row;
  geo::Height next_both;
};

class HeightMap {
 public:
  /// Reads every block that a corridor touches, each once, in row-major order. Cells next to the
  /// corridor come along, so that slopes are known up to its edge.
  static HeightMap load(BlockSource& source, std::span<const Corridor> corridors);

  [[nodiscard]] const GridFrame& frame() const { return frame_; }
  [[nodiscard]] CellIndex size() const { return size_; }
  /// The height at a cell centre; nothing at voids, outside the raster and where nothing was
  /// loaded.
  [[nodiscard]] std::optional<geo::Height> at(CellIndex cell) const;
  /// The heights at a cell and at the next ones by column, by row and by both; nothing if any of
  /// them is unknown. As `at` for each, but quicker.
  [[nodiscard]] std::optional<FourHeights> four_from(CellIndex first) const;
  /// Bilinear between the four cell centres around a place; nothing if any of them is unknown.
  [[nodiscard]] std::optional<geo::Height> at(geo::MapPoint place) const;
  [[nodiscard]] std::size_t block_count() const { return blocks_.size(); }

 private:
  /// Blocks of one row of blocks, from its first loaded one on; null where none was loaded.
  struct BlockRow {
    std::int64_t first = 0;
    std::vector<const double*> blocks;
  };

  HeightMap(GridFrame frame, CellIndex size) : frame_{frame}, size_{size} {}

  void add(BlockIndex index, HeightBlock heights);
  /// Where the height of a cell of the raster is kept; null when its block was not loaded.
  [[nodiscard]] const double* kept_at(CellIndex cell) const;

  GridFrame frame_;
  CellIndex size_;
  std::vector<std::shared_ptr<const HeightBlock>> blocks_;  ///< shared by copies of the map
  std::int64_t first_row_ = 0;
  std::vector<BlockRow> rows_;
};

}  // namespace rimehaul::terrain
