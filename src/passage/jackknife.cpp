// Jackknife: the push of the trailer at an angle against what grip is left to hold the tail.
#include <cmath>

#include "passage/forces.h"

namespace rimehaul::passage {

namespace {

using units::amount;
using units::count_of;

double sine_of(double angle_tangent) {
  return angle_tangent / std::sqrt(1.0 + angle_tangent * angle_tangent);
}

/// What the friction ellipse leaves across when so much of the grip along is taken; 0 when all is.
double left_across(double taken) {
  return std::sqrt(above_zero(1.0 - taken * taken));
}

}  // namespace

TailGrip tail_grip(const Statics& statics) {
  const rig::Carrier& carrier = statics.footing.rig.carrier;
  const double pressed_newton =
      units::weight_of(statics.footing.weighed.carrier.mass).value() * statics.carrier.normal_least;
  const double tongue_newton = units::weight_of(statics.footing.weighed.tongue_mass).value();
  const double on_tracks_newton =
      carrier.track_weight_share * pressed_newton - statics.hitch.uplift.value();
  return {.push_arm_m = sine_of(statics.footing.rules.articulation.ratio()) *
                        hitch_behind_middle(carrier).value(),
          .hold_arm_m = carrier.contact_length.value() / 4.0,
          .of_tracks = units::Newtons{statics.footing.grip.lateral.value() * on_tracks_newton},
          .across = units::Newtons{pressed_newton * statics.carrier.across_normal +
                                   tongue_newton * statics.trailer.lateral}};
}

/// The push does not depend on the carrier's box. The moment of the tracks, linear in n_c where it
/// is above 0, is least at the least normal load and the steepest cross-slope.
Finding judge_jackknife(const Statics& statics) {
  if (!statics.footing.rig.trailer) {
    return kept(Check::jackknife);
  }
  const rig::Carrier& carrier = statics.footing.rig.carrier;
  const Tilt& tilt = statics.carrier;
  const HitchForces& hitch = statics.hitch;
  Worksheet sheet{Check::jackknife};
  const double push_newton = sheet.not_negative("P", amount(hitch.push), Origin::derived);
  sheet.positive("gamma", amount(statics.footing.rules.articulation), Origin::rules);
  sheet.positive("d_h", amount(hitch_behind_middle(carrier)), Origin::rig_sheet);
  sheet.positive("m_c", amount(statics.footing.weighed.carrier.mass), Origin::load);
  sheet.share_of_one("phi", carrier.track_weight_share, Origin::rig_sheet);
  sheet.positive("n_c", count_of(tilt.normal_least), Origin::derived);
  sheet.not_negative("U", amount(hitch.uplift), Origin::derived);
  sheet.not_negative("mu_l", amount(statics.footing.grip.lateral), Origin::grip);
  const double brake =
      sheet.not_negative("u_hold", count_of(grip_taken(statics.hold)), Origin::derived);
  const TailGrip tail = tail_grip(statics);
  sheet.not_negative("S", amount(tail.across), Origin::derived);
  sheet.positive("l", amount(carrier.contact_length), Origin::rig_sheet);
  const double held_newton = tail.of_tracks.value() * left_across(brake) - tail.across.value();
  return sheet.compared(moment(push_newton * tail.push_arm_m),
                        moment(held_newton * tail.hold_arm_m));
}

}  // namespace rimehaul::passage
