// The cheapest ways over the cells of one zone, between its gates.
#pragma once

#include <vector>

#include "crossing/gate.h"
#include "crossing/open_ground.h"

namespace rimehaul::crossing {

/// One of the directions in which a rig comes to a gate or drives on from it.
struct Port {
  const Gate* gate;
  units::Bearing heading;
};

/// A way found between two gates.
struct FoundWay {
  Port from;
  Port to;
  std::uint64_t price = 0;            ///< ticks
  std::vector<geo::MapPoint> points;  ///< from gate to gate
  units::Metres length{0};
};

/// For each direction of arriving at a gate and each of driving on from another the cheapest way
/// between them, the shortest first; without those that follow another of them, or a trail, for
/// most of their length. The gates must outlive the ways.
[[nodiscard]] std::vector<FoundWay> found_ways(const OpenGround& ground,
                                               const std::vector<Gate>& gates);

}  // namespace rimehaul::crossing
