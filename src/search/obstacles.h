// What would open a way that is blocked: another load, no trailer, other snow.
#pragma once

#include "search/route.h"

namespace rimehaul::search {

/// Fills in, for every obstacle, the loads, the rig without its trailer, and the snow states in
/// which it would be open at the same hour, all else as it stands: loads between 0 and the rating
/// in steps of 25 kg, and every wetness on every surface with the day's weather. Loads are tried
/// for legs, not for turns. Judges each of them anew, so it takes a while.
[[nodiscard]] NoRoute explain_obstacles(NoRoute none, const passage::Judge& judge);

}  // namespace rimehaul::search
