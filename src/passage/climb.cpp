// Climbing: grip to start again uphill with everything behind, and power to creep up.
#include <cmath>
#include <limits>

#include "passage/forces.h"
#include "passage/tilt.h"

namespace rimehaul::passage {

namespace {

using units::amount;
using units::count_of;
using units::kGravity;

/// The trailer's part of what must be pulled: gravity, drag from standing, and what the share that
/// rides on the hitch drags more under the carrier than it would under the runners.
double trailer_force(const Footing& footing, Worksheet& sheet, double carrier_drag) {
  if (!footing.rig.trailer) {
    return 0.0;
  }
  const double mass_kg =
      sheet.not_negative("m_t", amount(footing.weighed.trailer.mass), Origin::load);
  sheet.any("G_t", amount(footing.trailer.grade_high), Origin::heights);
  const double normal =
      sheet.positive("n_t", count_of(tilt_of(footing.trailer).normal_most), Origin::derived);
  const double drag =
      sheet.not_negative("f_t", count_of(trailer_drag_high(footing.grip)), Origin::grip);
  const double on_hitch_N =
      sheet.not_negative("V", amount(hitch_forces(footing).down), Origin::derived);
  return kGravity * mass_kg * (along(footing.trailer.grade_high) + drag * normal) +
         above_zero(carrier_drag - drag) * on_hitch_N;
}

/// F = max(0, g m_c along + T) + f_c g m_c n_c, T the trailer's part. Divided by a capacity
/// mu (phi g m_c n_c - U), its second term falls with n_c, and so does the first, which is not
/// below 0: the least n_c bounds the share. Where F alone counts, the most n_c bounds it.
double pulling_force(const Footing& footing, Worksheet& sheet, double normal) {
  const double mass_kg = sheet.positive("m_c", amount(footing.weighed.carrier.mass), Origin::load);
  sheet.any("G_c", amount(footing.carrier.grade_high), Origin::heights);
  sheet.not_negative("K_c", tangent(tilt_of(footing.carrier).steepest_across), Origin::heights);
  sheet.positive("n_c", count_of(normal), Origin::derived);
  const double drag =
      sheet.not_negative("f_c", amount(footing.grip.carrier_resistance.high), Origin::grip);
  const double behind_N = trailer_force(footing, sheet, drag);
  const double weight_N = kGravity * mass_kg;
  return above_zero(weight_N * along(footing.carrier.grade_high) + behind_N) +
         drag * weight_N * normal;
}

struct Climb {
  Worksheet sheet{Check::climb_traction};
  double asked_N = 0.0;
  double given_N = 0.0;
};

Climb climb_of(const Footing& footing) {
  Climb climb;
  const double normal = tilt_of(footing.carrier).normal_least;
  climb.asked_N = pulling_force(footing, climb.sheet, normal);
  const double grip = climb.sheet.not_negative("mu", amount(footing.grip.traction), Origin::grip);
  const double on_tracks =
      climb.sheet.share_of_one("phi", footing.rig.carrier.track_weight_share, Origin::rig_sheet);
  double uplift_N = 0.0;
  if (footing.rig.trailer) {
    uplift_N = climb.sheet.not_negative("U", amount(hitch_forces(footing).uplift), Origin::derived);
  }
  const double weight_N = kGravity * footing.weighed.carrier.mass.value();
  climb.given_N = grip * (on_tracks * weight_N * normal - uplift_N);
  return climb;
}

}  // namespace

Grip climb_grip(const Footing& footing) {
  const Climb climb = climb_of(footing);
  if (!climb.sheet.holds()) {
    const units::Newtons unknown_force{std::numeric_limits<double>::quiet_NaN()};
    return {unknown_force, unknown_force, unknown_force};
  }
  const units::Newtons given{climb.given_N};
  return {.asked = units::Newtons{climb.asked_N}, .given_by_snow = given, .given = given};
}

Finding judge_climb_traction(const Footing& footing) {
  const Climb climb = climb_of(footing);
  return climb.sheet.compared(force(climb.asked_N), force(climb.given_N));
}

Finding judge_engine_power(const Footing& footing) {
  Worksheet sheet{Check::engine_power};
  const double force_N = pulling_force(footing, sheet, tilt_of(footing.carrier).normal_most);
  const double pace = sheet.positive("v", amount(footing.rules.walking_pace), Origin::rules);
  const double efficiency =
      sheet.share_of_one("eta", footing.rig.carrier.driveline_efficiency, Origin::rig_sheet);
  const units::Watts needed{force_N * pace / efficiency};
  return sheet.compared(amount(needed), amount(footing.rig.carrier.engine_power));
}

}  // namespace rimehaul::passage
