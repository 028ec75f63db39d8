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

/// Writes GPX 1.1 at a path; an older file stays whole until the new one is complete. Throws
/// BadInput.
void write_gpx(const std::string& path, const GpxRoute& route);

}  // namespace rimehaul::ports::gdal
