// A raster swept once in blocks: each cell is read once, and told of when all around it are known.
#pragma once

#include <cstddef>
#include <memory>
#include <optional>
#include <vector>

#include "terrain/cell_window.h"
#include "terrain/height_map.h"
#include "terrain/slope_sheet.h"

namespace rimehaul::terrain {

/// A raster, and the rectangles of cells that it is cut into from the first cell on.
struct SweepCut {
  CellIndex raster;
  CellIndex block;
};

/// Blocks side by side from the first cell on, numbered row by row. Of a block the cells are told
/// of whose neighbours have been read by then, in it or in blocks before it: one column and one row
/// less at its far ends, one more at its near ones. At the raster's edges there is nothing to wait
/// for.
class Sweep {
 public:
  /// Requires a raster of at least one cell; blocks narrower than two cells are made so.
  explicit Sweep(const SweepCut& cut);

  [[nodiscard]] std::size_t count() const;
  /// The cells of a block.
  [[nodiscard]] CellWindow read_at(std::size_t block) const;
  /// The cells to tell of once it has been read; these windows tile the raster too.
  [[nodiscard]] CellWindow told_at(std::size_t block) const;
  /// Earlier blocks whose edges a block needs.
  struct Before {
    std::optional<std::size_t> left;
    std::optional<std::size_t> above;
    std::optional<std::size_t> corner;
  };
  [[nodiscard]] Before before(std::size_t block) const;
  /// How many later blocks need its edges.
  [[nodiscard]] int wanted_by(std::size_t block) const;

 private:
  [[nodiscard]] CellIndex place_of(std::size_t block) const;

  CellIndex size_;
  CellIndex block_;
  CellIndex blocks_;  ///< how many along and down
};

/// What later blocks need of one: its last two rows and its last two columns.
struct BlockEdges {
  std::vector<double> rows_m;     ///< two rows, the upper first
  std::vector<double> columns_m;  ///< row by row, two each
};

/// Edges of the blocks before one; null where there is none.
struct EdgesBefore {
  std::shared_ptr<const BlockEdges> left;
  std::shared_ptr<const BlockEdges> above;
  std::shared_ptr<const BlockEdges> corner;
};

/// The heights of one block with two more rows and columns before it, used again block by block.
class SweptBlock {
 public:
  /// Reads the block and nothing else.
  void read(BlockSource& source, const CellWindow& window);
  [[nodiscard]] BlockEdges edges() const;
  void join(const EdgesBefore& before);
  /// Rows of the raster within the told window of this block, heights around them included.
  [[nodiscard]] HeightSheet around(const CellWindow& cells) const;

 private:
  [[nodiscard]] std::ptrdiff_t index_of(CellIndex from_first) const;

  CellWindow window_;
  std::size_t stride_ = 0;
  std::vector<double> heights_m_;
};

/// How to sweep a raster that a file keeps in such rectangles: whole ones of them, about half a
/// million cells, unless one is far larger.
[[nodiscard]] SweepCut cut_to_sweep(const SweepCut& kept);

}  // namespace rimehaul::terrain
