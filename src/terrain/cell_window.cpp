#include "terrain/cell_window.h"

#include <algorithm>

namespace rimehaul::terrain {

CellWindow CellWindow::shared_with(const CellWindow& other) const {
  const CellIndex corner{std::max(first.column, other.first.column),
                         std::max(first.row, other.first.row)};
  const CellIndex end{std::min(first.column + size.column, other.first.column + other.size.column),
                      std::min(first.row + size.row, other.first.row + other.size.row)};
  return {corner, {end.column - corner.column, end.row - corner.row}};
}

}  // namespace rimehaul::terrain
