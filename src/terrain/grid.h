// The lattice of cell centres that a height raster stands for, whatever way it lies on the map.
#pragma once

#include <compare>
#include <cstdint>

#include "geo/point.h"
#include "units/slope.h"

namespace rimehaul::terrain {

/// A cell of the raster by its column and row, both from 0.
struct CellIndex {
  std::int64_t column = 0;
  std::int64_t row = 0;

  friend auto operator<=>(const CellIndex&, const CellIndex&) = default;
};

/// A place in units of cells: cell centres are at whole numbers.
struct GridPlace {
  double column = 0.0;
  double row = 0.0;
};

/// Steepness of the ground towards map east and map north, rise over run.
struct Gradient {
  units::Slope east;
  units::Slope north;
};

/// One step along a column or row direction, as a displacement on the map.
struct GridStep {
  units::Metres east;
  units::Metres north;
};

struct GridSteps {
  GridStep per_column;
  GridStep per_row;
};

/// How much higher the ground is one column or one row further on.
struct GridRise {
  units::Metres per_column;
  units::Metres per_row;
};

/// The affine map between cell indices and the map: north-up, south-up, rotated and non-square
/// rasters are all just steps. `first` is the centre of cell (0, 0).
class GridFrame {
 public:
  /// Requires finite steps that span the plane (OurFault otherwise: the reader checks first).
  GridFrame(geo::MapPoint first, GridSteps steps);

  [[nodiscard]] geo::MapPoint centre_of(CellIndex cell) const;
  [[nodiscard]] GridPlace locate(geo::MapPoint place) const;
  /// Length on the map of a way of so many cells along columns and rows.
  [[nodiscard]] units::Metres length_of(GridPlace way) const;
  /// A rise turned into steepness towards east and north.
  [[nodiscard]] Gradient to_map(GridRise rise) const;
  /// Length of one step along columns or rows, the smaller and the larger of the two.
  [[nodiscard]] units::Metres smaller_step() const;
  [[nodiscard]] units::Metres larger_step() const;
  /// From the centre of a cell to the farthest corner of the ground that it stands for.
  [[nodiscard]] units::Metres half_diagonal() const;
  /// The least distance on the map between two places one cell apart on the lattice, in whatever
  /// direction: the smaller singular value of the step matrix.
  [[nodiscard]] units::Metres least_stretch() const;
  [[nodiscard]] GridStep per_column() const { return steps_.per_column; }
  [[nodiscard]] GridStep per_row() const { return steps_.per_row; }

 private:
  geo::MapPoint first_;
  GridSteps steps_;
  double determinant_ = 0.0;
};

}  // namespace rimehaul::terrain
