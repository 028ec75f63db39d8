// A rectangle of cells, and what two of them share.
#pragma once

#include "terrain/grid.h"

namespace rimehaul::terrain {

struct CellWindow {
  CellIndex first;
  CellIndex size;

  [[nodiscard]] bool is_empty() const { return size.column <= 0 || size.row <= 0; }
  /// The same cells counted from another first cell.
  [[nodiscard]] CellWindow seen_from(CellIndex origin) const {
    return {{first.column - origin.column, first.row - origin.row}, size};
  }
  /// What this shares with another; empty when that is nothing.
  [[nodiscard]] CellWindow shared_with(const CellWindow& other) const;
};

}  // namespace rimehaul::terrain
