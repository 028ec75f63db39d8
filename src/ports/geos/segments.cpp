#include "ports/geos/segments.h"

#include <geos_c.h>

#include <algorithm>
#include <array>

#include "base/require.h"

namespace rimehaul::ports::geos {

using geo::MapPoint;
using units::Metres;

namespace {

/// A crossing nearer than this to an end that touches is that end: the lines meet at a flat angle.
constexpr Metres kSameMeeting{1.0};

}  // namespace

std::optional<MapPoint> crossing_of(const Context& context, TwoSegments two) {
  const auto [one, other] = two;
  double east = 0.0;
  double north = 0.0;
  const int found = GEOSSegmentIntersection_r(
      context.get(), one.from.east.value(), one.from.north.value(), one.to.east.value(),
      one.to.north.value(), other.from.east.value(), other.from.north.value(),
      other.to.east.value(), other.to.north.value(), &east, &north);
  base::require(found != 0, "GEOS could not intersect two segments");
  if (found != 1) {
    return std::nullopt;
  }
  return MapPoint{Metres{east}, Metres{north}};
}

std::vector<MapPoint> meetings_of(const Context& context, TwoSegments two) {
  const auto [one, other] = two;
  std::vector<MapPoint> meetings;
  for (const MapPoint end : std::array{one.from, one.to}) {
    if (geo::distance(other, end) <= kHair) {
      meetings.push_back(end);
    }
  }
  for (const MapPoint end : std::array{other.from, other.to}) {
    if (geo::distance(one, end) <= kHair) {
      meetings.push_back(end);
    }
  }
  const auto crossing = crossing_of(context, two);
  const bool is_new = crossing && std::ranges::none_of(meetings, [&](MapPoint known) {
                        return geo::distance(known, *crossing) <= kSameMeeting;
                      });
  if (is_new) {
    meetings.push_back(*crossing);
  }
  return meetings;
}

}  // namespace rimehaul::ports::geos
