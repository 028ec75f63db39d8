#include "geo/point.h"

#include <cmath>

namespace rimehaul::geo {

units::Metres distance(MapPoint from, MapPoint to) {
  return units::Metres{std::hypot((to.east - from.east).value(), (to.north - from.north).value())};
}

// NOLINTNEXTLINE(bugprone-easily-swappable-parameters): from, then to, as on every line
units::Bearing bearing(MapPoint from, MapPoint to) {
  return units::Bearing::of((to.east - from.east).value(), (to.north - from.north).value());
}

// NOLINTNEXTLINE(bugprone-easily-swappable-parameters): from, then to, as on every line
MapPoint between(MapPoint from, MapPoint to, double share) {
  return {from.east + share * (to.east - from.east), from.north + share * (to.north - from.north)};
}

MapPoint moved(MapPoint from, units::Bearing direction, units::Metres far) {
  return {from.east + direction.sine() * far, from.north + direction.cosine() * far};
}

}  // namespace rimehaul::geo
