// How much fuel a way may take.
#pragma once

#include "passage/rules.h"
#include "rig/rig.h"

namespace rimehaul::day {

/// What is aboard above the site's reserve. A way that needs more is not driven.
[[nodiscard]] units::Litres fuel_to_spare(const rig::Rig& rig, const passage::Rules& rules);

}  // namespace rimehaul::day
