#include "terrain/plane_bounds.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "terrain/plane.h"

namespace rimehaul::terrain {

using units::Bearing;
using units::Metres;
using units::Slope;

namespace {

/// Wider arcs would need many headings and gain little (our choice).
constexpr double kWidestArc_deg = 60.0;
constexpr double kHeadingStep_deg = 4.0;
/// Stands lie an eighth of the footprint's smaller side apart: what may lie between is then about a
/// tenth of the spread (our choice).
constexpr double kStandsPerSide = 8.0;

/// The middles of `count` equal parts of an extent, as shares of it.
struct Parts {
  int count = 1;

  [[nodiscard]] double at(int index) const { return (index + 0.5) / count; }
};

/// As many as are needed to be no longer than a step, of which the extent has so many.
Parts parts_for(double steps) {
  return {std::max(1, static_cast<int>(std::ceil(steps)))};
}

/// Farthest that any stand lies from the nearest fitted one.
struct Reach {
  Metres away;
  double turn_rad = 0.0;
};

/// How far the plane's gradient may differ over such a reach.
Slope most_changed(const Footprint& footprint, Slope spread, const Reach& reach) {
  const double half = spread.ratio() / 2.0;
  const double length_m = footprint.length.value();
  const double gauge_m = footprint.gauge.value();
  const double moved = 3.0 * reach.away.value() * std::hypot(1.0 / length_m, 1.0 / gauge_m);
  const double turned =
      reach.turn_rad * std::hypot(2.0 + 1.5 * gauge_m / length_m, 2.0 + 1.5 * length_m / gauge_m);
  return Slope::from_ratio(half * (moved + turned));
}

/// Where one footprint stands.
struct Stand {
  geo::MapPoint middle;
  Bearing heading;
};

/// The grade from end to end of a footprint's middle line.
std::optional<Slope> chord_over(const HeightMap& heights, const Stand& stand, Metres length) {
  const auto front = heights.at(geo::moved(stand.middle, stand.heading, length / 2.0));
  const auto back = heights.at(geo::moved(stand.middle, stand.heading, length / -2.0));
  return front && back ? std::optional{Slope::from_ratio((*front - *back) / length)} : std::nullopt;
}

/// The plane with the same cross-slope and another grade.
Gradient with_grade(Gradient plane, Bearing heading, Slope grade) {
  const double more = grade.ratio() - attitude_of(plane, heading).grade.ratio();
  return {Slope::from_ratio(plane.east.ratio() + more * heading.sine()),
          Slope::from_ratio(plane.north.ratio() + more * heading.cosine())};
}

/// What the plane and the chord at one stand come to over all headings.
std::optional<AttitudeBox> attitudes_from(const HeightMap& heights, const Footprint& footprint,
                                          const Stand& stand, const HeadingArc& headings) {
  const auto chord = chord_over(heights, stand, footprint.length);
  if (!chord) {
    return std::nullopt;
  }
  const auto plane = fitted_gradient(heights, stand.middle, stand.heading, footprint);
  if (!plane) {
    return std::nullopt;
  }
  return headings.attitudes_on(*plane).with(
      headings.attitudes_on(with_grade(*plane, stand.heading, *chord)));
}

}  // namespace

std::optional<AttitudeBox> plane_attitudes(const HeightMap& heights, const Footprint& footprint,
                                           const Stands& stands, Slope spread) {
  const double width_deg = stands.headings.width_deg();
  if (!(width_deg <= kWidestArc_deg)) {
    return std::nullopt;
  }
  const Bearing along = geo::bearing(stands.line);
  const Bearing right = Bearing::from_degrees(along.degrees() + 90.0);
  const Metres length = geo::distance(stands.line.from, stands.line.to);
  const Metres breadth = 2.0 * stands.each_side;
  const Metres step = std::min(footprint.length, footprint.gauge) / kStandsPerSide;
  const Parts onward = parts_for(length / step);
  const Parts aside = parts_for(breadth / step);
  const Parts turned = parts_for(width_deg / kHeadingStep_deg);
  std::optional<AttitudeBox> box;
  for (int i = 0; i < onward.count; ++i) {
    for (int j = 0; j < aside.count; ++j) {
      const geo::MapPoint middle =
          geo::moved(geo::moved(stands.line.from, along, onward.at(i) * length), right,
                     (aside.at(j) - 0.5) * breadth);
      for (int k = 0; k < turned.count; ++k) {
        const Stand stand{middle, stands.headings.at(turned.at(k))};
        const auto here = attitudes_from(heights, footprint, stand, stands.headings);
        if (!here) {
          return std::nullopt;
        }
        box = box ? box->with(*here) : *here;
      }
    }
  }
  const Reach reach{Metres{std::hypot((length / (2.0 * onward.count)).value(),
                                      (breadth / (2.0 * aside.count)).value())},
                    width_deg / (2.0 * turned.count) * std::numbers::pi / 180.0};
  return box->widened(most_changed(footprint, spread, reach));
}

}  // namespace rimehaul::terrain
