// Bends read from a drawn line.
#include "passage/bend.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <vector>

namespace rimehaul::passage {

namespace {

using units::Metres;

/// The half windows before and behind a place.
struct Arms {
  double before_m;
  double after_m;
};

/// The direction of a line, unwound: full turns add up, so that a loop is no straight line.
class Winding {
 public:
  explicit Winding(const geo::Polyline& line) : line_{&line} {
    headings_.reserve(line.segment_count());
    integrals_.reserve(line.segment_count());
    double heading = 0.0;  // of the first segment: only differences count
    double integral = 0.0;
    geo::Segment before = line.segment(0);
    geo::MapPoint from = before.from;
    for (const geo::MapPoint& to : line.points().subspan(1)) {
      const geo::Segment here{from, to};
      heading += turn_at({before, here});
      headings_.push_back(heading);
      integrals_.push_back(integral);
      integral += heading * geo::distance(from, to).value();
      before = here;
      from = to;
    }
  }

  /// How far apart the mean directions over the two arms are, radians.
  [[nodiscard]] double deflection(Metres at, const Arms& arms) const {
    const Metres from = at - Metres{arms.before_m};
    const Metres to = at + Metres{arms.after_m};
    const double here = integral_to(at);
    const double before = (here - integral_to(from)) / (at - from).value();
    const double after = (integral_to(to) - here) / (to - at).value();
    return std::abs(after - before);
  }

 private:
  /// Where one segment goes on as another.
  struct Joint {
    geo::Segment in;
    geo::Segment out;
  };

  /// Turn from the one into the other, in [-pi, pi].
  static double turn_at(const Joint& joint) {
    const double east_in = (joint.in.to.east - joint.in.from.east).value();
    const double north_in = (joint.in.to.north - joint.in.from.north).value();
    const double east_out = (joint.out.to.east - joint.out.from.east).value();
    const double north_out = (joint.out.to.north - joint.out.from.north).value();
    return std::atan2(north_in * east_out - east_in * north_out,
                      east_in * east_out + north_in * north_out);
  }

  [[nodiscard]] double integral_to(Metres at) const {
    const std::size_t segment = line_->segment_at(at);
    return integrals_[segment] + headings_[segment] * (at - line_->chainage(segment)).value();
  }

  const geo::Polyline* line_;
  std::vector<double> headings_;   ///< of each segment
  std::vector<double> integrals_;  ///< of the heading over the length, up to each segment
};

/// On a circle the mean directions of two arcs that meet differ by (a + b) / 2 / R. Where the whole
/// turn lies between the arms, the arc that touches both has R = min(a, b) / tan(deflection / 2),
/// which is the tighter beyond 133 degrees and none from 180 on.
double radius_between(Arms arms, double deflection) {
  if (!(deflection < std::numbers::pi)) {
    return 0.0;
  }
  const double as_arc = (arms.before_m + arms.after_m) / 2.0 / deflection;
  const double as_fillet = std::min(arms.before_m, arms.after_m) / std::tan(deflection / 2.0);
  return std::min({as_arc, as_fillet, kStraight.value()});
}

/// Where the deflection may be largest. The mean direction over an arm of fixed length changes
/// linearly with the place between those where a vertex enters or leaves it, so the extremes of a
/// difference of two lie where a vertex stands at the place or at an arm's far end. Places in
/// between serve the arms that an end of the line cuts short.
std::vector<double> places_to_look(const geo::Polyline& line, double half_m) {
  constexpr double kPlacesPerHalf = 4.0;
  std::vector<double> places;
  const double length_m = line.length().value();
  const auto steps = static_cast<std::size_t>(std::ceil(length_m * kPlacesPerHalf / half_m));
  for (std::size_t step = 0; step <= steps; ++step) {
    places.push_back(length_m * static_cast<double>(step) / static_cast<double>(steps));
  }
  for (std::size_t vertex = 0; vertex < line.points().size(); ++vertex) {
    const double at_m = line.chainage(vertex).value();
    places.insert(places.end(), {at_m - half_m, at_m, at_m + half_m});
  }
  return places;
}

bool is_usable(Metres window) {
  return std::isfinite(window.value()) && window > Metres{0};
}

double half_of(Metres window, const geo::Polyline& line) {
  return std::min(window, line.length()).value() / 2.0;
}

/// Tells every bend of a line, place by place.
template <class Tell>
void tell_bends(const geo::Polyline& line, Metres window, const Tell& tell) {
  const double length_m = line.length().value();
  const double half_m = half_of(window, line);
  const double least_arm_m = std::min(half_m / 2.0, length_m / 2.0);
  const Winding winding{line};
  for (const double at_m : places_to_look(line, half_m)) {
    const Arms arms{std::min(half_m, at_m), std::min(half_m, length_m - at_m)};
    if (arms.before_m < least_arm_m || arms.after_m < least_arm_m) {
      continue;
    }
    const Metres at{at_m};
    tell(
        Bend{at, Metres{radius_between(arms, winding.deflection(at, arms))}, Metres{2.0 * half_m}});
  }
}

}  // namespace

Bend tightest_bend(const geo::Polyline& line, Metres window) {
  if (!is_usable(window)) {
    return {.at = Metres{0}, .radius = Metres{0}, .window = window};
  }
  Bend tightest{.at = line.length() / 2.0,
                .radius = kStraight,
                .window = Metres{2.0 * half_of(window, line)}};
  tell_bends(line, window, [&](const Bend& bend) {
    const bool no_tighter = bend.radius >= tightest.radius;  // NaN is tighter than all
    tightest = no_tighter ? tightest : bend;
  });
  return tightest;
}

std::vector<Metres> radii_along(const geo::Polyline& line, Metres window,
                                const std::vector<geo::Span>& pieces) {
  if (!is_usable(window)) {
    return std::vector<Metres>(pieces.size(), Metres{0});
  }
  std::vector<Metres> radii(pieces.size(), kStraight);
  tell_bends(line, window, [&](const Bend& bend) {
    const geo::Span seen{bend.at - bend.window / 2, bend.at + bend.window / 2};
    auto piece = std::partition_point(pieces.begin(), pieces.end(),
                                      [&](const geo::Span& span) { return span.to < seen.from; });
    for (; piece != pieces.end() && piece->from <= seen.to; ++piece) {
      Metres& radius = radii[static_cast<std::size_t>(piece - pieces.begin())];
      radius = bend.radius >= radius ? radius : bend.radius;
    }
  });
  return radii;
}

}  // namespace rimehaul::passage
