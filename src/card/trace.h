// The route as points on the map with heights, for GPX and for drawing.
#pragma once

#include <vector>

#include "card/route_card.h"

namespace rimehaul::card {

/// Every point of the legs' lines and none further apart than 25 m, in driving order. Where two
/// legs join, the point stands once.
[[nodiscard]] std::vector<TracePoint> trace_of(const search::Route& route,
                                               const passage::Scene& scene);

}  // namespace rimehaul::card
