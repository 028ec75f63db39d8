// Forces that several checks share, each a bound over the boxes of a footing. NaN: unknown.
#pragma once

#include "passage/footing.h"
#include "passage/worksheet.h"
#include "units/quantities.h"

namespace rimehaul::passage {

/// Between carrier and trailer; all 0 without a trailer, all NaN when its sheet cannot be right.
struct HitchForces {
  units::Newtons down;    ///< most that presses the hitch down, pulling included; at least 0
  units::Newtons uplift;  ///< most that lifts it; at least 0
  units::Newtons pull;    ///< most that the trailer holds the carrier back with, starting included
  units::Newtons push;    ///< most that it pushes with at steady speed, its drag at the low side
};
[[nodiscard]] HitchForces hitch_forces(const Footing& footing);

/// Where the hitch stands behind the middle of the carrier's contact, about which it yaws.
[[nodiscard]] units::Metres hitch_behind_middle(const rig::Carrier& carrier);

/// A force asked for and what the snow and the brake give; their ratio bounds the share.
struct Grip {
  units::Newtons asked;
  units::Newtons given_by_snow;
  units::Newtons given;  ///< the snow's, or less where the hardware gives less
};
/// Starting uphill with everything behind.
[[nodiscard]] Grip climb_grip(const Footing& footing);
/// Holding the whole rig at steady speed downhill.
[[nodiscard]] Grip hold_grip(const Footing& footing);

/// Share of the snow's grip along the track that is asked for; NaN where there is none.
[[nodiscard]] double grip_taken(const Grip& grip);

/// Drag of the trailer at the high side, the start from standing included.
[[nodiscard]] double trailer_drag_high(const snow::GripRow& grip);

/// Amounts of force and moment, newtons and newton metres.
[[nodiscard]] constexpr units::Amount force(double newtons) {
  return {newtons, units::Unit::newtons};
}
[[nodiscard]] constexpr units::Amount moment(double newton_metres) {
  return {newton_metres, units::Unit::newton_metres};
}
[[nodiscard]] constexpr units::Amount tangent(double rise_over_run) {
  return {rise_over_run, units::Unit::tangent};
}

}  // namespace rimehaul::passage
