// The card's route as GPX 1.1: a route with waypoints per leg and a track, heights with their
// datum.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "geo/point.h"

namespace rimehaul::ports::gdal {

struct GpxPoint {
  geo::GlobePoint place;
  std::optional<geo::Height> height;  ///< left out where unknown: never written as 0
  std::string name;                   ///< empty for track points
  std::string note;
};

struct GpxRoute {
  std::string name;
  std::string description;          ///< states the vertical datum and the cautions
  std::vector<GpxPoint> waypoints;  ///< leg starts and the end, notices
  std::vector<GpxPoint> track;
};

/// The route as a GPX 1.1 file.
[[nodiscard]] std::string gpx_text(const GpxRoute& route);

}  // namespace rimehaul::ports::gdal
