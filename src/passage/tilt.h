// How gravity shares out on tilted ground: what pulls along, what pulls across, what presses down.
#pragma once

#include "terrain/attitude.h"

namespace rimehaul::passage {

/// Bounds over a box of attitudes, as shares of the weight; all NaN when the box is not finite, its
/// ends are the wrong way round, or a tangent is a million or more. With G the grade and K the map
/// cross-slope, both tangents, and s = sqrt(1 + G^2 + K^2): along = G / sqrt(1 + G^2), normal = 1 /
/// s, lateral = K / (sqrt(1 + G^2) s).
struct Tilt {
  double up = 0.0;    ///< most of `along`; below 0 where every grade in the box falls
  double down = 0.0;  ///< most of -`along`; below 0 where every grade in the box climbs
  double normal_least = 0.0;
  double normal_most = 0.0;
  double lateral = 0.0;          ///< most of the size of `lateral`
  double across_normal = 0.0;    ///< most of the size of lateral / normal
  double back_normal = 0.0;      ///< most of along / normal: leans the rig back
  double forward_normal = 0.0;   ///< most of -along / normal: leans it forward
  double right_normal = 0.0;     ///< most of lateral / normal, to the right
  double left_normal = 0.0;      ///< most of -lateral / normal
  double steepest_grade = 0.0;   ///< tangent, size
  double steepest_across = 0.0;  ///< tangent, size
};

[[nodiscard]] Tilt tilt_of(const terrain::AttitudeBox& box);

/// Part of the weight that acts along a grade: G / sqrt(1 + G^2).
[[nodiscard]] double along(units::Slope grade);

/// `value`, or 0 where it is under 0. NaN stays NaN, which std::max would swallow.
[[nodiscard]] double above_zero(double value);
/// The larger or smaller of two; NaN when either is NaN.
[[nodiscard]] double larger(double a, double b);
[[nodiscard]] double smaller(double a, double b);

}  // namespace rimehaul::passage
