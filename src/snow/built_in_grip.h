// The grip that is reckoned with where a site has measured nothing.
#pragma once

#include "snow/grip.h"

namespace rimehaul::snow {

/// Level motion resistance of hard ground under prepared snow, least and most of Table A5 of CRREL
/// Report 95-1: 3903.5 N and 5464.8 N of 104092.4 N.
inline constexpr ForceRange kHardGroundResistance{.low = units::ForceRatio{0.0375},
                                                  .high = units::ForceRatio{0.0525}};

/// The built-in row of a state. `pressure` must be finite and above 0. At a fixed surface no number
/// is less cautious in a wetter class, and at a fixed wetness no grip is better on a slipperier
/// surface (groomed, fresh, refrozen, ice).
[[nodiscard]] GripRow built_in_grip(SnowState state, units::Kilopascals pressure);

}  // namespace rimehaul::snow
