// Stopping within sight: at walking pace, and the highest speed that still does.
#include <cmath>
#include <utility>

#include "passage/forces.h"

namespace rimehaul::passage {

namespace {

using units::amount;

/// How the rig slows: v t + v^2 / 2a is the way from seeing to standing.
struct Slowing {
  double reaction_s;
  double deceleration;  ///< m/s2, above 0
};

double way_to_stop(double speed, Slowing slowing) {
  return speed * slowing.reaction_s + speed * speed / (2.0 * slowing.deceleration);
}

/// The positive root of v t + v^2 / 2a = way, in the form that does not cancel; then lowered until
/// the way it needs is proven not to be longer, against rounding.
double speed_that_stops_within(double way_m, Slowing slowing) {
  const double time_s = slowing.reaction_s;
  double speed =
      2.0 * way_m / (time_s + std::sqrt(time_s * time_s + 2.0 * way_m / slowing.deceleration));
  while (speed > 0.0 && !(way_to_stop(speed, slowing) <= way_m)) {
    speed *= 1.0 - 1e-12;
  }
  return speed;
}

units::Amount deceleration_amount(double metres_per_second2) {
  return {metres_per_second2, units::Unit::metres_per_second2};
}

}  // namespace

Stopping judge_stopping(const Footing& footing, units::Metres sight, double allowed_share) {
  Worksheet sheet{Check::stopping};
  const Grip grip = statics_of(footing).hold;
  const double given_newton = sheet.any("B", amount(grip.given), Origin::derived);
  const double asked_newton = sheet.any("F", amount(grip.asked), Origin::derived);
  const double mass_kg = sheet.positive("m", amount(footing.weighed.total()), Origin::load);
  const double pace = sheet.positive("v", amount(footing.rules.walking_pace), Origin::rules);
  const double reaction_s = sheet.not_negative("t", amount(footing.rules.reaction), Origin::rules);
  const double deceleration = (given_newton - asked_newton) / mass_kg;
  sheet.any("a", deceleration_amount(deceleration), Origin::derived);
  const units::MetresPerSecond none{0.0};
  if (!sheet.holds() || !(deceleration > 0.0)) {
    return {sheet.refused("brake and drag do not overcome the hill: it cannot stop"), none};
  }
  const Slowing slowing{.reaction_s = reaction_s, .deceleration = deceleration};
  const units::Metres way{way_to_stop(pace, slowing)};
  Finding finding = sheet.compared(amount(way), amount(sight));
  const double top_speed = footing.rig.carrier.top_speed.value();
  const bool may_drive = stand_of(finding, allowed_share) == Stand::passes && top_speed > 0.0;
  if (!may_drive) {
    return {std::move(finding), none};
  }
  const double speed = speed_that_stops_within(allowed_share * sight.value(), slowing);
  return {std::move(finding), units::MetresPerSecond{smaller(speed, top_speed)}};
}

}  // namespace rimehaul::passage
