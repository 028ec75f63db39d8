// Finds where trails meet, snaps ends that nearly do, and says where they only seem to.
#pragma once

#include <vector>

#include "base/fault.h"
#include "trails/network.h"

namespace rimehaul::ports::geos {

/// Everything that is to become a network, in the map frame.
struct NetworkParts {
  std::vector<trails::Trail> trails;
  std::vector<trails::Station> stations;
  std::vector<trails::Zone> zones;
  std::vector<trails::Mark> marks;
  trails::TrailList trail_list = trails::TrailList::whole;
};

/// Nodes the trails: crossings become junctions, except under a bridge mark (reported); ends within
/// `snap` of another trail are moved onto it; stations join the trail nearest within 3 x snap;
/// zones are made valid, a forbidden zone that is not valid is refused, not repaired. Dangling ends
/// that are no station, crossings that are no junctions, and legs shorter than 20 m are doubts.
[[nodiscard]] base::Reading<trails::Network> node_network(NetworkParts parts, units::Metres snap);

}  // namespace rimehaul::ports::geos
