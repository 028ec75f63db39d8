// The verb `slopes`: rasters of the ground's slope, and of where a rig may head on it.
#pragma once

#include "app/options.h"

namespace rimehaul::app {

/// `honest_no` where a rig was asked for that no cell is open to.
[[nodiscard]] Status slopes(const SlopesOptions& options, const Outside& outside);

}  // namespace rimehaul::app
