// An area on the map: one outline with holes. Readers have made it valid already.
#pragma once

#include <vector>

#include "geo/polyline.h"

namespace rimehaul::geo {

/// A valid polygon: the outline first, then its holes; each ring closed, its last point its first.
struct Region {
  std::vector<std::vector<MapPoint>> rings;
};

/// Whether a place lies in the region, its outline counted as inside.
[[nodiscard]] bool contains(const Region& region, MapPoint place);

/// Least distance from a place to the region; 0 inside and on the outline.
[[nodiscard]] units::Metres distance(const Region& region, MapPoint place);

/// The spans of a line that lie in the region, in order, merged; touching at one point alone is
/// none. Widened by at most a millimetre at each end, never narrowed.
[[nodiscard]] std::vector<Span> spans_inside(const Region& region, const Polyline& line);

/// Whether any point of a line lies in a region or within `reach` of it. Exact: the least distance
/// of two lines that do not cross is found at a corner of one of them. NaN counts as touching.
[[nodiscard]] bool touches(const Region& region, const Polyline& line, units::Metres reach);

/// Whether their bounding boxes come within `reach`: a quick answer that is never wrongly no.
[[nodiscard]] bool may_touch(const Region& region, const Polyline& line, units::Metres reach);

}  // namespace rimehaul::geo
