// Places on the trails where a way over open ground may begin or end.
#pragma once

#include <string>
#include <vector>

#include "geo/region.h"
#include "trails/open_ways.h"

namespace rimehaul::crossing {

/// One such place.
struct Gate {
  trails::OnTrail where;
  geo::MapPoint place;
  std::string name;  ///< of the station there, else trail and chainage
  /// Directions in which one drives away from it over trails. Who arrives over one of them heads
  /// the opposite way.
  std::vector<units::Bearing> onward;
  bool at_station = false;
};

/// How gates lie along a trail.
struct GateSpacing {
  units::Metres apart;   ///< no further than this from the next; above 0
  units::Metres inside;  ///< so far from where a trail crosses the edge of the ground; 0 or more
};

/// Gates of open ground: where trails have come in over its edge, junctions and ends of trails in
/// it, and places between. In order of trail and chainage, each place once.
[[nodiscard]] std::vector<Gate> gates_of(const trails::Network& network, const geo::Region& region,
                                         const GateSpacing& spacing);

}  // namespace rimehaul::crossing
