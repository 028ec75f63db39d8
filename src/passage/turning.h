// Bends as drawn on the map: how tight they are for this rig, and how wide it sweeps through them.
#pragma once

#include <optional>

#include "geo/polyline.h"
#include "passage/finding.h"
#include "rig/rig.h"

namespace rimehaul::passage {

/// How tightly a line turns at a place, seen at the scale of a rig.
struct Bend {
  units::Metres at;      ///< chainage along the line
  units::Metres radius;  ///< [0, kStraight]; 0: doubles back on itself within the window
  units::Metres window;  ///< length of line over which the radius was taken
};

/// A radius from which on a line counts as straight; no bend is reported wider.
inline constexpr units::Metres kStraight{10000.0};

/// The tightest bend of a line. The window is the rig's overall length, nose to tail. At each place
/// the chords of the half windows before and behind it are compared: their deflection is the arc
/// between the chords' middles over the radius, exactly so on a circle. Shaking of the drawn line
/// shorter than half a window averages out; a corner counts as the arc of half a window's length,
/// or as the arc that fits between the half windows where that is tighter. Within a quarter of a
/// window of an end nothing is asked: join the lines that meet there (half a window or more of
/// each) and ask again. A line shorter than the window is judged with its own length as the window.
/// Window not a positive number: radius 0.
[[nodiscard]] Bend tightest_bend(const geo::Polyline& line, units::Metres window);

/// Least radius that the rig can follow steadily: the carrier's own, or, where that is larger, the
/// one at which the trailer still follows. Not a number when the sheet lacks one.
[[nodiscard]] units::Metres least_radius(const rig::Rig& rig);

/// Ground that the rig covers in a steady turn whose radius is that of the carrier's middle.
struct Sweep {
  units::Metres off_tracking;  ///< how far inside the carrier's path the trailer runs, below 0
                               ///< outside it; 0 without one
  units::Metres width;         ///< between the outermost and the innermost edge
};

/// Steady-turn geometry of rigid bodies. Nothing when the trailer cannot follow that radius or a
/// number is missing.
[[nodiscard]] std::optional<Sweep> sweep_of(const rig::Rig& rig, units::Metres radius);

/// Least radius of the rig against the bend's.
[[nodiscard]] Finding judge_turning(const rig::Rig& rig, const Bend& bend);

/// Width swept in the bend, and what the rig cuts off a drawn corner, against the trail's width.
/// `trail_width` nothing: unknown, closed. A straight line compares the rig's own width.
[[nodiscard]] Finding judge_off_tracking(const rig::Rig& rig, const Bend& bend,
                                         std::optional<units::Metres> trail_width);

}  // namespace rimehaul::passage
