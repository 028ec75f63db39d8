// Forces that several checks share, each a bound over the boxes of a footing. NaN: unknown.
#pragma once

#include "passage/footing.h"
#include "passage/tilt.h"
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

/// A force asked for and what the snow and the brake give; their ratio bounds the share.
struct Grip {
  units::Newtons asked;
  units::Newtons given_by_snow;
  units::Newtons given;  ///< the snow's, or less where the hardware gives less
};

/// What the checks of one footing share, worked out once. Holds a reference to the footing.
struct Statics {
  const Footing& footing;
  Tilt carrier;
  Tilt trailer;
  HitchForces hitch;
  Grip climb;  ///< starting uphill with everything behind
  Grip hold;   ///< holding the whole rig at steady speed downhill
};
[[nodiscard]] Statics statics_of(const Footing& footing);

// Parts of the above, each from those before it.
[[nodiscard]] HitchForces hitch_forces(const Statics& statics);
[[nodiscard]] Grip climb_grip(const Statics& statics);
[[nodiscard]] Grip hold_grip(const Statics& statics);

// The ground checks that rest on them.
[[nodiscard]] Finding judge_climb_traction(const Statics& statics);
[[nodiscard]] Finding judge_engine_power(const Statics& statics);
[[nodiscard]] Finding judge_descent_hold(const Statics& statics);
[[nodiscard]] Finding judge_parking_hold(const Statics& statics);
[[nodiscard]] Finding judge_carrier_roll_over(const Statics& statics);
[[nodiscard]] Finding judge_trailer_roll_over(const Statics& statics);
[[nodiscard]] Finding judge_carrier_side_slip(const Statics& statics);
[[nodiscard]] Finding judge_trailer_side_slip(const Statics& statics);
[[nodiscard]] Finding judge_jackknife(const Statics& statics);
[[nodiscard]] Finding judge_hitch_vertical(const Statics& statics);

/// Where the hitch stands behind the middle of the carrier's contact, about which it yaws.
[[nodiscard]] units::Metres hitch_behind_middle(const rig::Carrier& carrier);

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
