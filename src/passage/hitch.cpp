// What the hitch carries: the tongue's mass and what the grade shifts on to it or off it.
#include <cmath>
#include <limits>

#include "passage/forces.h"

namespace rimehaul::passage {

namespace {

using units::amount;
using units::kGravity;
using units::Newtons;

constexpr double kUnknown = std::numeric_limits<double>::quiet_NaN();

/// The trailer's numbers, written down; moments about the middle of its contact.
struct Levers {
  double mass_kg;
  double tongue_kg;
  double centre_m;  ///< height of its centre of gravity
  double hitch_m;   ///< height of the hitch
  double drawbar_m;
  double drag;  ///< high side, starting included
};

Levers levers_of(const Statics& statics, Worksheet& sheet) {
  const rig::Trailer& trailer = *statics.footing.rig.trailer;
  const rig::Weighed& weighed = statics.footing.weighed;
  Levers levers{};
  levers.mass_kg = sheet.not_negative("m_t", amount(weighed.trailer.mass), Origin::load);
  levers.tongue_kg = sheet.not_negative("m_h", amount(weighed.tongue_mass), Origin::load);
  levers.centre_m = sheet.positive("h_t", amount(weighed.trailer.centre.up), Origin::load);
  levers.hitch_m =
      sheet.not_negative("h_h", amount(statics.footing.rig.carrier.hitch_at.up), Origin::rig_sheet);
  levers.drawbar_m = sheet.positive("L", amount(trailer.drawbar_length), Origin::rig_sheet);
  levers.drag = sheet.not_negative("f_t", units::count_of(trailer_drag_high(statics.footing.grip)),
                                   Origin::grip);
  return levers;
}

struct Vertical {
  double down_newton;
  double uplift_newton;
};

/// Moments about the middle of the trailer's contact, drag at the snow and pull at the hitch:
/// V L = g n m_h L - g m_t (along (h_t - h_h) - f_t n h_h). The term in `along` is largest at one
/// end of its range whatever the sign of h_t - h_h; the others at most or least normal load. A
/// trailer that stands has no drag, so none is counted against uplift. What slows it acts at its
/// centre of gravity, as a fall of the ground does.
Vertical vertical_of(const Levers& levers, const Tilt& tilt, const Motion& motion) {
  const double weight_newton = kGravity * levers.mass_kg;
  const double tongue_newton = kGravity * levers.tongue_kg;
  const double rise_m = levers.centre_m - levers.hitch_m;
  const double ahead = motion.slowing / kGravity;
  const double onto = (larger(tilt.down * rise_m, -tilt.up * rise_m) + above_zero(ahead * rise_m)) /
                      levers.drawbar_m;
  const double off = (larger(tilt.up * rise_m, -tilt.down * rise_m) + above_zero(-ahead * rise_m)) /
                     levers.drawbar_m;
  const double drag = levers.drag * tilt.normal_most * levers.hitch_m / levers.drawbar_m;
  return {
      .down_newton = above_zero(tongue_newton * tilt.normal_most + weight_newton * (onto + drag)),
      .uplift_newton = above_zero(weight_newton * off - tongue_newton * tilt.normal_least)};
}

}  // namespace

HitchForces hitch_forces(const Statics& statics) {
  if (!statics.footing.rig.trailer) {
    return {};
  }
  Worksheet sheet{Check::hitch_vertical};
  const Levers levers = levers_of(statics, sheet);
  const double drag_low = statics.footing.grip.trailer_resistance.low.value();
  const bool usable = sheet.holds() && levers.tongue_kg <= levers.mass_kg && drag_low >= 0.0;
  if (!usable) {
    return {Newtons{kUnknown}, Newtons{kUnknown}, Newtons{kUnknown}, Newtons{kUnknown}};
  }
  const Tilt& tilt = statics.trailer;
  const Vertical vertical = vertical_of(levers, tilt, statics.motion);
  const double weight_newton = kGravity * levers.mass_kg;
  const double push_newton =
      weight_newton * (tilt.down - drag_low * tilt.normal_least) +
      drag_low * vertical.down_newton;  // what the hitch carries does not drag
  return {.down = Newtons{vertical.down_newton},
          .uplift = Newtons{vertical.uplift_newton},
          .pull = Newtons{above_zero(weight_newton * (tilt.up + levers.drag * tilt.normal_most))},
          .push = Newtons{above_zero(push_newton) + levers.mass_kg * statics.motion.slowing}};
}

Finding judge_hitch_vertical(const Statics& statics) {
  if (!statics.footing.rig.trailer) {
    return kept(Check::hitch_vertical);
  }
  const Tilt& tilt = statics.trailer;
  const HitchForces& forces = statics.hitch;
  Worksheet sheet{Check::hitch_vertical};
  levers_of(statics, sheet);
  sheet.any("G_up", amount(statics.footing.trailer.grade_high), Origin::heights);
  sheet.any("G_down", amount(statics.footing.trailer.grade_low.reversed()), Origin::heights);
  sheet.positive("n_t_most", units::count_of(tilt.normal_most), Origin::derived);
  sheet.positive("n_t", units::count_of(tilt.normal_least), Origin::derived);
  const double down_newton = sheet.not_negative("V", amount(forces.down), Origin::derived);
  const double uplift_newton = sheet.not_negative("U", amount(forces.uplift), Origin::derived);
  const units::Kilograms borne{larger(down_newton, uplift_newton) / kGravity};
  const units::Amount rated = amount(statics.footing.rig.carrier.hitch_vertical_rating);
  sheet.any("rated", rated, Origin::rig_sheet);
  return sheet.compared(amount(borne), rated);
}

}  // namespace rimehaul::passage
