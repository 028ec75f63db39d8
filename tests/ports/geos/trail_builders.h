// Short ways to write trails, stations and marks down in tests of the noding.
#pragma once

#include <algorithm>
#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include "base/fault.h"
#include "trails/features.h"
#include "trails/trail.h"

namespace rimehaul::testing {

/// A place by metres from a point with coordinates as large as real ones.
inline geo::MapPoint spot(double east_m, double north_m) {
  return {units::Metres{500'000 + east_m}, units::Metres{5'100'000 + north_m}};
}

inline trails::Trail trail_through(std::string name, std::vector<geo::MapPoint> points) {
  return {.name = std::move(name),
          .line = geo::Polyline{std::move(points)},
          .direction = {},
          .width = {},
          .lanes = {},
          .groomed = {},
          .shared_with_skiers = {},
          .hours = {},
          .line_error = {},
          .sight = {},
          .marker_spacing = {},
          .file = "trails.geojson"};
}

inline trails::Station station_at(std::string name, geo::MapPoint place) {
  return {.name = std::move(name),
          .kind = trails::StationKind::hut,
          .place = place,
          .turning_radius = {}};
}

inline trails::Mark mark_on(std::string trail, trails::MarkKind kind, geo::Span span) {
  return {.name = "mark",
          .kind = kind,
          .trail = std::move(trail),
          .span = span,
          .survey = {},
          .most_mass = {},
          .room = {}};
}

/// How many lines of the faults hold the words.
inline std::size_t count_of(const std::vector<base::Fault>& faults, const std::string& words) {
  return static_cast<std::size_t>(std::ranges::count_if(faults, [&](const base::Fault& fault) {
    return base::line_of(fault).find(words) != std::string::npos;
  }));
}

}  // namespace rimehaul::testing
