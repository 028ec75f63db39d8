#include "passage/motion.h"

#include <cmath>
#include <limits>

#include "units/quantities.h"

namespace rimehaul::passage {

Tilt tilt_in_motion(const Tilt& tilt, const Motion& motion) {
  if (motion.slowing == 0.0 && motion.sideways == 0.0) {
    return tilt;
  }
  const double ahead = motion.slowing / units::kGravity;
  const double across = motion.sideways / units::kGravity;
  const double steepest = tilt.steepest_across;
  const double lift = across * steepest / std::sqrt(1.0 + steepest * steepest);
  const double normal_least = tilt.normal_least - lift;
  const bool stays_down = normal_least > 0.0;
  const double normal = stays_down ? normal_least : std::numeric_limits<double>::quiet_NaN();
  const double ratio = tilt.normal_least / normal;
  // A force that is below 0 helps, and helps no more on less normal load than before.
  const auto over_less = [ratio](double most_over_normal) {
    return larger(most_over_normal, most_over_normal * ratio);
  };
  Tilt moving = tilt;
  moving.normal_least = normal;
  moving.normal_most = tilt.normal_most + lift;
  moving.lateral = tilt.lateral + across;
  moving.across_normal = tilt.across_normal * ratio + across / normal;
  moving.back_normal = over_less(tilt.back_normal);
  moving.forward_normal = over_less(tilt.forward_normal) + ahead / normal;
  moving.right_normal = over_less(tilt.right_normal) + across / normal;
  moving.left_normal = over_less(tilt.left_normal) + across / normal;
  return moving;
}

}  // namespace rimehaul::passage
