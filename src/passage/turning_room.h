// Ground kept clear for turning round, and whether a rig can turn round on it.
#pragma once

#include <optional>

#include "rig/rig.h"
#include "trails/network.h"

namespace rimehaul::passage {

/// Radius of clear ground on which a rig turns round and leaves the way it came, from plane
/// geometry (derived): with r the least radius the rig can follow and b the distance from the
/// carrier's middle to its furthest corner, r + b alone, where it may go back and forth; with a
/// trailer, which it cannot push, sqrt(3) r + b: the three arcs of radius r that leave a line by 60
/// degrees, come round by 300 and join it again lie within sqrt(3) r of the middle one's centre.
[[nodiscard]] units::Metres room_to_turn_round(const rig::Rig& rig);

/// The largest clear ground at a junction that is known: its station's turning radius, or what a
/// mark of room to turn leaves of its radius around the junction; 0 when there is none.
[[nodiscard]] units::Metres turning_room_at(const trails::Network& network,
                                            trails::JunctionId junction);

/// Likewise for turning back at the end of a leg: rooms on the leg's own trail within 15 m of the
/// junction count whole, for the rig can turn in their middle.
[[nodiscard]] units::Metres room_to_turn_back(const trails::Network& network,
                                              const trails::Leg& leg);

}  // namespace rimehaul::passage
