// Where the rig treads: the ground under carrier and trailer, piece by piece along a line.
#pragma once

#include <optional>
#include <vector>

#include "passage/scene.h"
#include "rig/rig.h"
#include "terrain/attitude.h"

namespace rimehaul::passage {

/// One piece of line with every attitude that carrier and trailer may take while the carrier's
/// middle is on it; the trailer's box covers everywhere it may be behind. Error not yet added.
struct Footfall {
  geo::Span span;
  geo::MapPoint middle;
  units::Bearing heading;
  std::optional<geo::Height> height;
  std::optional<units::Bearing> aspect;  ///< downslope direction at the middle
  units::Metres radius{0};  ///< of the tightest bend that the carrier may stand in; 0: none told
  std::optional<terrain::AttitudeBox> carrier;  ///< nothing: heights are missing
  std::optional<terrain::AttitudeBox> trailer;  ///< as carrier without a trailer
};

/// Bounds along a line for one rig, pieces no longer than the rules' piece length.
[[nodiscard]] std::vector<Footfall> footfalls(const Scene& scene, const geo::Polyline& line,
                                              const rig::Rig& rig, units::Metres line_error);

/// The box of a rig that may head any way on this ground: sqrt(grade^2 + cross^2) either way.
[[nodiscard]] terrain::AttitudeBox for_every_heading(const terrain::AttitudeBox& box);

/// How far behind the carrier's middle the trailer's middle runs; 0 without one.
[[nodiscard]] units::Metres trailer_lag(const rig::Rig& rig);

/// Carrier and trailer together, nose to tail.
[[nodiscard]] units::Metres overall_length(const rig::Rig& rig);

}  // namespace rimehaul::passage
