// How the ground tilts a rig that heads one way: grade along the track and cross-slope across it.
#pragma once

#include "terrain/grid.h"
#include "units/bearing.h"

namespace rimehaul::terrain {

/// Grade: positive climbs. Cross-slope: positive when the ground falls away to the right.
/// With gradient (p, q) and heading psi: grade = p sin psi + q cos psi,
/// cross = q sin psi - p cos psi (map cross-slope, tan beta sin delta: the safe one to limit).
struct Attitude {
  units::Slope grade;
  units::Slope cross;
};

[[nodiscard]] Attitude attitude_of(Gradient gradient, units::Bearing heading);

/// Every attitude that may occur: a closed box in (grade, cross). Not finite means unknown.
struct AttitudeBox {
  units::Slope grade_low;
  units::Slope grade_high;
  units::Slope cross_low;
  units::Slope cross_high;

  /// Grown on all four sides by a tolerance in rise over run, k sigma for instance. A tolerance
  /// below 0 is no tolerance: the box is then unknown.
  [[nodiscard]] AttitudeBox widened(units::Slope tolerance) const;
  /// The smallest box that holds both; unknown when either is.
  [[nodiscard]] AttitudeBox with(const AttitudeBox& other) const;
  /// What lies in both, of two boxes that each hold all there is; unknown when either is.
  [[nodiscard]] AttitudeBox within(const AttitudeBox& other) const;
  [[nodiscard]] bool holds(Attitude attitude) const;

  /// Largest size of the grade or cross-slope anywhere in the box.
  [[nodiscard]] units::Slope steepest_grade() const;
  [[nodiscard]] units::Slope steepest_cross() const;
  /// Smallest size of the grade anywhere in the box: 0 when it holds level driving.
  [[nodiscard]] units::Slope gentlest_grade() const;
};

}  // namespace rimehaul::terrain
