// Bounds of the ground under carrier and trailer, and how the one follows the other.
#include "passage/footfall.h"

#include <algorithm>
#include <cmath>
#include <iterator>

#include "passage/turning.h"
#include "terrain/gradient.h"
#include "terrain/stretch.h"

namespace rimehaul::passage {

using terrain::AttitudeBox;
using terrain::GroundPiece;
using units::Metres;
using units::Slope;

namespace {

/// The surface's gradient, out of what it does to a rig that heads one way: attitude_of, inverted.
terrain::Gradient gradient_of(const terrain::Attitude& attitude, units::Bearing heading) {
  const double grade = attitude.grade.ratio();
  const double cross = attitude.cross.ratio();
  return {.east = Slope::from_ratio(grade * heading.sine() - cross * heading.cosine()),
          .north = Slope::from_ratio(grade * heading.cosine() + cross * heading.sine())};
}

/// On ground that may well be level the aspect says nothing, and unknown is the safe answer.
std::optional<units::Bearing> aspect_at(const GroundPiece& piece, std::optional<Slope> tolerance) {
  if (!piece.nominal.has_value() || !tolerance.has_value()) {
    return std::nullopt;
  }
  const terrain::Gradient gradient = gradient_of(*piece.nominal, piece.heading);
  if (terrain::slope_of(gradient) > *tolerance) {
    return terrain::aspect_of(gradient);
  }
  return std::nullopt;
}

/// How far inside the line the trailer cuts its tightest bend.
Metres cut_of(const geo::Polyline& line, const rig::Rig& rig) {
  const Metres radius = tightest_bend(line, overall_length(rig)).radius;
  const std::optional<Sweep> sweep = sweep_of(rig, std::max(radius, least_radius(rig)));
  return sweep.has_value() ? sweep->off_tracking : trailer_lag(rig);
}

/// The ground under the trailer alone, piece by piece, whichever way its hitch may point it.
std::vector<GroundPiece> ground_of_trailer(const Scene& scene, const geo::Polyline& line,
                                           const rig::Rig& rig, Metres line_error) {
  const terrain::Footprint footprint{rig.trailer->contact_length, rig.trailer->gauge};
  const terrain::Pulled pulled{.drawbar = rig.trailer->drawbar_length,
                               .ahead = trailer_lag(rig) + footprint.length / 2};
  return terrain::ground_under(
      scene.heights, line,
      {footprint, line_error + cut_of(line, rig), scene.rules.piece_length, pulled});
}

/// Everywhere the trailer may be while the carrier's middle is on `span`.
std::optional<AttitudeBox> trailer_box(const std::vector<GroundPiece>& trailer, geo::Span span,
                                       Metres lag) {
  std::optional<AttitudeBox> all;
  const auto first = std::partition_point(
      trailer.begin(), trailer.end(),
      [&](const GroundPiece& piece) { return piece.span.to <= span.from - lag; });
  for (auto piece = first; piece != trailer.end() && piece->span.from < span.to; ++piece) {
    if (!piece->attitude.has_value()) {
      return std::nullopt;
    }
    all = all.has_value() ? all->with(*piece->attitude) : *piece->attitude;
  }
  return all;
}

}  // namespace

std::vector<Footfall> footfalls(const Scene& scene, const geo::Polyline& line, const rig::Rig& rig,
                                Metres line_error) {
  const terrain::Footprint footprint{rig.carrier.contact_length, rig.carrier.gauge};
  const std::vector<GroundPiece> carrier =
      terrain::ground_under(scene.heights, line, {footprint, line_error, scene.rules.piece_length});
  const std::vector<GroundPiece> trailer = rig.trailer.has_value()
                                               ? ground_of_trailer(scene, line, rig, line_error)
                                               : std::vector<GroundPiece>{};
  const Metres lag = trailer_lag(rig);
  const std::optional<Slope> tolerance = slope_tolerance(scene, rig.carrier.gauge);
  std::vector<geo::Span> spans;
  std::ranges::transform(carrier, std::back_inserter(spans), &GroundPiece::span);
  const std::vector<Metres> radii = radii_along(line, rig.carrier.overall_length, spans);
  std::vector<Footfall> found;
  found.reserve(carrier.size());
  for (const GroundPiece& piece : carrier) {
    found.push_back({.span = piece.span,
                     .middle = piece.middle,
                     .heading = piece.heading,
                     .height = piece.height,
                     .aspect = aspect_at(piece, tolerance),
                     .radius = radii[found.size()],
                     .carrier = piece.attitude,
                     .trailer = rig.trailer.has_value() ? trailer_box(trailer, piece.span, lag)
                                                        : piece.attitude});
  }
  return found;
}

AttitudeBox for_every_heading(const AttitudeBox& box) {
  const Slope whole =
      Slope::from_ratio(std::hypot(box.steepest_grade().ratio(), box.steepest_cross().ratio()));
  return {.grade_low = whole.reversed(),
          .grade_high = whole,
          .cross_low = whole.reversed(),
          .cross_high = whole};
}

Metres trailer_lag(const rig::Rig& rig) {
  if (!rig.trailer.has_value()) {
    return Metres{0};
  }
  const Metres behind_middle = rig.carrier.contact_length / 2 - rig.carrier.hitch_at.forward;
  return behind_middle + rig.trailer->drawbar_length;
}

Metres overall_length(const rig::Rig& rig) {
  if (!rig.trailer.has_value()) {
    return rig.carrier.overall_length;
  }
  const Metres overhang = std::max(Metres{0}, -rig.carrier.hitch_at.forward);
  return rig.carrier.overall_length + overhang + rig.trailer->drawbar_length +
         rig.trailer->contact_length / 2;
}

}  // namespace rimehaul::passage
