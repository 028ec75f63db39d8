// The version of GDAL that is linked, for cards.
#pragma once

#include <string>

namespace rimehaul::ports::gdal {

/// "GDAL 3.6.2", for instance.
[[nodiscard]] std::string library_version();

}  // namespace rimehaul::ports::gdal
