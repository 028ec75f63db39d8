// The verb `check`: all that is wrong or doubtful with a site, in one pass.
#pragma once

#include "app/options.h"

namespace rimehaul::app {

/// `yes` when nothing forbids the site's use, `honest_no` when faults do.
[[nodiscard]] Status check_site(const CheckOptions& options, const Outside& outside);

}  // namespace rimehaul::app
