#include "terrain/heading_arc.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace rimehaul::terrain {

using units::Bearing;
using units::Slope;

HeadingArc::HeadingArc(Bearing reference) : HeadingArc{reference, 0.0, 0.0} {}

HeadingArc::HeadingArc(Bearing reference, double left_deg, double right_deg)
    : reference_{reference}, left_deg_{left_deg}, right_deg_{right_deg} {
  const Bearing left = Bearing::from_degrees(reference.degrees() + left_deg);
  const Bearing right = Bearing::from_degrees(reference.degrees() + right_deg);
  left_sine_ = left.sine();
  left_cosine_ = left.cosine();
  right_sine_ = right.sine();
  right_cosine_ = right.cosine();
  const double span_deg = right_deg - left_deg;
  if (span_deg > 0.0) {
    kind_ = span_deg > 180.0 ? Kind::full_circle : Kind::arc;
  }
}

HeadingArc HeadingArc::reaching(double turn_deg) const {
  return {reference_, std::min(left_deg_, turn_deg), std::max(right_deg_, turn_deg)};
}

double HeadingArc::largest_sine_from(double turn_deg) const {
  const double largest_deg = std::max(turn_deg - left_deg_, right_deg_ - turn_deg);
  return largest_deg < 90.0 ? std::sin(largest_deg * std::numbers::pi / 180.0) : 1.0;
}

// For arcs of at most half a turn: right of the left end and left of the right end.
bool HeadingArc::points_into(double east, double north) const {
  return east * left_cosine_ - north * left_sine_ >= 0.0 &&
         right_sine_ * north - right_cosine_ * east >= 0.0;
}

// With psi_g the uphill direction, grade = |g| cos(psi - psi_g) and cross = |g| sin(psi - psi_g).
// Over an arc each is extreme at an end of the arc or, where that lies inside, at psi_g (greatest
// grade), at psi_g + 90 (greatest cross-slope), or opposite to these (least).
AttitudeBox HeadingArc::attitudes_on(Gradient gradient) const {
  const double east = gradient.east.ratio();
  const double north = gradient.north.ratio();
  const double grade = east * left_sine_ + north * left_cosine_;
  const double cross = north * left_sine_ - east * left_cosine_;
  if (kind_ == Kind::one_heading) {
    return {Slope::from_ratio(grade), Slope::from_ratio(grade), Slope::from_ratio(cross),
            Slope::from_ratio(cross)};
  }
  const double steepest = std::sqrt(east * east + north * north);
  const Slope down = Slope::from_ratio(-steepest);
  const Slope up = Slope::from_ratio(steepest);
  if (kind_ == Kind::full_circle) {
    return {down, up, down, up};
  }
  const double right_grade = east * right_sine_ + north * right_cosine_;
  const double right_cross = north * right_sine_ - east * right_cosine_;
  return {points_into(-east, -north) ? down : Slope::from_ratio(std::min(grade, right_grade)),
          points_into(east, north) ? up : Slope::from_ratio(std::max(grade, right_grade)),
          points_into(-north, east) ? down : Slope::from_ratio(std::min(cross, right_cross)),
          points_into(north, -east) ? up : Slope::from_ratio(std::max(cross, right_cross))};
}

}  // namespace rimehaul::terrain
