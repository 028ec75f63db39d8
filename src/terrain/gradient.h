// Gradients at cells: for maps, and for agreement with what other tools compute.
#pragma once

#include <optional>

#include "terrain/height_map.h"

namespace rimehaul::terrain {

/// Horn's gradient (Horn 1981, Proc. IEEE 69(1):14-47) over the 3 x 3 cells around one; nothing
/// when any of the nine is unknown, so the outermost cells have none.
[[nodiscard]] std::optional<Gradient> horn_gradient(const HeightMap& heights, CellIndex cell);

/// Zevenbergen and Thorne's gradient (1987, ESPL 12:47-56) over the four neighbours of a cell.
[[nodiscard]] std::optional<Gradient> zevenbergen_thorne_gradient(const HeightMap& heights,
                                                                  CellIndex cell);

/// Steepness of the ground itself: the length of the gradient.
[[nodiscard]] units::Slope slope_of(Gradient gradient);

/// Downslope direction; nothing on level ground.
[[nodiscard]] std::optional<units::Bearing> aspect_of(Gradient gradient);

}  // namespace rimehaul::terrain
