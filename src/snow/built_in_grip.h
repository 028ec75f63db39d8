// The grip that is reckoned with where a site has measured nothing.
#pragma once

#include "snow/grip.h"

namespace rimehaul::snow {

/// The built-in row of a state. `pressure` must be finite and above 0. At a fixed surface no number
/// is less cautious in a wetter class, and at a fixed wetness no grip is better on a slipperier
/// surface (groomed, fresh, refrozen, ice).
[[nodiscard]] GripRow built_in_grip(SnowState state, units::Kilopascals pressure);

}  // namespace rimehaul::snow
