// Jackknife: the push of the trailer at an angle against what grip is left to hold the tail.
#include <cmath>

#include "passage/forces.h"

namespace rimehaul::passage {

namespace {

using units::amount;
using units::count_of;
using units::kGravity;

double sine_of(double angle_tangent) {
  return angle_tangent / std::sqrt(1.0 + angle_tangent * angle_tangent);
}

/// What the friction ellipse leaves across when so much of the grip along is taken; 0 when all is.
double left_across(double taken) {
  return std::sqrt(above_zero(1.0 - taken * taken));
}

}  // namespace

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
  const double angle =
      sheet.positive("gamma", amount(statics.footing.rules.articulation), Origin::rules);
  const double arm_m =
      sheet.positive("d_h", amount(hitch_behind_middle(carrier)), Origin::rig_sheet);
  const double mass_kg =
      sheet.positive("m_c", amount(statics.footing.weighed.carrier.mass), Origin::load);
  const double on_tracks = sheet.share_of_one("phi", carrier.track_weight_share, Origin::rig_sheet);
  const double normal = sheet.positive("n_c", count_of(tilt.normal_least), Origin::derived);
  const double uplift_newton = sheet.not_negative("U", amount(hitch.uplift), Origin::derived);
  const double grip =
      sheet.not_negative("mu_l", amount(statics.footing.grip.lateral), Origin::grip);
  const double brake =
      sheet.not_negative("u_hold", count_of(grip_taken(statics.hold)), Origin::derived);
  const double tongue_newton = units::weight_of(statics.footing.weighed.tongue_mass).value();
  const double weight_newton = kGravity * mass_kg;
  const double across_newton =
      weight_newton * normal * tilt.across_normal + tongue_newton * statics.trailer.lateral;
  sheet.not_negative("S", force(across_newton), Origin::derived);
  const double length_m = sheet.positive("l", amount(carrier.contact_length), Origin::rig_sheet);
  const double held_newton =
      grip * (on_tracks * weight_newton * normal - uplift_newton) * left_across(brake) -
      across_newton;
  return sheet.compared(moment(push_newton * sine_of(angle) * arm_m),
                        moment(held_newton * length_m / 4.0));
}

}  // namespace rimehaul::passage
