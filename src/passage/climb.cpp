// Climbing: grip to start again uphill with everything behind, and power to creep up.
#include <cmath>
#include <limits>
#include <string_view>

#include "passage/forces.h"

namespace rimehaul::passage {

namespace {

using units::amount;
using units::count_of;
using units::kGravity;

/// The trailer's part of what must be pulled: gravity, drag from standing, and what the share that
/// rides on the hitch drags more under the carrier than it would under the runners.
double trailer_force(const Statics& statics, Worksheet& sheet, double carrier_drag) {
  if (!statics.footing.rig.trailer) {
    return 0.0;
  }
  const double mass_kg =
      sheet.not_negative("m_t", amount(statics.footing.weighed.trailer.mass), Origin::load);
  sheet.any("G_t", amount(statics.footing.trailer.grade_high), Origin::heights);
  const double normal =
      sheet.positive("n_t_most", count_of(statics.trailer.normal_most), Origin::derived);
  const double drag =
      sheet.not_negative("f_t", count_of(trailer_drag_high(statics.footing.grip)), Origin::grip);
  const double on_hitch_newton =
      sheet.not_negative("V", amount(statics.hitch.down), Origin::derived);
  return kGravity * mass_kg * (along(statics.footing.trailer.grade_high) + drag * normal) +
         above_zero(carrier_drag - drag) * on_hitch_newton;
}

/// A normal load of the carrier, as a share of its weight.
struct Normal {
  std::string_view symbol;
  double share;
};

/// F = max(0, g m_c along + T) + f_c g m_c n_c, T the trailer's part. Divided by a capacity
/// mu (phi g m_c n_c - U), its second term falls with n_c, and so does the first, which is not
/// below 0: the least n_c bounds the share. Where F alone counts, the most n_c bounds it.
double pulling_force(const Statics& statics, Worksheet& sheet, const Normal& load) {
  const double mass_kg =
      sheet.positive("m_c", amount(statics.footing.weighed.carrier.mass), Origin::load);
  sheet.any("G_c", amount(statics.footing.carrier.grade_high), Origin::heights);
  sheet.not_negative("K_c", tangent(statics.carrier.steepest_across), Origin::heights);
  const double normal = sheet.positive(load.symbol, count_of(load.share), Origin::derived);
  const double drag =
      sheet.not_negative("f_c", amount(statics.footing.grip.carrier_resistance.high), Origin::grip);
  const double behind_newton = trailer_force(statics, sheet, drag);
  const double weight_newton = kGravity * mass_kg;
  return above_zero(weight_newton * along(statics.footing.carrier.grade_high) + behind_newton) +
         drag * weight_newton * normal;
}

struct Climb {
  Worksheet sheet{Check::climb_traction};
  double asked_newton = 0.0;
  double given_newton = 0.0;
};

Climb climb_of(const Statics& statics) {
  Climb climb;
  const double normal = statics.carrier.normal_least;
  climb.asked_newton = pulling_force(statics, climb.sheet, {"n_c", normal});
  const double grip =
      climb.sheet.not_negative("mu", amount(statics.footing.grip.traction), Origin::grip);
  const double on_tracks = climb.sheet.share_of_one(
      "phi", statics.footing.rig.carrier.track_weight_share, Origin::rig_sheet);
  double uplift_newton = 0.0;
  if (statics.footing.rig.trailer) {
    uplift_newton = climb.sheet.not_negative("U", amount(statics.hitch.uplift), Origin::derived);
  }
  const double weight_newton = kGravity * statics.footing.weighed.carrier.mass.value();
  climb.given_newton = grip * (on_tracks * weight_newton * normal - uplift_newton);
  return climb;
}

}  // namespace

Grip climb_grip(const Statics& statics) {
  const Climb climb = climb_of(statics);
  if (!climb.sheet.holds()) {
    const units::Newtons unknown_force{std::numeric_limits<double>::quiet_NaN()};
    return {unknown_force, unknown_force, unknown_force};
  }
  const units::Newtons given{climb.given_newton};
  return {.asked = units::Newtons{climb.asked_newton}, .given_by_snow = given, .given = given};
}

Finding judge_climb_traction(const Statics& statics) {
  const Climb climb = climb_of(statics);
  return climb.sheet.compared(force(climb.asked_newton), force(climb.given_newton));
}

Finding judge_engine_power(const Statics& statics) {
  Worksheet sheet{Check::engine_power};
  const double force_newton =
      pulling_force(statics, sheet, {"n_c_most", statics.carrier.normal_most});
  const double pace =
      sheet.positive("v", amount(statics.footing.rules.walking_pace), Origin::rules);
  const double efficiency = sheet.share_of_one(
      "eta", statics.footing.rig.carrier.driveline_efficiency, Origin::rig_sheet);
  const units::Watts needed{force_newton * pace / efficiency};
  const units::Amount power = amount(statics.footing.rig.carrier.engine_power);
  sheet.any("power", power, Origin::rig_sheet);
  return sheet.compared(amount(needed), power);
}

}  // namespace rimehaul::passage
