// Which loads a leg is open for: judged load by load, because some ballast can be needed.
#include <algorithm>

#include "base/require.h"
#include "passage/judge.h"
#include "passage/stretch_judge.h"

namespace rimehaul::passage {

using units::Kilograms;

namespace {

/// A rating beyond so many steps, or none, is no rating that can be judged load by load.
constexpr double kMostSteps = 10'000;

struct Steps {
  Kilograms each;
  Kilograms up_to;
};

/// 0, one step, two steps ... and the last load itself.
std::vector<Kilograms> loads_in(const Steps& steps) {
  std::vector<Kilograms> loads;
  for (int i = 0; i * steps.each < steps.up_to; ++i) {
    loads.push_back(i * steps.each);
  }
  loads.push_back(steps.up_to);
  return loads;
}

}  // namespace

std::vector<LoadInterval> open_loads(const Judge& judge, trails::LegId leg, LoadPlace place,
                                     Kilograms step, units::Instant entry) {
  base::require(step > Kilograms{0}, "loads are judged in steps above 0");
  rig::Rig rig = judge.rig();
  if (place == LoadPlace::towed && !rig.trailer.has_value()) {
    return {};
  }
  Kilograms& load = place == LoadPlace::bed ? rig.load.bed : rig.load.towed;
  const Kilograms rating =
      place == LoadPlace::bed ? rig.carrier.bed_rating : rig.trailer->payload_rating;
  if (!(rating >= Kilograms{0} && rating <= kMostSteps * step)) {
    return {};
  }
  // The ground under the rig does not depend on its load.
  const Stretch stretch = judge.stretch_of(leg);
  const std::vector<Footfall> ground = footfalls(
      judge.scene(), stretch.line, rig, line_error_of(judge.scene().network.trails[stretch.trail]));
  std::vector<LoadInterval> intervals;
  bool in_interval = false;
  for (const Kilograms tried : loads_in({.each = step, .up_to = rating})) {
    load = tried;
    const bool open =
        judge.with_rig(rig).judge_over(stretch, ground, entry).verdict == Verdict::open;
    if (open && !in_interval) {
      intervals.push_back({tried, tried});
    } else if (open) {
      intervals.back().to = tried;
    }
    in_interval = open;
  }
  return intervals;
}

}  // namespace rimehaul::passage
