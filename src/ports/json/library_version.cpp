#include "ports/json/library_version.h"

#include <nlohmann/json.hpp>

namespace rimehaul::ports::json {

std::string library_version() {
  return "nlohmann-json " + std::to_string(NLOHMANN_JSON_VERSION_MAJOR) + "." +
         std::to_string(NLOHMANN_JSON_VERSION_MINOR) + "." +
         std::to_string(NLOHMANN_JSON_VERSION_PATCH);
}

}  // namespace rimehaul::ports::json
