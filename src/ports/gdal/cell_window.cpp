#include "ports/gdal/cell_window.h"

#include <algorithm>

namespace rimehaul::ports::gdal {

CellWindow overlap(const CellWindow& one, const CellWindow& other) {
  const terrain::CellIndex first{std::max(one.first.column, other.first.column),
                                 std::max(one.first.row, other.first.row)};
  const terrain::CellIndex end{
      std::min(one.first.column + one.size.column, other.first.column + other.size.column),
      std::min(one.first.row + one.size.row, other.first.row + other.size.row)};
  return {first, {end.column - first.column, end.row - first.row}};
}

}  // namespace rimehaul::ports::gdal
