// The lattice of a raster in the units of its own reference system: metres, feet or degrees.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <vector>

#include "ports/gdal/map_transform.h"
#include "terrain/grid.h"

namespace rimehaul::ports::gdal {

/// Cell centres at first + column x per_column + row x per_row. Beside terrain::GridFrame because a
/// raster may still be in degrees here, and degrees must not pass for metres.
struct Lattice {
  PlainPoint first;
  PlainPoint per_column;
  PlainPoint per_row;

  [[nodiscard]] PlainPoint at(terrain::GridPlace place) const;
  [[nodiscard]] terrain::GridPlace locate(PlainPoint point) const;
  /// Whether the steps are finite and span the plane.
  [[nodiscard]] bool is_sound() const;
  /// All lengths multiplied, feet to metres for instance.
  [[nodiscard]] Lattice scaled(double factor) const;
  /// With cell (column, row) as the first.
  [[nodiscard]] Lattice shifted(terrain::CellIndex by) const;
  /// Seen as a metric map. Requires that the units are metres.
  [[nodiscard]] terrain::GridFrame as_metric() const;
};

/// From GDAL's affine coefficients, which speak of cell corners whatever the file said of points.
[[nodiscard]] Lattice lattice_of(const std::array<double, 6>& geotransform);

/// Corners, middles of the edges and, as the fifth of nine, the middle of a raster of so many
/// cells.
[[nodiscard]] std::vector<PlainPoint> outline_of(const Lattice& lattice, terrain::CellIndex size);

struct TwoLattices {
  const Lattice& base;
  const Lattice& other;
};

/// Where the first cell of `other` lies in `base`, if the two share one lattice to within a
/// hundredth of a cell over `extent` cells; nothing when they do not.
[[nodiscard]] std::optional<terrain::CellIndex> offset_on(const TwoLattices& two,
                                                          terrain::CellIndex extent);

}  // namespace rimehaul::ports::gdal
