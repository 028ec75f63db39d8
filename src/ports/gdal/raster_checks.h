// What may be wrong with a raster before any of its heights is read.
#pragma once

#include <optional>
#include <vector>

#include "ports/gdal/gdal_guard.h"
#include "ports/gdal/lattice.h"

namespace rimehaul::ports::gdal {

/// Faults and doubts of an opened GDALDatasetH: bands, kind of numbers, size, place on the map,
/// reference system, scale, side-cars that would not be read.
[[nodiscard]] std::vector<base::Fault> faults_of_raster(void* dataset, const CheckedFile& file);

/// Nothing when the dataset has no affine place on the map or a broken one.
[[nodiscard]] std::optional<Lattice> lattice_of_dataset(void* dataset);

/// Index of the band that says how far a cell is there at all; 0 when there is none.
[[nodiscard]] int alpha_band_of(void* dataset);

}  // namespace rimehaul::ports::gdal
