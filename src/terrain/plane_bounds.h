// Bounds of the planes that a footprint stands on, wherever it may stand: narrower than those of
// the surface where cells are finer than the footprint.
#pragma once

#include <optional>

#include "terrain/gradient_box.h"
#include "terrain/heading_arc.h"
#include "terrain/stretch.h"

namespace rimehaul::terrain {

/// Where a footprint may stand: its middle on a straight piece of line or so far beside it, its
/// heading anywhere in an arc.
struct Stands {
  geo::Segment line;
  units::Metres each_side;
  HeadingArc headings;
};

/// Every attitude of fitted_gradient over these stands, and every grade from end to end of the
/// footprint's middle line. Planes are fitted on a lattice of stands;
/// what lies between is bounded by how fast a plane can change where the surface's gradient differs
/// by no more than `spread` under all stands. With length L, gauge b, D the spread: the slope along
/// is sum(s z) / sum(s^2) over samples at s along, sum |s| / sum s^2 is at most 3 / L, and a
/// constant gradient drops out, so going d any way changes it by at most 3 d / L times D / 2, and
/// turning by t, about the plane that differs least, by at most t (1 + 3 b / (2 L)) D / 2 and t D /
/// 2 for the turned axes; the same across with L and b changed over. Nothing when the arc is so
/// wide that fits would not bound it well, or when a height is missing.
[[nodiscard]] std::optional<AttitudeBox> plane_attitudes(const HeightMap& heights,
                                                         const Footprint& footprint,
                                                         const Stands& stands, units::Slope spread);

}  // namespace rimehaul::terrain
