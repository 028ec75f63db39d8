// The account of the machine that the program runs for.
#pragma once

#include <string>

namespace rimehaul::app {

/// Its name, or "account 1000" where it has none.
[[nodiscard]] std::string own_account();

}  // namespace rimehaul::app
