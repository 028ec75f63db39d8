// Ways over open ground joined to the trails, so that both are one network.
#pragma once

#include <vector>

#include "trails/network.h"

namespace rimehaul::trails {

/// A place on a trail, by chainage along its line as drawn.
struct OnTrail {
  std::size_t trail = 0;
  units::Metres at;
};

/// A way that leaves a trail at one place and reaches another, or the same trail elsewhere. Its
/// line starts and ends there, to the millimetre.
struct OpenWay {
  Trail as_trail;
  OnTrail from;
  OnTrail to;
};

/// The same network with the ways in it as further trails, after its own; trails are cut where ways
/// leave or reach them, so junctions and legs are numbered anew. Stations keep theirs.
[[nodiscard]] Network joined_with(const Network& network, std::vector<OpenWay> ways);

}  // namespace rimehaul::trails
