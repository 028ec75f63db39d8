#include "ports/toml/library_version.h"

#include <toml++/impl/version.h>

namespace rimehaul::ports::toml {

std::string library_version() {
  return "toml++ " + std::to_string(TOML_LIB_MAJOR) + "." + std::to_string(TOML_LIB_MINOR) + "." +
         std::to_string(TOML_LIB_PATCH);
}

}  // namespace rimehaul::ports::toml
