// The version of the graph library that was compiled in, for cards.
#pragma once

#include <string>

namespace rimehaul::search {

/// "Boost 1_74", for instance.
[[nodiscard]] std::string library_version();

}  // namespace rimehaul::search
