#include "ports/proj/library_version.h"

#include <proj.h>

namespace rimehaul::ports::proj {

std::string library_version() {
  return std::string{"PROJ "} + proj_info().version;
}

}  // namespace rimehaul::ports::proj
