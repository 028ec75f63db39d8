// rules.toml: the site's rules over the cautious defaults.
#pragma once

#include <string>

#include "base/fault.h"
#include "passage/rules.h"

namespace rimehaul::ports::toml {

/// Reads the rules; what is not said stays at default_rules().
[[nodiscard]] base::Reading<passage::Rules> read_rules(const std::string& path,
                                                       const std::string& shown);

}  // namespace rimehaul::ports::toml
