// A rectangle of ground along a straight piece of line, and the cells that it covers.
#pragma once

#include <array>

#include "terrain/grid.h"

namespace rimehaul::terrain {

/// The straight line between two places, widened to a rectangle. The two may be one place; the
/// rectangle then lies north-south.
struct Strip {
  geo::MapPoint from;
  geo::MapPoint to;
  units::Metres beyond;  ///< past both ends
  units::Metres each_side;
};

/// A closed range of columns or of rows, in units of cells.
struct CellRange {
  double low = 0.0;
  double high = 0.0;
};

/// A strip as it lies on the lattice: a parallelogram, a hair larger than the strip so that no
/// rounding leaves a cell out.
class StripOnGrid {
 public:
  StripOnGrid(const GridFrame& frame, const Strip& strip);

  [[nodiscard]] CellRange rows() const;
  [[nodiscard]] CellRange columns() const;
  /// Columns of that part of the strip that lies between two rows, which must touch it; low above
  /// high when they do not. And the same the other way.
  [[nodiscard]] CellRange columns_between(CellRange rows) const;
  [[nodiscard]] CellRange rows_between(CellRange columns) const;

 private:
  std::array<GridPlace, 4> corners_;
};

}  // namespace rimehaul::terrain
