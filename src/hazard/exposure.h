// How a stretch of trail stands to steep ground above and beside it. "Not flagged" is not "safe".
#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "terrain/error.h"
#include "terrain/height_map.h"
#include "terrain/stretch.h"
#include "trails/features.h"

namespace rimehaul::hazard {

/// Exposure of one piece of line.
struct Exposure {
  /// Steepest place of the surface within 3 m of wherever the piece may lie, error added. Nothing:
  /// unknown.
  std::optional<units::Slope> own_slope;
  /// Distance in plan to the nearest ground at least as steep as the start slope, error added;
  /// never more than the true one, and at most the distance searched. Unknown ground counts as
  /// steep, so a hole in the heights or their edge ends it. Nothing: the question itself is
  /// unknown.
  std::optional<units::Metres> to_steep_ground;
  bool nothing_steep_within_reach = false;  ///< the distance is then the one searched
  bool in_release_area = false;             ///< drawn by an expert
  bool in_runout = false;                   ///< drawn by an expert
};

/// What is asked.
struct ExposureQuestion {
  units::Slope start_slope;  ///< ground from here on may release, error added
  units::Metres reach;       ///< how far to look
  units::Slope tolerance;    ///< k sigma, added to every slope
};

class SteepMap;

/// Answers for many pieces of one site. Which cells are steep, by Horn's slope, is worked out where
/// it is asked for, once, and shared by copies; safe to ask from several threads. The heights must
/// outlive it.
class SteepGround {
 public:
  SteepGround(const terrain::HeightMap& heights, ExposureQuestion question);

  /// Of a piece of line that may lie as far to each side as `where.around`.
  [[nodiscard]] Exposure exposure_of(const geo::Polyline& line, const terrain::Surroundings& where,
                                     const std::vector<trails::Zone>& zones) const;

 private:
  const terrain::HeightMap* heights_;
  ExposureQuestion question_;
  std::shared_ptr<SteepMap> steep_;
};

}  // namespace rimehaul::hazard
