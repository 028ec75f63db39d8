#include "terrain/heading_arc.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace rimehaul::terrain {

using units::Bearing;
using units::Slope;

HeadingArc::HeadingArc(Bearing reference) : HeadingArc{reference, Turns{}} {}

HeadingArc::HeadingArc(Bearing reference, Turns turns) : reference_{reference}, turns_{turns} {
  const Bearing left = Bearing::from_degrees(reference.degrees() + turns.left_deg);
  const Bearing right = Bearing::from_degrees(reference.degrees() + turns.right_deg);
  left_ = {left.sine(), left.cosine()};
  right_ = {right.sine(), right.cosine()};
  if (width_deg() != 0.0) {
    kind_ = width_deg() <= 180.0 ? Kind::arc : Kind::full_circle;
  }
}

HeadingArc HeadingArc::reaching(double turn_deg) const {
  return {reference_, {std::min(turns_.left_deg, turn_deg), std::max(turns_.right_deg, turn_deg)}};
}

HeadingArc HeadingArc::opened_by(double degrees) const {
  return {reference_, {turns_.left_deg - degrees, turns_.right_deg + degrees}};
}

Bearing HeadingArc::at(double share) const {
  return Bearing::from_degrees(reference_.degrees() + turns_.left_deg + share * width_deg());
}

double HeadingArc::largest_sine_from(double turn_deg) const {
  const double largest_deg = std::max(turn_deg - turns_.left_deg, turns_.right_deg - turn_deg);
  return largest_deg < 90.0 ? std::sin(largest_deg * std::numbers::pi / 180.0) : 1.0;
}

// For arcs of at most half a turn: right of the left end and left of the right end.
bool HeadingArc::holds(Direction direction) const {
  return direction.east * left_.north - direction.north * left_.east >= 0.0 &&
         right_.east * direction.north - right_.north * direction.east >= 0.0;
}

// With psi_g the uphill direction, grade = |g| cos(psi - psi_g) and cross = |g| sin(psi - psi_g).
// Over an arc each is extreme at an end of the arc or, where that lies inside, at psi_g (greatest
// grade), at psi_g + 90 (greatest cross-slope), or opposite to these (least).
AttitudeBox HeadingArc::attitudes_on(Gradient gradient) const {
  const double east = gradient.east.ratio();
  const double north = gradient.north.ratio();
  const double grade = east * left_.east + north * left_.north;
  const double cross = north * left_.east - east * left_.north;
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
  const double right_grade = east * right_.east + north * right_.north;
  const double right_cross = north * right_.east - east * right_.north;
  return {holds({-east, -north}) ? down : Slope::from_ratio(std::min(grade, right_grade)),
          holds({east, north}) ? up : Slope::from_ratio(std::max(grade, right_grade)),
          holds({-north, east}) ? down : Slope::from_ratio(std::min(cross, right_cross)),
          holds({north, -east}) ? up : Slope::from_ratio(std::max(cross, right_cross))};
}

}  // namespace rimehaul::terrain
