// Settles what the heights of several files mean: one unit each, one datum for all.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "ports/gdal/raster_file.h"

namespace rimehaul::ports::gdal {

/// What the site says of its heights.
struct VerticalDeclared {
  std::optional<double> metres_per_unit;
  std::string datum;  ///< "" when it is not declared
  PlausibleRange range;
};

/// Makes every file read metres within the range; the datum's name is returned. A unit or datum
/// that nobody states, or that two state differently, is a fault; a declared datum that is named
/// otherwise in the files a doubt, because names of one level differ.
[[nodiscard]] base::Reading<std::string> settled_vertical(std::vector<RasterFile>& files,
                                                          const VerticalDeclared& declared);

}  // namespace rimehaul::ports::gdal
