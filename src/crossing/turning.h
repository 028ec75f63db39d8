// What the pitch of a lattice asks of a rig that drives its moves: radius, rounding, room to turn.
#pragma once

#include "crossing/heading.h"

namespace rimehaul::crossing {

/// How the corner between two moves is rounded: an arc that touches both of them at the same
/// distance from the corner, half of the shorter move. So no two corners of a line share ground.
struct RoundedCorner {
  units::Metres radius;   ///< of the arc; not finite where the heading does not change
  units::Metres tangent;  ///< from the corner to where the arc begins and ends
  units::Metres cut;      ///< how far the arc passes by the corner
};

/// The corner between a move and the next. Requires a turn by at most one heading.
[[nodiscard]] RoundedCorner rounded_corner(Turn turn, units::Metres pitch);

/// The smallest radius that any sequence of moves asks for, its corners rounded:
/// (2 + sqrt 5) / 2 = 2.118 times the pitch, between a straight move and a knight's move.
[[nodiscard]] units::Metres smallest_radius(units::Metres pitch);

/// The least pitch on which a rig of that turning radius can drive every sequence of moves, the
/// inverse of `smallest_radius`; never rounded down. Requires a radius that is finite and above 0.
[[nodiscard]] units::Metres least_pitch(units::Metres turning_radius);

/// How far a line with rounded corners passes at most by the line without: 0.0583 times the pitch.
[[nodiscard]] units::Metres largest_cut(units::Metres pitch);

}  // namespace rimehaul::crossing
