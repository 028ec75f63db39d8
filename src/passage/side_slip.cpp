// Side slip: what pulls across, together with what pulls or brakes along, against lateral grip.
#include <cmath>

#include "passage/forces.h"

namespace rimehaul::passage {

namespace {

using units::amount;
using units::count_of;
using units::kGravity;

/// The tongue's mass pulls the carrier across at the hitch.
double lateral_at_hitch(const Statics& statics) {
  if (!statics.footing.rig.trailer) {
    return 0.0;
  }
  return units::weight_of(statics.footing.weighed.tongue_mass).value() * statics.trailer.lateral;
}

}  // namespace

Across across_carrier(const Statics& statics) {
  const double pressed_newton =
      units::weight_of(statics.footing.weighed.carrier.mass).value() * statics.carrier.normal_least;
  const double grip = statics.footing.grip.lateral.value();
  return {.asked = units::Newtons{pressed_newton * statics.carrier.across_normal +
                                  lateral_at_hitch(statics)},
          .given = units::Newtons{grip * (pressed_newton - statics.hitch.uplift.value())}};
}

/// Friction ellipse: (along / grip along)^2 + (across / grip across)^2 <= 1, written as forces
/// across. Each of along / grip along, n_c / (n_c - U) and Y / (n_c - U) is largest at the least
/// normal load n_c, and K / sqrt(1 + G^2) at the steepest K and the gentlest G; so their sum is
/// bounded term by term.
Finding judge_carrier_side_slip(const Statics& statics) {
  Worksheet sheet{Check::carrier_side_slip};
  const Tilt& tilt = statics.carrier;
  sheet.positive("m_c", amount(statics.footing.weighed.carrier.mass), Origin::load);
  sheet.not_negative("G_c", amount(statics.footing.carrier.gentlest_grade()), Origin::heights);
  sheet.not_negative("K_c", tangent(tilt.steepest_across), Origin::heights);
  sheet.positive("n_c", count_of(tilt.normal_least), Origin::derived);
  sheet.not_negative("mu_l", amount(statics.footing.grip.lateral), Origin::grip);
  const double drive =
      sheet.not_negative("u_climb", count_of(grip_taken(statics.climb)), Origin::derived);
  const double brake =
      sheet.not_negative("u_hold", count_of(grip_taken(statics.hold)), Origin::derived);
  if (statics.footing.rig.trailer) {
    sheet.not_negative("Y", force(lateral_at_hitch(statics)), Origin::derived);
    sheet.not_negative("U", amount(statics.hitch.uplift), Origin::derived);
  }
  const Across across = across_carrier(statics);
  const double across_newton = across.asked.value();
  const double given_newton = across.given.value();
  const double along_newton = larger(drive, brake) * given_newton;
  return sheet.compared(
      force(std::sqrt(along_newton * along_newton + across_newton * across_newton)),
      force(given_newton));
}

/// The runners carry what the hitch does not, of gravity across and of normal load: the first at
/// the share of the tongue's mass, the second less the most that may press the hitch down. The
/// ratio n_t / (g m_t n_t - V) is largest at the least normal load n_t.
Finding judge_trailer_side_slip(const Statics& statics) {
  if (!statics.footing.rig.trailer) {
    return kept(Check::trailer_side_slip);
  }
  Worksheet sheet{Check::trailer_side_slip};
  const Tilt& tilt = statics.trailer;
  const double mass_kg =
      sheet.positive("m_t", amount(statics.footing.weighed.trailer.mass), Origin::load);
  const double tongue_kg =
      sheet.not_negative("m_h", amount(statics.footing.weighed.tongue_mass), Origin::load);
  sheet.not_negative("G_t", amount(statics.footing.trailer.gentlest_grade()), Origin::heights);
  sheet.not_negative("K_t", tangent(tilt.steepest_across), Origin::heights);
  const double normal = sheet.positive("n_t", count_of(tilt.normal_least), Origin::derived);
  const double down_newton = sheet.not_negative("V", amount(statics.hitch.down), Origin::derived);
  const double grip =
      sheet.not_negative("mu_tl", amount(statics.footing.grip.trailer_lateral), Origin::grip);
  const double across_newton = kGravity * (mass_kg - tongue_kg) * normal * tilt.across_normal;
  const double given_newton = grip * (kGravity * mass_kg * normal - down_newton);
  return sheet.compared(force(across_newton), force(given_newton));
}

}  // namespace rimehaul::passage
