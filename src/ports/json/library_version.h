// The version of nlohmann-json that is compiled in, for cards.
#pragma once

#include <string>

namespace rimehaul::ports::json {

/// "nlohmann-json 3.11.2", for instance.
[[nodiscard]] std::string library_version();

}  // namespace rimehaul::ports::json
