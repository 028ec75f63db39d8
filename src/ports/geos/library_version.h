// The version of GEOS that is linked, for cards.
#pragma once

#include <string>

namespace rimehaul::ports::geos {

/// "GEOS 3.11.1-CAPI-1.17.1", for instance.
[[nodiscard]] std::string library_version();

}  // namespace rimehaul::ports::geos
