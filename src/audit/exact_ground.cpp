#include "audit/exact_ground.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>

#include "passage/bend.h"
#include "terrain/gradient.h"
#include "terrain/plane.h"

namespace rimehaul::audit {

using passage::Footfall;
using terrain::Attitude;
using terrain::AttitudeBox;
using terrain::Footprint;
using units::Bearing;
using units::Metres;

namespace {

constexpr Metres kStep{1.0};
/// A place reaches so far before and behind, so that it lies in the line's direction.
constexpr Metres kHair{0.005};
/// A drawbar drawn shorter than this on the map points nowhere.
constexpr Metres kNoLength{0.001};

/// Where a body's middle is and where it points.
struct Stand {
  geo::MapPoint middle;
  Bearing heading;
};

AttitudeBox box_of(const Attitude& attitude) {
  return {.grade_low = attitude.grade,
          .grade_high = attitude.grade,
          .cross_low = attitude.cross,
          .cross_high = attitude.cross};
}

/// The planes on the line and to both sides of it; nothing when one of them is not known.
std::optional<AttitudeBox> planes_under(const terrain::HeightMap& heights, const Stand& stand,
                                        const Footprint& footprint, Metres line_error) {
  const Bearing right = Bearing::from_degrees(stand.heading.degrees() + 90.0);
  std::optional<AttitudeBox> all;
  for (const double side : {-1.0, 0.0, 1.0}) {
    const geo::MapPoint middle = geo::moved(stand.middle, right, side * line_error);
    const auto gradient = terrain::fitted_gradient(heights, middle, stand.heading, footprint);
    if (!gradient.has_value()) {
      return std::nullopt;
    }
    const AttitudeBox box = box_of(terrain::attitude_of(*gradient, stand.heading));
    all = all.has_value() ? all->with(box) : box;
  }
  return all;
}

/// The trailer behind a carrier whose middle is at a chainage of the run.
Stand trailer_behind(const Run& run, const rig::Rig& rig, Metres carrier_at) {
  const Metres at = std::max(Metres{0}, carrier_at - passage::trailer_lag(rig));
  const Metres hitch_at = std::max(at, at + rig.trailer->drawbar_length);
  const geo::MapPoint middle = run.line.at(at);
  const geo::MapPoint hitch = run.line.at(std::min(hitch_at, std::max(at, carrier_at)));
  return {.middle = middle,
          .heading = geo::distance(middle, hitch) > kNoLength ? geo::bearing({middle, hitch})
                                                              : run.line.bearing_at(at)};
}

Metres line_error_at(const Run& run, Metres at) {
  const auto after = std::upper_bound(run.starts.begin(), run.starts.end(), at);
  const auto leg = std::max<std::ptrdiff_t>(after - run.starts.begin(), 1) - 1;
  return run.line_errors[static_cast<std::size_t>(leg)];
}

/// As the judge sees it: on ground that may well be level the aspect says nothing.
std::optional<Bearing> aspect_at(const terrain::HeightMap& heights, geo::MapPoint place,
                                 std::optional<units::Slope> tolerance) {
  const auto gradient = terrain::surface_gradient(heights, place);
  const bool known =
      gradient.has_value() && tolerance.has_value() && terrain::slope_of(*gradient) > *tolerance;
  return known ? terrain::aspect_of(*gradient) : std::nullopt;
}

Footfall exact_footfall(const passage::Scene& scene, const rig::Rig& rig, const LegOfRun& leg,
                        Metres at) {
  const Stand carrier{.middle = leg.line.at(at), .heading = leg.line.bearing_at(at)};
  Footfall footfall{.span = {at, at},
                    .middle = carrier.middle,
                    .heading = carrier.heading,
                    .height = scene.heights.at(carrier.middle),
                    .aspect = {},
                    .carrier = planes_under(scene.heights, carrier,
                                            {rig.carrier.contact_length, rig.carrier.gauge},
                                            leg.run.line_errors[leg.leg]),
                    .trailer = {}};
  footfall.trailer = footfall.carrier;
  if (rig.trailer.has_value()) {
    const Metres carrier_at = leg.run.starts[leg.leg] + at;
    const Metres trailer_at = std::max(Metres{0}, carrier_at - passage::trailer_lag(rig));
    footfall.trailer = planes_under(scene.heights, trailer_behind(leg.run, rig, carrier_at),
                                    {rig.trailer->contact_length, rig.trailer->gauge},
                                    line_error_at(leg.run, trailer_at));
  }
  return footfall;
}

}  // namespace

std::vector<Footfall> exact_footfalls(const passage::Scene& scene, const rig::Rig& rig,
                                      const LegOfRun& leg) {
  std::vector<Footfall> footfalls;
  const Metres length = leg.line.length();
  footfalls.reserve(static_cast<std::size_t>(length / kStep) + 2);
  for (Metres at{0}; at < length - kHair; at += kStep) {
    footfalls.push_back(exact_footfall(scene, rig, leg, at));
  }
  footfalls.push_back(exact_footfall(scene, rig, leg, length));
  const auto tolerance = passage::slope_tolerance(scene, rig.carrier.gauge);
  std::vector<geo::Span> spans;
  std::ranges::transform(footfalls, std::back_inserter(spans), &Footfall::span);
  const std::vector<Metres> radii =
      passage::radii_along(leg.line, rig.carrier.overall_length, spans);
  for (std::size_t i = 0; i < footfalls.size(); ++i) {
    footfalls[i].radius = radii[i];
  }
  for (Footfall& footfall : footfalls) {
    footfall.aspect = aspect_at(scene.heights, footfall.middle, tolerance);
  }
  return footfalls;
}

}  // namespace rimehaul::audit
