// Values laid along one side of a drawing, and which of them to mark.
#pragma once

#include <vector>

namespace rimehaul::ports::cairo {

/// The ends of a range of values.
struct Ends {
  double from = 0.0;
  double to = 1.0;
};

/// One side of a drawing on the page.
struct SideOfPage {
  double start_pt = 0.0;
  double end_pt = 1.0;
};

/// A range of values laid along one side of the page.
class Axis {
 public:
  Axis() = default;  ///< values as they are
  Axis(const Ends& values, const SideOfPage& side)
      : from_{values.from},
        per_value_{(side.end_pt - side.start_pt) / (values.to - values.from)},
        start_pt_{side.start_pt} {}

  /// The place of a value along the side, points.
  [[nodiscard]] double at(double value) const { return start_pt_ + (value - from_) * per_value_; }

 private:
  double from_ = 0.0;
  double per_value_ = 1.0;
  double start_pt_ = 0.0;
};

/// The values to mark: every whole multiple of a step from one end to the other. Nothing where the
/// step is not above 0 or the ends are not finite.
[[nodiscard]] std::vector<double> marked_values(const Ends& ends, double step);

}  // namespace rimehaul::ports::cairo
