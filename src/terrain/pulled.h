// What is pulled by a drawbar heads after its hitch, and not along the line.
#pragma once

#include <cstddef>
#include <vector>

#include "geo/polyline.h"

namespace rimehaul::terrain {

/// How a footprint is pulled along a line that its hitch follows.
struct Pulled {
  units::Metres drawbar;  ///< from the hitch to the footprint's middle
  units::Metres ahead;    ///< the hitch is at most so far ahead of any part of it
};

/// How far the heading of what is pulled may be off the line's, place after place along it. A
/// drawbar of length d closes up on its hitch's heading by d(delta)/ds = -sin(delta) / d (the
/// tractrix); up to 90 degrees sin(delta) is at least 2 delta / pi, so of every turn of the line
/// there is left at most exp(-2 s / (pi d)) once the hitch has gone s past it.
class HeadingOff {
 public:
  HeadingOff(const geo::Polyline& line, const Pulled& pulled);

  /// Degrees, at least 0: bound for a footprint with its middle anywhere on the span. Corners that
  /// the hitch may be at count whole. Spans must be asked in driving order.
  double on(geo::Span span);

 private:
  /// How sharply the line turns at a corner, left and right alike.
  struct Corner {
    units::Metres at;
    double turn_deg = 0.0;
  };

  [[nodiscard]] double remaining(units::Metres past) const;

  Pulled pulled_;
  std::vector<Corner> corners_;
  units::Metres asked_;
  std::size_t next_ = 0;
  double left_deg_ = 0.0;
};

}  // namespace rimehaul::terrain
