// Zones that a stretch of trail enters, the line taken as wide as it may be off.
#pragma once

#include <vector>

#include "passage/finding.h"
#include "trails/features.h"

namespace rimehaul::passage {

/// Whether any point of a line lies in a region or within `reach` of it. Exact: the least distance
/// of two lines that do not cross is found at a corner of one of them. NaN counts as touching.
[[nodiscard]] bool touches(const geo::Region& region, const geo::Polyline& line,
                           units::Metres reach);

/// Copies of the zones whose bounding box comes within `reach` of the line's: all that can touch
/// it, and maybe a few more.
[[nodiscard]] std::vector<trails::Zone> zones_around(const std::vector<trails::Zone>& zones,
                                                     const geo::Polyline& line,
                                                     units::Metres reach);

/// What the zones that one part of a line touches have to say.
struct ZoneJudgement {
  Finding finding;
  units::MetresPerSecond speed;  ///< lowest limit; infinite when there is none
};

/// Forbidden ground refuses; a speed limit without its speed is missing; the others have no say
/// here (release areas and runouts belong to the avalanche check).
[[nodiscard]] ZoneJudgement judge_zones(const std::vector<trails::Zone>& zones,
                                        const geo::Polyline& part, units::Metres reach);

}  // namespace rimehaul::passage
