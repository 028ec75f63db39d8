// Small sums on forces that several checks share.
#include "passage/forces.h"

#include <cmath>

#include "passage/tilt.h"

namespace rimehaul::passage {

units::Metres hitch_behind_middle(const rig::Carrier& carrier) {
  return carrier.contact_length / 2.0 - carrier.hitch_at.forward;
}

double grip_taken(const Grip& grip) {
  const double given_N = grip.given_by_snow.value();
  const double usable_N = given_N > 0.0 ? given_N : std::nan("");
  return above_zero(grip.asked.value()) / usable_N;
}

double trailer_drag_high(const snow::GripRow& grip) {
  const double moving = grip.trailer_resistance.high.value();
  const double starting = grip.trailer_start.value();
  const bool known = std::isfinite(moving) && std::isfinite(starting);
  return known ? larger(moving, starting) : std::nan("");
}

}  // namespace rimehaul::passage
