// The ground under a rig place by place: planes fitted to the heights, where the judge has bounds.
#pragma once

#include <vector>

#include "audit/raw_leg.h"
#include "passage/footfall.h"

namespace rimehaul::audit {

/// Which leg of a run.
struct LegOfRun {
  const Run& run;
  std::size_t leg = 0;
  const geo::Polyline& line;  ///< of the leg
};

/// Places on a leg, every metre and at its end. The least-squares plane under the carrier is fitted
/// on the line and the line's error to each side of it; that under the trailer likewise, where the
/// trailer runs behind on the joined line, pointing at its hitch; at the start of a run it stands
/// on the first point. Each box holds its three planes and nothing more.
[[nodiscard]] std::vector<passage::Footfall> exact_footfalls(const passage::Scene& scene,
                                                             const rig::Rig& rig,
                                                             const LegOfRun& leg);

}  // namespace rimehaul::audit
