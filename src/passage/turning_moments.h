// The moments at which a judgement may change: those of the snow, and those of the rules that read
// the hour.
#pragma once

#include <vector>

#include "passage/scene.h"
#include "rig/rig.h"
#include "snow/snow.h"

namespace rimehaul::passage {

/// A rig in a snow at a site.
struct Circumstances {
  const Scene& scene;
  const rig::Rig& rig;
  const snow::SnowAt& snow;
};

/// The moments of a period but its first at which something that is asked of a leg of this trail at
/// one hour may have another answer than one second earlier; in order, each once. Beside those of
/// the snow and of the site's status: when the hours of the trail and of the driver's level begin
/// and when they are over, local midnight and changes of the clock where there are such hours, when
/// groomed snow has set, when an order's hours or leave are over, and when a survey or an
/// inspection of a mark begins to count.
[[nodiscard]] std::vector<units::Instant> turning_moments_of_trail(const Circumstances& now,
                                                                   std::size_t trail,
                                                                   units::Period during);

/// The same for the ground of a turn between legs of two trails, which no hours and no grooming are
/// asked of.
struct TrailsThatMeet {
  std::size_t before = 0;
  std::size_t after = 0;
};
[[nodiscard]] std::vector<units::Instant> turning_moments_of_turn(const Circumstances& now,
                                                                  TrailsThatMeet trails,
                                                                  units::Period during);

}  // namespace rimehaul::passage
