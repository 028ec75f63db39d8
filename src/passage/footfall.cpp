// Bounds of the ground under carrier and trailer, and how the one follows the other.
#include "passage/footfall.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <numbers>

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

/// How sharply a line turns at a corner, radians, left and right alike.
struct Corner {
  Metres at;
  double turn = 0.0;
};

std::vector<Corner> corners_of(const geo::Polyline& line) {
  std::vector<Corner> corners;
  for (std::size_t i = 1; i < line.segment_count(); ++i) {
    const double degrees = line.segment_bearing(i - 1).turn_to(line.segment_bearing(i));
    corners.push_back({line.chainage(i), std::abs(degrees) * std::numbers::pi / 180.0});
  }
  return corners;
}

/// How far the heading of a trailer may be off the line's, radians, place after place along it. A
/// drawbar of length d closes up on its hitch's heading by d(delta)/ds = -sin(delta) / d (the
/// tractrix); up to 90 degrees sin(delta) is at least 2 delta / pi, so of every turn of the line
/// there is left at most exp(-2 s / (pi d)) once the hitch has gone s past it.
class HeadingOff {
 public:
  HeadingOff(const geo::Polyline& line, Metres drawbar)
      : corners_{corners_of(line)}, drawbar_{drawbar} {}

  /// Bound for a trailer anywhere on the span, its hitch at most `ahead` of it: corners that the
  /// hitch may be at count whole. Spans must be asked in driving order.
  double on(geo::Span span, Metres ahead) {
    left_ *= remaining(span.from - asked_);
    for (; next_ < corners_.size() && corners_[next_].at <= span.from; ++next_) {
      left_ += corners_[next_].turn * remaining(span.from - corners_[next_].at);
    }
    asked_ = span.from;
    double off = left_;
    for (std::size_t i = next_; i < corners_.size() && corners_[i].at <= span.to + ahead; ++i) {
      off += corners_[i].turn;
    }
    return off;
  }

 private:
  [[nodiscard]] double remaining(Metres past) const {
    return std::exp(-2.0 * (past / drawbar_) / std::numbers::pi);
  }

  std::vector<Corner> corners_;
  Metres drawbar_;
  Metres asked_;
  std::size_t next_ = 0;
  double left_ = 0.0;
};

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
  const Metres ahead = trailer_lag(rig) + footprint.length / 2;
  HeadingOff heading_off{line, rig.trailer->drawbar_length};
  return terrain::ground_under(scene.heights, line,
                               {footprint, line_error + cut_of(line, rig), scene.rules.piece_length,
                                [&](geo::Span span) { return heading_off.on(span, ahead); }});
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
