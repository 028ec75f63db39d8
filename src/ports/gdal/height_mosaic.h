// Several rasters on one lattice, read as one: tiles side by side or overlapping.
#pragma once

#include <optional>
#include <vector>

#include "ports/gdal/raster_file.h"
#include "terrain/height_map.h"

namespace rimehaul::ports::gdal {

/// Where files overlap the first listed wins that knows a height there. Belongs to one thread.
class HeightMosaic {
 public:
  /// Requires at least one file. Files whose cells do not fall on those of the first are faults,
  /// and then there is no mosaic; heights that differ by more than half a metre where two files
  /// overlap are doubts.
  static base::Reading<std::optional<HeightMosaic>> of(std::vector<RasterFile> files);

  [[nodiscard]] const Lattice& lattice() const { return lattice_; }
  [[nodiscard]] terrain::CellIndex size() const { return size_; }
  [[nodiscard]] const Reference& reference() const { return files_.front().file.reference(); }
  [[nodiscard]] terrain::HeightBlock read(terrain::BlockIndex block) const;
  /// Requires a window of the mosaic.
  void read_window(const terrain::CellWindow& window, terrain::HeightRows into) const;
  [[nodiscard]] terrain::CellIndex kept_together() const {
    return files_.front().file.kept_together();
  }

 private:
  struct Placed {
    RasterFile file;
    terrain::CellIndex at;  ///< of its first cell on the mosaic's lattice
  };
  HeightMosaic() = default;
  static void add_known(const Placed& placed, const terrain::CellWindow& window,
                        terrain::HeightRows into);
  void doubt_overlaps(std::vector<base::Fault>& faults) const;

  std::vector<Placed> files_;
  Lattice lattice_;
  terrain::CellIndex size_;
};

}  // namespace rimehaul::ports::gdal
