// Descending and standing: the brake against the hill and the trailer's push.
#include <cmath>
#include <limits>

#include "passage/forces.h"

namespace rimehaul::passage {

namespace {

using units::amount;
using units::count_of;
using units::kGravity;

/// Tangents of the steepest fall that counts, carrier and trailer.
struct Falls {
  units::Slope carrier;
  units::Slope trailer;
};

struct Hold {
  Worksheet sheet;
  double asked_newton = 0.0;
  double by_snow_newton = 0.0;
  double given_newton = 0.0;
};

/// What the trailer pushes with: gravity less the drag of its runners, at the low side; what rides
/// on the hitch does not drag on them.
double trailer_push(const Statics& statics, Worksheet& sheet, units::Slope fall) {
  const double mass_kg =
      sheet.not_negative("m_t", amount(statics.footing.weighed.trailer.mass), Origin::load);
  sheet.any("G_t", amount(fall), Origin::heights);
  const double normal =
      sheet.positive("n_t", count_of(statics.trailer.normal_least), Origin::derived);
  const double drag = sheet.not_negative(
      "f_t_low", amount(statics.footing.grip.trailer_resistance.low), Origin::grip);
  const double on_hitch_newton =
      sheet.not_negative("V", amount(statics.hitch.down), Origin::derived);
  return kGravity * mass_kg * (along(fall) - drag * normal) + drag * on_hitch_newton;
}

/// Asked: gravity, less the trailer's drag, which falls with its normal load n_t. Given: the grip
/// of the braked tracks, which rises with n_c. So the least normal loads bound the share. The
/// carrier's own drag is not counted: a brake coefficient may have been measured with it.
Hold hold_of(Check check, const Statics& statics, Falls falls, units::Newtons brake_limit) {
  Hold hold{.sheet = Worksheet{check}};
  Worksheet& sheet = hold.sheet;
  const Tilt& tilt = statics.carrier;
  const double mass_kg =
      sheet.positive("m_c", amount(statics.footing.weighed.carrier.mass), Origin::load);
  sheet.any("G_c", amount(falls.carrier), Origin::heights);
  sheet.not_negative("K_c", tangent(tilt.steepest_across), Origin::heights);
  const double normal = sheet.positive("n_c", count_of(tilt.normal_least), Origin::derived);
  const double weight_newton = kGravity * mass_kg;
  hold.asked_newton = weight_newton * along(falls.carrier);
  double uplift_newton = 0.0;
  if (statics.footing.rig.trailer) {
    hold.asked_newton += trailer_push(statics, sheet, falls.trailer);
    uplift_newton = sheet.not_negative("U", amount(statics.hitch.uplift), Origin::derived);
  }
  const double grip = sheet.not_negative("mu_b", amount(statics.footing.grip.brake), Origin::grip);
  const double on_tracks =
      sheet.share_of_one("phi", statics.footing.rig.carrier.track_weight_share, Origin::rig_sheet);
  const double limit_newton = sheet.not_negative("B", amount(brake_limit), Origin::rig_sheet);
  hold.by_snow_newton = grip * (on_tracks * weight_newton * normal - uplift_newton);
  hold.given_newton = smaller(limit_newton, hold.by_snow_newton);
  return hold;
}

Hold descending(const Statics& statics) {
  const Falls falls{.carrier = statics.footing.carrier.grade_low.reversed(),
                    .trailer = statics.footing.trailer.grade_low.reversed()};
  return hold_of(Check::descent_hold, statics, falls, statics.footing.rig.carrier.brake_force);
}

}  // namespace

Grip hold_grip(const Statics& statics) {
  const Hold hold = descending(statics);
  if (!hold.sheet.holds()) {
    const units::Newtons unknown_force{std::numeric_limits<double>::quiet_NaN()};
    return {unknown_force, unknown_force, unknown_force};
  }
  return {.asked = units::Newtons{hold.asked_newton},
          .given_by_snow = units::Newtons{hold.by_snow_newton},
          .given = units::Newtons{hold.given_newton}};
}

Finding judge_descent_hold(const Statics& statics) {
  const Hold hold = descending(statics);
  return hold.sheet.compared(force(hold.asked_newton), force(hold.given_newton));
}

Finding judge_parking_hold(const Statics& statics) {
  const Falls falls{.carrier = units::Slope::from_ratio(statics.carrier.steepest_grade),
                    .trailer = units::Slope::from_ratio(statics.trailer.steepest_grade)};
  const Hold hold =
      hold_of(Check::parking_hold, statics, falls, statics.footing.rig.carrier.parking_brake_force);
  return hold.sheet.compared(force(hold.asked_newton), force(hold.given_newton));
}

}  // namespace rimehaul::passage
