#include "ports/gdal/library_version.h"

#include <gdal.h>

namespace rimehaul::ports::gdal {

std::string library_version() {
  return std::string{"GDAL "} + GDALVersionInfo("RELEASE_NAME");
}

}  // namespace rimehaul::ports::gdal
