// Whether a rig can follow a bend, and how wide it sweeps through it.
#pragma once

#include <optional>

#include "passage/bend.h"
#include "passage/finding.h"
#include "rig/rig.h"

namespace rimehaul::passage {

/// Least radius that the rig can follow steadily: the carrier's own, or, where that is larger, the
/// one at which the trailer still follows. Not a number when the sheet lacks one.
[[nodiscard]] units::Metres least_radius(const rig::Rig& rig);

/// Ground that the rig covers in a steady turn whose radius is that of the carrier's middle.
struct Sweep {
  units::Metres off_tracking;  ///< how far inside the carrier's path the trailer runs, below 0
                               ///< outside it; 0 without one
  units::Metres width;         ///< between the outermost and the innermost edge
};

/// Steady-turn geometry of rigid bodies. Nothing when the trailer cannot follow that radius or a
/// number is missing.
[[nodiscard]] std::optional<Sweep> sweep_of(const rig::Rig& rig, units::Metres radius);

/// Least radius of the rig against the bend's.
[[nodiscard]] Finding judge_turning(const rig::Rig& rig, const Bend& bend);

/// Width swept in the bend, and what the rig cuts off a drawn corner, against the trail's width.
/// `trail_width` nothing: unknown, closed. A straight line compares the rig's own width.
[[nodiscard]] Finding judge_off_tracking(const rig::Rig& rig, const Bend& bend,
                                         std::optional<units::Metres> trail_width);

}  // namespace rimehaul::passage
