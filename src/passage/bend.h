// Bends as drawn on the map, seen at the scale of a rig.
#pragma once

#include <vector>

#include "geo/polyline.h"

namespace rimehaul::passage {

/// How tightly a line turns at a place, seen at the scale of a rig.
struct Bend {
  units::Metres at;      ///< chainage along the line
  units::Metres radius;  ///< [0, kStraight]; 0: turns back on itself within the window
  units::Metres window;  ///< length of line over which the radius was taken
};

/// A radius from which on a line counts as straight; no bend is reported wider.
inline constexpr units::Metres kStraight{10000.0};

/// The tightest bend of a line. The window is the rig's overall length, nose to tail. At each place
/// the mean directions of the half windows before and behind it are compared: their deflection is
/// the arc between their middles over the radius, exactly so on a circle. Shaking of the drawn line
/// shorter than half a window averages out; a corner counts as the arc of half a window's length,
/// or as the arc that fits between the half windows where that is tighter; 180 degrees and more as
/// no radius at all. Within a quarter of a window of an end nothing is asked: join the lines that
/// meet there (half a window or more of each) and ask again. A line shorter than the window is
/// judged with its own length as the window. Window not a positive number: radius 0.
[[nodiscard]] Bend tightest_bend(const geo::Polyline& line, units::Metres window);

/// For pieces of a line, each within a quarter of the window of it or longer: the tightest of the
/// bends, seen as above, whose window touches the piece. Spans in driving order.
[[nodiscard]] std::vector<units::Metres> radii_along(const geo::Polyline& line,
                                                     units::Metres window,
                                                     const std::vector<geo::Span>& pieces);

}  // namespace rimehaul::passage
