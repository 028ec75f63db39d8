// How high the ground around stands in the sky, as far as it is certain.
#pragma once

#include <optional>
#include <vector>

#include "terrain/relief.h"

namespace rimehaul::terrain {

/// Where somebody stands, and where he looks.
struct Outlook {
  geo::MapPoint from;
  geo::Height height;
  units::Bearing towards;
};

/// The skyline of a whole site, from heights thinned out to pixels: the least height of each pixel
/// and of the eight around it is what surely stands there, wherever in the own pixel one looks
/// from. So it is a lower bound, which hides no more of the sky than the ground does. What is
/// unknown (a void, a pixel that the heights do not wholly cover, all beyond their edge) hides
/// nothing. The earth's curve is counted, with a radius of 6371 km.
class Horizons {
 public:
  /// Reads every block under the frame once. Requires pixels at least kLeastCells times as wide as
  /// a cell, so that what lies between the cells of a pixel is counted with its neighbours.
  Horizons(BlockSource& source, const ReliefFrame& frame);

  static constexpr double kLeastCells = 10.0;

  /// The pixel of a place, counted row by row; nothing outside.
  [[nodiscard]] std::optional<std::size_t> pixel_of(geo::MapPoint place) const;
  /// Degrees above the level up to which the sky is hidden in that direction from everywhere in the
  /// pixel, and up to a sixth of one beside it, at that height or under it. 0 where nothing is
  /// certain.
  [[nodiscard]] double hidden_up_to_deg(const Outlook& outlook) const;

 private:
  ReliefFrame frame_;
  std::vector<double> surely_m_;  ///< NaN: unknown
};

/// Pixels over the heights of a source within a box of the map, not finer than they may be and not
/// more than kMostPixels along a side.
inline constexpr std::int64_t kMostPixels = 400;
[[nodiscard]] ReliefFrame horizon_frame(const BlockSource& source, const geo::Segment& diagonal);

}  // namespace rimehaul::terrain
