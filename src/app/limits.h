// The verb `limits`: the steepest ground that a rig may be driven on.
#pragma once

#include "app/options.h"

namespace rimehaul::app {

/// `honest_no` when the rig as given is closed on the first surface in all snow asked for.
[[nodiscard]] Status limits(const LimitsOptions& options, const Outside& outside);

}  // namespace rimehaul::app
