// What several checks share of one footing, worked out once for all of them.
#include "passage/forces.h"

#include <cmath>

namespace rimehaul::passage {

/// What slows the trailer comes through the hitch: it leans the trailer no further than the grade.
Statics statics_of(const Footing& footing, const Motion& motion) {
  Statics statics{
      .footing = footing,
      .motion = motion,
      .carrier = tilt_in_motion(tilt_of(footing.carrier), motion),
      .trailer = tilt_in_motion(tilt_of(footing.trailer), {.sideways = motion.sideways}),
      .hitch = {},
      .climb = {},
      .hold = {}};
  statics.hitch = hitch_forces(statics);
  statics.climb = climb_grip(statics);
  statics.hold = hold_grip(statics);
  statics.hold.asked += units::Newtons{footing.weighed.total().value() * motion.slowing};
  return statics;
}

Finding judge_climb_traction(const Footing& footing) {
  return judge_climb_traction(statics_of(footing));
}

Finding judge_engine_power(const Footing& footing) {
  return judge_engine_power(statics_of(footing));
}

Finding judge_descent_hold(const Footing& footing) {
  return judge_descent_hold(statics_of(footing));
}

Finding judge_parking_hold(const Footing& footing) {
  return judge_parking_hold(statics_of(footing));
}

Finding judge_carrier_roll_over(const Footing& footing) {
  return judge_carrier_roll_over(statics_of(footing));
}

Finding judge_trailer_roll_over(const Footing& footing) {
  return judge_trailer_roll_over(statics_of(footing));
}

Finding judge_carrier_side_slip(const Footing& footing) {
  return judge_carrier_side_slip(statics_of(footing));
}

Finding judge_trailer_side_slip(const Footing& footing) {
  return judge_trailer_side_slip(statics_of(footing));
}

Finding judge_jackknife(const Footing& footing) {
  return judge_jackknife(statics_of(footing));
}

Finding judge_hitch_vertical(const Footing& footing) {
  return judge_hitch_vertical(statics_of(footing));
}

units::Metres hitch_behind_middle(const rig::Carrier& carrier) {
  return carrier.contact_length / 2.0 - carrier.hitch_at.forward;
}

double grip_taken(const Grip& grip) {
  const double given_newton = grip.given_by_snow.value();
  const double usable_newton = given_newton > 0.0 ? given_newton : std::nan("");
  return above_zero(grip.asked.value()) / usable_newton;
}

double trailer_drag_high(const snow::GripRow& grip) {
  const double moving = grip.trailer_resistance.high.value();
  const double starting = grip.trailer_start.value();
  const bool known = std::isfinite(moving) && std::isfinite(starting);
  return known ? larger(moving, starting) : std::nan("");
}

}  // namespace rimehaul::passage
