// All headings that a line takes over a stretch, and every attitude that they give on a slope.
#pragma once

#include "terrain/attitude.h"

namespace rimehaul::terrain {

/// An arc of headings around a reference heading: so far to the left of it, so far to the right.
class HeadingArc {
 public:
  explicit HeadingArc(units::Bearing reference);

  /// Turns are degrees from the reference, positive to the right; they may pass 180.
  [[nodiscard]] HeadingArc reaching(double turn_deg) const;
  /// So much further at both ends. Requires at least 0; what is no number gives the full circle.
  [[nodiscard]] HeadingArc opened_by(double degrees) const;

  /// From end to end, at least 0; not finite where it was opened by no number.
  [[nodiscard]] double width_deg() const { return turns_.right_deg - turns_.left_deg; }
  /// The heading at a share of the arc, 0 at its left end, 1 at its right one.
  [[nodiscard]] units::Bearing at(double share) const;

  /// The smallest box of grade and cross-slope over all headings of the arc. An arc of more than
  /// half a turn counts as the full circle: a footprint across such bends may head any way.
  [[nodiscard]] AttitudeBox attitudes_on(Gradient gradient) const;

  /// Sine of the largest angle between the heading at a turn and any in the arc, 1 from a right
  /// angle on.
  [[nodiscard]] double largest_sine_from(double turn_deg) const;

 private:
  enum class Kind { one_heading, arc, full_circle };

  /// Turns from the reference to both ends of the arc.
  struct Turns {
    double left_deg = 0.0;   ///< at most 0
    double right_deg = 0.0;  ///< at least 0
  };
  struct Direction {
    double east = 0.0;
    double north = 0.0;
  };

  HeadingArc(units::Bearing reference, Turns turns);
  [[nodiscard]] bool holds(Direction direction) const;

  units::Bearing reference_;
  Turns turns_;
  Kind kind_ = Kind::one_heading;
  Direction left_;   ///< of length 1
  Direction right_;  ///< of length 1
};

}  // namespace rimehaul::terrain
