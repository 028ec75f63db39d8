// The version of toml++ that is compiled in, for cards.
#pragma once

#include <string>

namespace rimehaul::ports::toml {

/// "toml++ 3.3.0", for instance.
[[nodiscard]] std::string library_version();

}  // namespace rimehaul::ports::toml
