// Zones that a stretch of trail enters, the line taken as wide as it may be off.
#pragma once

#include <vector>

#include "passage/finding.h"
#include "trails/features.h"

namespace rimehaul::passage {

/// Copies of the zones whose bounding box comes within `reach` of the line's: all that can touch
/// it, and maybe a few more.
[[nodiscard]] std::vector<trails::Zone> zones_around(const std::vector<trails::Zone>& zones,
                                                     const geo::Polyline& line,
                                                     units::Metres reach);

/// What the zones that one part of a line touches have to say.
struct ZoneJudgement {
  Finding finding;
  units::MetresPerSecond speed;  ///< lowest limit, no number where one of them is none; infinite
                                 ///< when there is none
};

/// Forbidden ground refuses; a speed limit without its speed is missing; the others have no say
/// here (release areas and runouts belong to the avalanche check).
[[nodiscard]] ZoneJudgement judge_zones(const std::vector<trails::Zone>& zones,
                                        const geo::Polyline& part, units::Metres reach);

}  // namespace rimehaul::passage
