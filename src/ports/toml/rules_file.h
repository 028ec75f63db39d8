// rules.toml: the site's rules over the cautious defaults.
#pragma once

#include "base/fault.h"
#include "passage/rules.h"
#include "ports/toml/text_file.h"

namespace rimehaul::ports::toml {

/// Reads the rules; what is not said stays at default_rules(), and the time zone is site.toml's.
/// With any fault the allowed share is NaN, so that nothing is open. Throws BadInput only when the
/// file cannot be read, is no TOML or of a newer schema.
[[nodiscard]] base::Reading<passage::Rules> read_rules(const TextFile& file);

}  // namespace rimehaul::ports::toml
