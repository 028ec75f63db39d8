// Steepness, which cannot be added: percent and degrees are names for it at the door.
#pragma once

#include <compare>

namespace rimehaul::units {

/// Steepness of ground, of a trail (grade) or across it (cross-slope), held as rise over run, so
/// that comparing two slopes needs no trigonometry. As a grade, positive climbs; as a cross-slope,
/// positive means that the ground falls away to the right. 30 % is 16.7 degrees; 30 degrees is 57.7
/// %.
class Slope {
 public:
  constexpr Slope() = default;
  static constexpr Slope from_ratio(double rise_over_run) { return Slope{rise_over_run}; }
  static constexpr Slope from_percent(double percent) { return Slope{percent / 100.0}; }
  /// Degrees in the open interval (-90, 90); anything else gives a slope that compares as NaN.
  static Slope from_degrees(double degrees);

  [[nodiscard]] constexpr double ratio() const { return ratio_; }
  [[nodiscard]] constexpr double percent() const { return ratio_ * 100.0; }
  [[nodiscard]] double degrees() const;
  /// The same steepness without its sign. NaN stays NaN.
  [[nodiscard]] constexpr Slope steepness() const { return Slope{ratio_ < 0 ? -ratio_ : ratio_}; }
  /// The same ground driven the other way.
  [[nodiscard]] constexpr Slope reversed() const { return Slope{-ratio_}; }
  /// Raised (or lowered) by a tolerance in rise over run: how an error widens a slope.
  [[nodiscard]] constexpr Slope raised_by(Slope tolerance) const {
    return Slope{ratio_ + tolerance.ratio_};
  }

  friend constexpr auto operator<=>(Slope, Slope) = default;

 private:
  explicit constexpr Slope(double ratio) : ratio_{ratio} {}
  double ratio_ = 0.0;
};

}  // namespace rimehaul::units
