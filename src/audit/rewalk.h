// The re-walk: a finished route judged again from the raw line and heights, trusting nothing.
#pragma once

#include <string>
#include <vector>

#include "passage/judge.h"

namespace rimehaul::audit {

/// What was promised of one leg of a route, in words and numbers and not as pointers into a search.
struct PromisedLeg {
  std::string trail;
  geo::Span span{};  ///< by chainage along the trail as drawn
  trails::Way way = trails::Way::as_drawn;
  units::Instant entry;
  double share = 0.0;            ///< the largest of the leg's and of the turns into and out of it
  bool permitted = false;        ///< a named person has taken the decision that it asks for
  units::MetresPerSecond speed;  ///< that the driver is told
  units::Seconds time;           ///< that the leg takes at that speed, at most
  units::Litres fuel;            ///< likewise
};

/// Something that is worse than promised.
struct Discrepancy {
  std::size_t leg = 0;  ///< index into the promise
  std::string what;     ///< one line
};

struct Rewalk {
  std::vector<Discrepancy> discrepancies;  ///< empty: the route holds
  double worst_share = 0.0;
  std::size_t places_judged = 0;
};

/// Walks the legs again every metre: joins their raw lines, fits the least-squares plane under
/// carrier and trailer at the centre line and at both edges of the track, and asks every check
/// anew, driven as fast as was promised, at the hours promised. Worse than promised, not open, not
/// joined end to end, driven against its direction, entered before the leg before it can have been
/// driven, or waited for where there is no station is a discrepancy, and so is ground that does not
/// allow the speed promised or takes more time or fuel at it; an empty promise is one too.
[[nodiscard]] Rewalk rewalk(const passage::Scene& scene, const rig::Rig& rig,
                            const snow::SnowAt& snow, const std::vector<PromisedLeg>& promise);

/// The re-walk as it is handed to who needs it; a test puts one in its place that finds fault.
using WalkAgain = Rewalk (*)(const passage::Scene& scene, const rig::Rig& rig,
                             const snow::SnowAt& snow, const std::vector<PromisedLeg>& promise);

}  // namespace rimehaul::audit
