// A stretch of one trail to be judged, driven one way.
#pragma once

#include <cstddef>

#include "geo/region.h"
#include "trails/network.h"

namespace rimehaul::passage {

struct Stretch {
  std::size_t trail = 0;  ///< index into Network::trails
  geo::Span span{};       ///< by chainage along the trail as drawn
  trails::Way way = trails::Way::as_drawn;
  geo::Polyline line;  ///< in driving direction
};

}  // namespace rimehaul::passage
