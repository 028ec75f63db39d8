// A way over the lattice drawn as a line that a rig can drive.
#pragma once

#include "crossing/open_ground.h"
#include "crossing/search_tree.h"

namespace rimehaul::crossing {

/// Where a way must begin and end, each within a pitch of the way's own first and last cell.
using Ends = geo::Segment;

/// The centres of a way's cells, bent to begin and end where they must: what is off at either end
/// is spread over the first and last moves. Nothing for a way of fewer than two moves.
[[nodiscard]] std::optional<std::vector<geo::MapPoint>> bent_to(const Ends& ends,
                                                                const Lattice& lattice,
                                                                const Way& way);

/// Fewer and longer pieces instead of the many of a lattice: wherever a straight piece asks for no
/// larger share than the whole way does somewhere, by the cells that it passes, and corners stay
/// as gentle as those of the lattice. First and last pieces stay.
[[nodiscard]] std::vector<geo::MapPoint> straightened(const std::vector<geo::MapPoint>& points,
                                                      const OpenGround& ground);

/// The same line with every corner rounded to an arc that touches its pieces, of the largest radius
/// that leaves each corner its own half of them; drawn so finely that no corner turns by more than
/// 5 degrees.
[[nodiscard]] geo::Polyline rounded(const std::vector<geo::MapPoint>& points);

}  // namespace rimehaul::crossing
