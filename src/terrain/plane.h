// The least-squares plane under a rectangle of ground: what a rig really stands on.
#pragma once

#include <optional>

#include "terrain/stretch.h"

namespace rimehaul::terrain {

/// Gradient of the plane fitted to the bilinear surface over a rectangle of the footprint's size,
/// by a regular grid of at least 5 x 3 samples that reaches its edges, none further apart than half
/// a cell; nothing when any sample is unknown. Along and across the rectangle the plane's slope is
/// an average of the surface's slope between samples, so the fit lies within the bounds of
/// ground_under for the same middle and a heading that the line takes under the footprint.
[[nodiscard]] std::optional<Gradient> fitted_gradient(const HeightMap& heights,
                                                      geo::MapPoint middle, units::Bearing heading,
                                                      const Footprint& footprint);

}  // namespace rimehaul::terrain
