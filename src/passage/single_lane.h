// Single lanes that are driven both ways: how far it is to the next place where rigs can pass.
#pragma once

#include "passage/finding.h"
#include "passage/rules.h"
#include "passage/stretch.h"

namespace rimehaul::passage {

/// The longest run of a two-way single lane that a stretch enters and that has nowhere to pass: no
/// end of the trail, passing place, room to turn or radio gate within it. 0 for other trails.
/// Unknown lanes or direction count as a two-way single lane.
[[nodiscard]] units::Metres longest_run_without_passing(const trails::Network& network,
                                                        const Stretch& stretch);

/// That run against the longest that the rules allow; kept where they set none.
[[nodiscard]] Finding judge_single_lane(const trails::Network& network, const Stretch& stretch,
                                        const Rules& rules);

}  // namespace rimehaul::passage
