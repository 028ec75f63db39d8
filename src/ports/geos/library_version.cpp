#include "ports/geos/library_version.h"

#include <geos_c.h>

namespace rimehaul::ports::geos {

std::string library_version() {
  return std::string{"GEOS "} + GEOSversion();
}

}  // namespace rimehaul::ports::geos
