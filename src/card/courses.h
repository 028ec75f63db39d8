// A line that nothing marks, told as courses to steer.
#pragma once

#include <vector>

#include "geo/polyline.h"

namespace rimehaul::card {

/// One straight piece to steer.
struct Course {
  geo::Span span{};        ///< by chainage along the line
  units::Bearing bearing;  ///< grid, from its first point to its last
};

/// As few straight pieces from points of the line as stray from it by no more than `stray`, in
/// driving order: Ramer (1972), Douglas and Peucker (1973). Requires `stray` of 0 or more.
[[nodiscard]] std::vector<Course> courses_along(const geo::Polyline& line, units::Metres stray);

}  // namespace rimehaul::card
