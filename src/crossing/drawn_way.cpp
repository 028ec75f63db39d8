// A way over the lattice drawn as a line that a rig can drive.
#include "crossing/drawn_way.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "crossing/turning.h"

namespace rimehaul::crossing {

using geo::MapPoint;
using units::Bearing;
using units::Metres;

namespace {

/// Over so many moves what is off at an end is spread (our choice).
constexpr std::size_t kMovesToBend = 6;
/// Straight pieces leave out no more points than this (our choice).
constexpr std::size_t kMostLeftOut = 100;
/// Pieces that turn less are one.
constexpr double kStraightDeg = 0.01;
constexpr double kArcStepDeg = 5.0;

struct Shift {
  Metres east;
  Metres north;
};

MapPoint shifted(MapPoint point, Shift by, double share) {
  return {point.east + share * by.east, point.north + share * by.north};
}

constexpr double kClosed = std::numeric_limits<double>::infinity();

/// A corner of a line between two straight pieces.
struct Corner {
  MapPoint before;
  MapPoint place;
  MapPoint after;

  [[nodiscard]] Bearing in() const { return geo::bearing({before, place}); }
  /// To the right above 0.
  [[nodiscard]] double turn_deg() const { return in().turn_to(geo::bearing({place, after})); }
  /// How far from it its arc may begin: each corner has half of the pieces beside it.
  [[nodiscard]] Metres tangent() const {
    return std::min(geo::distance(before, place), geo::distance(place, after)) / 2.0;
  }
};

/// The largest share on the cells that a straight piece passes, heading along it.
double share_along(const OpenGround& ground, const geo::Segment& piece) {
  const Metres length = geo::distance(piece.from, piece.to);
  const auto steps = static_cast<int>(std::ceil(length / (ground.lattice().pitch / 2.0)));
  const terrain::HeadingArc heading{geo::bearing(piece)};
  double share = 0.0;
  for (int i = 0; i <= steps; ++i) {
    const MapPoint place = geo::between(piece, static_cast<double>(i) / std::max(steps, 1));
    const auto cell = cell_of(ground.lattice(), place);
    if (!cell) {
      return kClosed;
    }
    share = std::max(share, ground.share_on(*cell, heading));
  }
  return share;
}

/// Whether a corner is rounded as gently as any of the lattice.
bool is_gentle(const Corner& corner, Metres pitch) {
  const double half_rad = std::abs(corner.turn_deg()) / 2.0 * std::numbers::pi / 180.0;
  return corner.tangent() >= std::tan(half_rad) * smallest_radius(pitch);
}

/// Points without those in the middle of a straight piece.
std::vector<MapPoint> corners_of(const std::vector<MapPoint>& points) {
  std::vector<MapPoint> corners{points.front()};
  for (std::size_t i = 1; i + 1 < points.size(); ++i) {
    if (std::abs(Corner{corners.back(), points[i], points[i + 1]}.turn_deg()) > kStraightDeg) {
      corners.push_back(points[i]);
    }
  }
  corners.push_back(points.back());
  return corners;
}

}  // namespace

std::optional<std::vector<MapPoint>> bent_to(const Ends& ends, const Lattice& lattice,
                                             const Way& way) {
  if (way.states.size() < 3) {
    return std::nullopt;
  }
  std::vector<MapPoint> points;
  points.reserve(way.states.size());
  for (const State& state : way.states) {
    points.push_back(centre_of(lattice, state.cell));
  }
  const Shift first{ends.from.east - points.front().east, ends.from.north - points.front().north};
  const Shift last{ends.to.east - points.back().east, ends.to.north - points.back().north};
  const std::size_t moves = std::min(kMovesToBend, points.size() - 1);
  const std::size_t end = points.size() - 1;
  for (std::size_t i = 0; i < moves; ++i) {
    const double share = 1.0 - static_cast<double>(i) / static_cast<double>(moves);
    points[i] = shifted(points[i], first, share);
    points[end - i] = shifted(points[end - i], last, share);
  }
  points.front() = ends.from;
  points.back() = ends.to;
  return points;
}

std::vector<MapPoint> straightened(const std::vector<MapPoint>& points, const OpenGround& ground) {
  double largest = 0.0;
  for (std::size_t i = 1; i < points.size(); ++i) {
    largest = std::max(largest, share_along(ground, {points[i - 1], points[i]}));
  }
  const Metres pitch = ground.lattice().pitch;
  std::vector<MapPoint> kept{points.front()};
  std::size_t at = 1;
  const std::size_t last = points.size() - 2;
  while (at < last) {
    const MapPoint before = kept.back();
    kept.push_back(points[at]);
    std::size_t next = at + 1;
    for (std::size_t further = at + 2; further <= std::min(last, at + kMostLeftOut); ++further) {
      if (is_gentle({before, points[at], points[further]}, pitch) &&
          is_gentle({points[at], points[further], points[further + 1]}, pitch) &&
          share_along(ground, {points[at], points[further]}) <= largest) {
        next = further;
      }
    }
    at = next;
  }
  kept.push_back(points[at]);
  kept.push_back(points.back());
  return kept;
}

geo::Polyline rounded(const std::vector<MapPoint>& points) {
  const std::vector<MapPoint> corners = corners_of(points);
  std::vector<MapPoint> line{corners.front()};
  for (std::size_t i = 1; i + 1 < corners.size(); ++i) {
    const Corner corner{corners[i - 1], corners[i], corners[i + 1]};
    const double turn = corner.turn_deg();
    const Metres tangent = corner.tangent();
    const Bearing in = corner.in();
    const double half_rad = std::abs(turn) / 2.0 * std::numbers::pi / 180.0;
    const Metres radius = tangent / std::tan(half_rad);
    MapPoint place = geo::moved(corners[i], in, -tangent);
    line.push_back(place);
    const int steps = std::max(1, static_cast<int>(std::ceil(std::abs(turn) / kArcStepDeg)));
    const double step_deg = turn / steps;
    const Metres chord =
        2.0 * std::sin(std::abs(step_deg) / 2.0 * std::numbers::pi / 180.0) * radius;
    for (int step = 0; step < steps; ++step) {
      place =
          geo::moved(place, Bearing::from_degrees(in.degrees() + (step + 0.5) * step_deg), chord);
      line.push_back(place);
    }
  }
  line.push_back(corners.back());
  return geo::Polyline{std::move(line)};
}

}  // namespace rimehaul::crossing
