// The verb `override`: a named person orders more than the site's files say.
#pragma once

#include "app/options.h"

namespace rimehaul::app {

/// Keeps an order, takes one back, or shows those in force.
[[nodiscard]] Status override_rules(const OverrideOptions& options, const Outside& outside);

}  // namespace rimehaul::app
