// One raster file: what it says of itself, and its heights in metres with voids as NaN.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "ports/gdal/gdal_guard.h"
#include "ports/gdal/lattice.h"
#include "ports/gdal/vertical_said.h"
#include "terrain/height_map.h"
#include "units/quantities.h"

namespace rimehaul::ports::gdal {

/// Heights outside this range, both ends inclusive, are voids.
struct PlausibleRange {
  units::Metres lowest;
  units::Metres highest;
};

/// One opened raster. Belongs to one thread.
class RasterFile {
 public:
  /// Opens a checked file and looks at all it says, without reading heights. Everything wrong with
  /// it is among the faults, and then there is no data.
  static base::Reading<std::optional<RasterFile>> open(const CheckedFile& file);

  /// Row by row, metres, voids as NaN. Throws BadInput when the file cannot be read there.
  [[nodiscard]] std::vector<double> read(const terrain::CellWindow& window) const;
  void read(const terrain::CellWindow& window, terrain::HeightRows into) const;
  /// Columns and rows that the file keeps together.
  [[nodiscard]] terrain::CellIndex kept_together() const;

  [[nodiscard]] const std::string& shown() const { return shown_; }
  [[nodiscard]] terrain::CellIndex size() const { return size_; }
  [[nodiscard]] const Lattice& lattice() const { return lattice_; }
  /// Horizontal part, never null.
  [[nodiscard]] const Reference& reference() const { return reference_; }
  [[nodiscard]] const VerticalSaid& vertical() const { return vertical_; }

  [[nodiscard]] double metres_per_unit() const { return metres_per_unit_; }

  /// What is read from here on is multiplied by the unit and cut to the range.
  void read_as(double metres_per_unit, PlausibleRange range);

 private:
  RasterFile() = default;
  void look_at(std::vector<base::Fault>& faults);
  void void_by_masks(const terrain::CellWindow& window, terrain::HeightRows values) const;
  void void_missing_blocks(const terrain::CellWindow& window, terrain::HeightRows values) const;
  void bring_to_metres(const terrain::CellWindow& window, terrain::HeightRows values) const;

  std::string shown_;
  Dataset dataset_;
  terrain::CellIndex size_;
  Lattice lattice_;
  Reference reference_;
  VerticalSaid vertical_;
  int alpha_band_ = 0;  ///< 0: none
  std::optional<double> nodata_;
  double scale_ = 1.0;
  double offset_ = 0.0;
  double metres_per_unit_ = 1.0;
  PlausibleRange range_;
};

}  // namespace rimehaul::ports::gdal
