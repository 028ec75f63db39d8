// Where two straight pieces of trail meet.
#pragma once

#include <optional>
#include <vector>

#include "geo/point.h"
#include "ports/geos/draft_line.h"
#include "ports/geos/geos_handles.h"

namespace rimehaul::ports::geos {

struct TwoSegments {
  geo::Segment one;
  geo::Segment other;
};

/// Where two segments cross or touch (GEOS's robust intersection); of a common stretch one point.
[[nodiscard]] std::optional<geo::MapPoint> crossing_of(const Context& context, TwoSegments two);

/// All places where two segments meet: ends of one that lie on the other within a hair, and the
/// crossing unless it is one of those.
[[nodiscard]] std::vector<geo::MapPoint> meetings_of(const Context& context, TwoSegments two);

}  // namespace rimehaul::ports::geos
