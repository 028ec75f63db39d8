// The version of PROJ that is linked, for cards.
#pragma once

#include <string>

namespace rimehaul::ports::proj {

/// "PROJ 9.1.1", for instance.
[[nodiscard]] std::string library_version();

}  // namespace rimehaul::ports::proj
