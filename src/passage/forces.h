// Forces that several checks share, each a bound over the boxes of a footing. NaN: unknown.
#pragma once

#include "passage/footing.h"
#include "passage/motion.h"
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
  Motion motion{};
  Tilt carrier;
  Tilt trailer;
  HitchForces hitch;
  Grip climb;  ///< starting uphill with everything behind
  Grip hold;   ///< holding the whole rig at steady speed downhill
};
/// At steady speed on a straight line, or moving otherwise: what the trailer presses and pushes
/// with, and what the brake is asked, then have the masses' slowing in them.
[[nodiscard]] Statics statics_of(const Footing& footing, const Motion& motion = {});

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

/// What pulls the carrier across, and the grip across that it has while none is taken along.
struct Across {
  units::Newtons asked;
  units::Newtons given;
};
[[nodiscard]] Across across_carrier(const Statics& statics);

/// What the jackknife check weighs, apart from the push and the brake.
struct TailGrip {
  double push_arm_m = 0.0;   ///< sin(gamma) d_h
  double hold_arm_m = 0.0;   ///< l / 4
  units::Newtons of_tracks;  ///< mu_l (phi g m_c n_c - U)
  units::Newtons across;     ///< S
};
[[nodiscard]] TailGrip tail_grip(const Statics& statics);

/// The hardest braking that is planned, m/s2: by all the grip there is and the trailer's drag, on
/// the level.
[[nodiscard]] double hardest_slowing(const Footing& footing);

/// How hard the carrier may be slowed, m/s2, before the lean towards an edge that faces ahead comes
/// to the allowed share of what it bears: `bent` is not slowed, and the hitch's moment is that of
/// `harsh`, slowed harder than will be. Not above 0 where it may not be slowed at all.
[[nodiscard]] double slowing_before_tip(const Statics& bent, const Statics& harsh,
                                        double allowed_share);

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
