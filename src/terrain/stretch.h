// The ground under a rig along a line, as bounds that hold for every place and not at samples only.
#pragma once

#include <optional>
#include <vector>

#include "geo/region.h"
#include "terrain/attitude.h"
#include "terrain/height_map.h"

namespace rimehaul::terrain {

/// The patch of ground that a carrier or a trailer stands on.
struct Footprint {
  units::Metres length;  ///< contact length, along the track
  units::Metres gauge;   ///< over the outer edges of tracks, skis or runners
};

/// A short piece of a line and every attitude that the plane under the footprint can take while its
/// middle is anywhere on the piece.
struct GroundPiece {
  geo::Span span;                       ///< by chainage on the line
  geo::MapPoint middle;                 ///< of the piece
  units::Bearing heading;               ///< at the middle
  std::optional<AttitudeBox> attitude;  ///< nothing: a height is missing under it
  std::optional<Attitude> nominal;      ///< of the surface at the middle
  std::optional<geo::Height> height;    ///< at the middle
};

/// How the line is walked.
struct Walk {
  Footprint footprint;
  units::Metres line_error;  ///< how far to each side the true track may lie
  units::Metres step;        ///< greatest length of a piece
};

/// Pieces that cover the line without gaps. The surface is bilinear between cell centres. The
/// least-squares plane over a rectangle is an average, with weights that are nowhere negative and
/// add to 1, of the surface's gradient over that rectangle; so it lies in the convex hull of the
/// gradients at the corners of every bilinear patch that the rectangle touches, and the box of
/// those, over every heading that the line takes within the footprint, bounds it. The grade of the
/// line's own profile over the contact length lies within the same bounds.
[[nodiscard]] std::vector<GroundPiece> ground_under(const HeightMap& heights,
                                                    const geo::Polyline& line, const Walk& walk);

/// The gradient of the bilinear surface at a place; nothing when a height is missing.
[[nodiscard]] std::optional<Gradient> surface_gradient(const HeightMap& heights,
                                                       geo::MapPoint place);

}  // namespace rimehaul::terrain
