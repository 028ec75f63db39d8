// How a stretch of trail stands to steep ground above and beside it. "Not flagged" is not "safe".
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "terrain/error.h"
#include "terrain/height_map.h"
#include "trails/features.h"

namespace rimehaul::hazard {

/// Exposure of one piece of line.
struct Exposure {
  /// Steepest ground within a footprint's reach of the piece, error added. Nothing: unknown.
  std::optional<units::Slope> own_slope;
  /// Distance in plan to the nearest ground at least as steep as the start slope, error added; at
  /// most the distance searched, which is then a lower bound. Unknown ground counts as steep.
  std::optional<units::Metres> to_steep_ground;
  bool nothing_steep_within_reach = false;
  bool in_release_area = false;  ///< drawn by an expert
  bool in_runout = false;        ///< drawn by an expert
};

/// What is asked.
struct ExposureQuestion {
  units::Slope start_slope;  ///< ground from here on may release, error added
  units::Metres reach;       ///< how far to look
  units::Slope tolerance;    ///< k sigma, added to every slope
};

/// Answers for many pieces of one site: which cells are steep is worked out once.
class SteepGround {
 public:
  SteepGround(const terrain::HeightMap& heights, ExposureQuestion question);

  [[nodiscard]] Exposure exposure_of(const geo::Polyline& line, geo::Span piece,
                                     const std::vector<trails::Zone>& zones) const;

 private:
  const terrain::HeightMap* heights_;
  ExposureQuestion question_;
  // see exposure.cpp for how steep cells are remembered
  struct Memory;
  std::shared_ptr<const Memory> memory_;
};

}  // namespace rimehaul::hazard
