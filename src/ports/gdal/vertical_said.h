// What a raster file says of its heights: the unit, and the level they count from.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/fault.h"

namespace rimehaul::ports::gdal {

struct VerticalSaid {
  std::optional<double> metres_per_unit;
  std::string datum;  ///< "" when it is not said
};

/// Handles that a dataset owns: its OGRSpatialReferenceH (may be null) and a GDALRasterBandH.
struct SaidBy {
  void* reference = nullptr;
  void* band = nullptr;
};

/// From the vertical part of the reference system and from the band's unit; a conflict between the
/// two, an unknown unit and depths instead of heights are faults.
[[nodiscard]] base::Reading<VerticalSaid> vertical_of(SaidBy said_by, const std::string& shown);

/// Whether two units are one. The two feet differ by 2 in a million (6 mm on 3000 m), and files
/// write "ft" for either, so they count as one here.
struct TwoUnits {
  double one = 0.0;
  double other = 0.0;
};
[[nodiscard]] bool agree(TwoUnits units);

/// "metres", "feet" or "US survey feet".
[[nodiscard]] std::string name_of_unit(double metres_per_unit);

}  // namespace rimehaul::ports::gdal
