#include "geo/point.h"

#include <algorithm>
#include <cmath>

namespace rimehaul::geo {

units::Metres distance(MapPoint lhs, MapPoint rhs) {
  return units::Metres{std::hypot((rhs.east - lhs.east).value(), (rhs.north - lhs.north).value())};
}

units::Bearing bearing(const Segment& segment) {
  const auto& [from, to] = segment;
  return units::Bearing::of((to.east - from.east).value(), (to.north - from.north).value());
}

MapPoint between(const Segment& segment, double share) {
  const auto& [from, to] = segment;
  return {from.east + share * (to.east - from.east), from.north + share * (to.north - from.north)};
}

double share_along(const Segment& segment, MapPoint place) {
  const auto& [from, to] = segment;
  const double along_east = (to.east - from.east).value();
  const double along_north = (to.north - from.north).value();
  const double dot = along_east * (place.east - from.east).value() +
                     along_north * (place.north - from.north).value();
  const double length2 = along_east * along_east + along_north * along_north;
  return length2 > 0.0 ? std::clamp(dot / length2, 0.0, 1.0) : 0.0;
}

units::Metres distance(const Segment& segment, MapPoint place) {
  return distance(between(segment, share_along(segment, place)), place);
}

MapPoint moved(MapPoint from, units::Bearing direction, units::Metres far) {
  return {from.east + direction.sine() * far, from.north + direction.cosine() * far};
}

}  // namespace rimehaul::geo
