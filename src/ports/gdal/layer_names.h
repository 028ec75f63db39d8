// The names in a vector file, without a look at shapes or values: quick, for completion.
#pragma once

#include <string>
#include <vector>

#include "ports/gdal/layers.h"

namespace rimehaul::ports::gdal {

// In the order of the file; those that are not UTF-8 are left out. Throw BadInput.

[[nodiscard]] std::vector<std::string> trail_names(const LayerFile& file);
[[nodiscard]] std::vector<std::string> station_names(const LayerFile& file);

}  // namespace rimehaul::ports::gdal
