// The verb `log`: who did what, and whether it is still what was written.
#pragma once

#include "app/options.h"
#include "app/outside.h"

namespace rimehaul::app {

[[nodiscard]] Status show_log(const LogOptions& options, const Outside& outside);

}  // namespace rimehaul::app
