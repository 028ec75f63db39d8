#include "hazard/exposure.h"

#include <algorithm>
#include <cmath>

#include "base/require.h"
#include "hazard/steep_map.h"

namespace rimehaul::hazard {

using geo::Polyline;
using units::Metres;

namespace {

/// A footprint's reach: ground this near to a piece counts as its own.
constexpr Metres kOwnGround{3.0};

bool known(const ExposureQuestion& question) {
  return std::isfinite(question.start_slope.ratio()) && std::isfinite(question.reach.value()) &&
         question.reach >= Metres{0} && question.tolerance >= units::Slope{} &&
         std::isfinite(question.tolerance.ratio());
}

std::vector<geo::Segment> segments_of(const Polyline& line, geo::Span piece) {
  const std::size_t first = line.segment_at(piece.from);
  const std::size_t last = line.segment_at(piece.to);
  std::vector<geo::Segment> segments;
  for (std::size_t i = first; i <= last; ++i) {
    segments.push_back({i == first ? line.at(piece.from) : line.points()[i],
                        i == last ? line.at(piece.to) : line.points()[i + 1]});
  }
  return segments;
}

/// Whether the piece, or ground as far beside it as the line may be off, lies in the region.
bool enters(const geo::Region& region, const Polyline& line, const terrain::Surroundings& where) {
  const geo::Span piece = where.piece;
  return piece.from < piece.to
             ? touches(region, line.part(piece), where.around)
             : !(distance(region, line.at(piece.from)) > where.around);  // NaN counts as inside
}

}  // namespace

SteepGround::SteepGround(const terrain::HeightMap& heights, ExposureQuestion question)
    : heights_{&heights},
      question_{question},
      steep_{std::make_shared<SteepMap>(
          heights, question.start_slope.raised_by(question.tolerance.reversed()))} {}

Exposure SteepGround::exposure_of(const Polyline& line, const terrain::Surroundings& where,
                                  const std::vector<trails::Zone>& zones) const {
  const geo::Span piece = where.piece;
  base::require(piece.from <= piece.to, "a piece of line ends before it starts");
  const std::vector<geo::Segment> segments = segments_of(line, piece);
  Exposure exposure;
  if (known(question_) && where.around >= Metres{0} && std::isfinite(where.around.value())) {
    const auto own = steepest_around(*heights_, line, {piece, kOwnGround + where.around});
    if (own) {
      exposure.own_slope = own->raised_by(question_.tolerance);
    }
    const auto nearest = steep_->nearest_to(segments, question_.reach + where.around);
    exposure.to_steep_ground =
        nearest ? std::max(Metres{0}, *nearest - where.around) : question_.reach;
    exposure.nothing_steep_within_reach = !nearest.has_value();
  }
  for (const trails::Zone& zone : zones) {
    const bool release = zone.kind == trails::ZoneKind::release_area;
    const bool runout = zone.kind == trails::ZoneKind::runout;
    if ((release || runout) && enters(zone.region, line, where)) {
      exposure.in_release_area |= release;
      exposure.in_runout |= runout;
    }
  }
  return exposure;
}

}  // namespace rimehaul::hazard
