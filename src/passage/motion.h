// What braking and bends add to gravity: the forces of a rig that is not at steady speed on a
// straight line.
#pragma once

#include "passage/tilt.h"

namespace rimehaul::passage {

/// Accelerations of the whole rig, m/s2, not below 0; NaN is unknown.
struct Motion {
  double slowing = 0.0;   ///< along the track, as the brake is used
  double sideways = 0.0;  ///< level, across the track, to either side: v^2 / R in a bend
};

/// The bounds of a tilt for a rig that moves so, in shares of its weight. A bend's force is level:
/// it adds a = sideways / g across, and lifts or presses by at most a K / sqrt(1 + K^2). The
/// brake's acts along the ground: it leans the rig forward and changes no normal load. NaN where so
/// sharp a bend would lift the rig off the ground.
[[nodiscard]] Tilt tilt_in_motion(const Tilt& tilt, const Motion& motion);

}  // namespace rimehaul::passage
