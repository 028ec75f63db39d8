// The ground under a rig along a line, as bounds that hold for every place and not at samples only.
#pragma once

#include <optional>
#include <vector>

#include "geo/region.h"
#include "terrain/attitude.h"
#include "terrain/height_map.h"
#include "terrain/pulled.h"

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
  units::Metres line_error;        ///< how far to each side the true track may lie
  units::Metres step;              ///< greatest length of a piece
  std::optional<Pulled> pulled{};  ///< nothing: the footprint heads along the line
};

/// Pieces of equal length that cover the line without gaps. The surface is bilinear between cell
/// centres. The slope of the least-squares plane along a rectangle is an average, with weights that
/// are nowhere negative and add to 1, of the surface's slope in that direction over the rectangle,
/// and likewise across it. So grade and cross-slope each lie between the extremes that they take
/// over every part of a bilinear patch that the rectangle touches, for its middle anywhere on the
/// piece or up to the line's error beside it, and for every heading that the line takes within half
/// the contact length of it, and for what is pulled as far off these as its hitch may point it
/// (HeadingOff). The grade of the line's own profile over the contact length lies
/// within the same bounds. Beyond its ends the line is taken to go straight on. Where cells are no
/// wider than the footprint, so that it stands on several, the planes themselves are bounded too
/// (plane_attitudes), which is narrower on rough ground.
[[nodiscard]] std::vector<GroundPiece> ground_under(const HeightMap& heights,
                                                    const geo::Polyline& line, const Walk& walk);

/// The gradient of the bilinear surface at a place; nothing when a height is missing.
[[nodiscard]] std::optional<Gradient> surface_gradient(const HeightMap& heights,
                                                       geo::MapPoint place);

/// A piece of line and how far around it to look.
struct Surroundings {
  geo::Span piece;
  units::Metres around;
};

/// Steepness of the steepest place of the surface so near to a piece of line; an upper bound, which
/// looks a little beyond at bends and ends. Nothing when a height is missing there.
[[nodiscard]] std::optional<units::Slope> steepest_around(const HeightMap& heights,
                                                          const geo::Polyline& line,
                                                          const Surroundings& where);

}  // namespace rimehaul::terrain
