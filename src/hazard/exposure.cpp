#include "hazard/exposure.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "base/require.h"
#include "hazard/steep_map.h"
#include "terrain/stretch.h"

namespace rimehaul::hazard {

using geo::MapPoint;
using geo::Polyline;
using units::Metres;

namespace {

/// A footprint's reach: ground this near to a piece counts as its own.
constexpr Metres kOwnGround{3.0};

constexpr double kInfinite = std::numeric_limits<double>::infinity();

/// Zones are compared by their bounding boxes first; this covers their widening by a millimetre.
constexpr Metres kBoxMargin{0.01};

bool known(const ExposureQuestion& question) {
  return std::isfinite(question.start_slope.ratio()) && std::isfinite(question.reach.value()) &&
         question.reach >= Metres{0} && question.tolerance >= units::Slope{} &&
         std::isfinite(question.tolerance.ratio());
}

std::vector<Segment> segments_of(const Polyline& line, geo::Span piece) {
  const std::size_t first = line.segment_at(piece.from);
  const std::size_t last = line.segment_at(piece.to);
  std::vector<Segment> segments;
  for (std::size_t i = first; i <= last; ++i) {
    segments.push_back({i == first ? line.at(piece.from) : line.points()[i],
                        i == last ? line.at(piece.to) : line.points()[i + 1]});
  }
  return segments;
}

struct Box {
  Metres west{kInfinite};
  Metres east{-kInfinite};
  Metres south{kInfinite};
  Metres north{-kInfinite};

  void take(MapPoint place) {
    west = std::min(west, place.east);
    east = std::max(east, place.east);
    south = std::min(south, place.north);
    north = std::max(north, place.north);
  }
  [[nodiscard]] bool near(const Box& other) const {
    return west <= other.east + kBoxMargin && other.west <= east + kBoxMargin &&
           south <= other.north + kBoxMargin && other.south <= north + kBoxMargin;
  }
};

bool boxes_near(const geo::Region& region, const std::vector<Segment>& segments) {
  Box around_region;
  for (const auto& ring : region.rings) {
    for (const MapPoint place : ring) {
      around_region.take(place);
    }
  }
  Box around_piece;
  for (const Segment& segment : segments) {
    around_piece.take(segment.from);
    around_piece.take(segment.to);
  }
  return around_region.near(around_piece);
}

bool enters(const geo::Region& region, const Polyline& line, geo::Span piece) {
  return piece.from < piece.to ? !spans_inside(region, line.part(piece.from, piece.to)).empty()
                               : contains(region, line.at(piece.from));
}

}  // namespace

SteepGround::SteepGround(const terrain::HeightMap& heights, ExposureQuestion question)
    : heights_{&heights},
      question_{question},
      steep_{std::make_shared<SteepMap>(
          heights, question.start_slope.raised_by(question.tolerance.reversed()))} {}

Exposure SteepGround::exposure_of(const Polyline& line, geo::Span piece,
                                  const std::vector<trails::Zone>& zones) const {
  base::require(piece.from <= piece.to, "a piece of line ends before it starts");
  const std::vector<Segment> segments = segments_of(line, piece);
  Exposure exposure;
  if (known(question_)) {
    const auto own = steepest_around(*heights_, line, {piece, kOwnGround});
    if (own) {
      exposure.own_slope = own->raised_by(question_.tolerance);
    }
    const auto nearest = steep_->nearest_to(segments, question_.reach);
    exposure.to_steep_ground = nearest.value_or(question_.reach);
    exposure.nothing_steep_within_reach = !nearest.has_value();
  }
  for (const trails::Zone& zone : zones) {
    const bool release = zone.kind == trails::ZoneKind::release_area;
    const bool runout = zone.kind == trails::ZoneKind::runout;
    if ((release || runout) && boxes_near(zone.region, segments) &&
        enters(zone.region, line, piece)) {
      exposure.in_release_area |= release;
      exposure.in_runout |= runout;
    }
  }
  return exposure;
}

}  // namespace rimehaul::hazard
