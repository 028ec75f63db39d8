// The versions that a card was made with.
#pragma once

#include <string>
#include <vector>

namespace rimehaul::app {

/// "rimehaul 0.1.0" and the outside libraries that inputs, numbers, digests and sheets
/// depend on.
[[nodiscard]] std::vector<std::string> versions();

}  // namespace rimehaul::app
