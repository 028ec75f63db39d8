// The verb `rig`: the sheet of a rig as it stands.
#pragma once

#include "app/options.h"

namespace rimehaul::app {

/// `honest_no` when a rating of a mass, or the seats, is not kept.
[[nodiscard]] Status show_rig(const RigSheetOptions& options, const Outside& outside);

}  // namespace rimehaul::app
