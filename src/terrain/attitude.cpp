#include "terrain/attitude.h"

#include <limits>

namespace rimehaul::terrain {

using units::Slope;

namespace {

constexpr Slope kUnknown = Slope::from_ratio(std::numeric_limits<double>::quiet_NaN());

struct Two {
  Slope a;
  Slope b;
};

// NaN on either side wins: std::min and std::max would let it vanish.
Slope lower_of(Two two) {
  if (two.a <= two.b) {
    return two.a;
  }
  return two.b < two.a ? two.b : kUnknown;
}

Slope higher_of(Two two) {
  if (two.a >= two.b) {
    return two.a;
  }
  return two.b > two.a ? two.b : kUnknown;
}

}  // namespace

Attitude attitude_of(Gradient gradient, units::Bearing heading) {
  const double east = gradient.east.ratio();
  const double north = gradient.north.ratio();
  const double sine = heading.sine();
  const double cosine = heading.cosine();
  return {Slope::from_ratio(east * sine + north * cosine),
          Slope::from_ratio(north * sine - east * cosine)};
}

AttitudeBox AttitudeBox::widened(Slope tolerance) const {
  const Slope by = tolerance >= Slope{} ? tolerance : kUnknown;
  return {grade_low.raised_by(by.reversed()), grade_high.raised_by(by),
          cross_low.raised_by(by.reversed()), cross_high.raised_by(by)};
}

AttitudeBox AttitudeBox::with(const AttitudeBox& other) const {
  return {lower_of({grade_low, other.grade_low}), higher_of({grade_high, other.grade_high}),
          lower_of({cross_low, other.cross_low}), higher_of({cross_high, other.cross_high})};
}

AttitudeBox AttitudeBox::within(const AttitudeBox& other) const {
  return {higher_of({grade_low, other.grade_low}), lower_of({grade_high, other.grade_high}),
          higher_of({cross_low, other.cross_low}), lower_of({cross_high, other.cross_high})};
}

bool AttitudeBox::holds(Attitude attitude) const {
  return grade_low <= attitude.grade && attitude.grade <= grade_high &&
         cross_low <= attitude.cross && attitude.cross <= cross_high;
}

Slope AttitudeBox::steepest_grade() const {
  return higher_of({grade_low.steepness(), grade_high.steepness()});
}

Slope AttitudeBox::steepest_cross() const {
  return higher_of({cross_low.steepness(), cross_high.steepness()});
}

Slope AttitudeBox::gentlest_grade() const {
  if (grade_low <= Slope{} && grade_high >= Slope{}) {
    return Slope{};
  }
  return lower_of({grade_low.steepness(), grade_high.steepness()});
}

}  // namespace rimehaul::terrain
