#include "geo/region.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <span>

namespace rimehaul::geo {

using units::Metres;

namespace {

constexpr Metres kHair{0.001};
/// A stretch this short is one point, told apart by rounding alone.
constexpr Metres kPoint{1e-9};

/// Even-odd rule over all rings; places on an edge may fall on either side.
bool inside_by_parity(const Region& region, MapPoint place) {
  bool inside = false;
  for (const auto& ring : region.rings) {
    for (std::size_t i = 0; i + 1 < ring.size(); ++i) {
      const MapPoint a = ring[i];
      const MapPoint b = ring[i + 1];
      if ((a.north > place.north) != (b.north > place.north)) {
        const double share = (place.north - a.north) / (b.north - a.north);
        if (place.east < between({a, b}, share).east) {
          inside = !inside;
        }
      }
    }
  }
  return inside;
}

Metres distance_to_outline(const Region& region, MapPoint place) {
  Metres least{INFINITY};
  for (const auto& ring : region.rings) {
    least = std::min(least, Polyline{ring}.nearest(place).away);
  }
  return least;
}

struct Meeting {
  Segment line;
  Segment edge;
};

/// Shares along the line, in [0, 1], where it and the edge meet: both ends of a common stretch, or
/// one point twice.
std::array<double, 2> shares_where(const Meeting& meeting) {
  const auto& [line, edge] = meeting;
  const double along_east = (line.to.east - line.from.east).value();
  const double along_north = (line.to.north - line.from.north).value();
  const double edge_east = (edge.to.east - edge.from.east).value();
  const double edge_north = (edge.to.north - edge.from.north).value();
  const double apart_east = (edge.from.east - line.from.east).value();
  const double apart_north = (edge.from.north - line.from.north).value();
  const double cross = along_east * edge_north - along_north * edge_east;
  if (cross != 0.0) {
    const double share = (apart_east * edge_north - apart_north * edge_east) / cross;
    const double met = std::clamp(share, 0.0, 1.0);
    return {met, met};
  }
  const double length2 = along_east * along_east + along_north * along_north;
  const double start = (apart_east * along_east + apart_north * along_north) / length2;
  const double end = start + (edge_east * along_east + edge_north * along_north) / length2;
  return {std::clamp(start, 0.0, 1.0), std::clamp(end, 0.0, 1.0)};
}

void add_span(std::vector<Span>& spans, Span span) {
  if (!spans.empty() && span.from <= spans.back().to) {
    spans.back().to = std::max(spans.back().to, span.to);
    return;
  }
  spans.push_back(span);
}

struct Extent {
  MapPoint least;
  MapPoint most;
};

Extent extent_of(std::span<const MapPoint> points) {
  Extent extent{points.front(), points.front()};
  for (const MapPoint& point : points) {
    extent.least.east = std::min(extent.least.east, point.east);
    extent.least.north = std::min(extent.least.north, point.north);
    extent.most.east = std::max(extent.most.east, point.east);
    extent.most.north = std::max(extent.most.north, point.north);
  }
  return extent;
}

/// Whether two extents are proven further apart than `reach`.
bool clearly_apart(const Extent& lhs, const Extent& rhs, Metres reach) {
  return lhs.least.east > rhs.most.east + reach || rhs.least.east > lhs.most.east + reach ||
         lhs.least.north > rhs.most.north + reach || rhs.least.north > lhs.most.north + reach;
}

}  // namespace

bool contains(const Region& region, MapPoint place) {
  return inside_by_parity(region, place) || distance_to_outline(region, place) <= Metres{0};
}

Metres distance(const Region& region, MapPoint place) {
  return inside_by_parity(region, place) ? Metres{0} : distance_to_outline(region, place);
}

std::vector<Span> spans_inside(const Region& region, const Polyline& line) {
  std::vector<Span> spans;
  for (std::size_t i = 0; i < line.segment_count(); ++i) {
    const Segment segment = line.segment(i);
    std::vector<double> shares{0.0, 1.0};
    for (const auto& ring : region.rings) {
      for (std::size_t j = 0; j + 1 < ring.size(); ++j) {
        const auto met = shares_where({segment, {ring[j], ring[j + 1]}});
        shares.insert(shares.end(), met.begin(), met.end());
      }
    }
    std::ranges::sort(shares);
    const Metres start = line.chainage(i);
    const Metres long_by = line.chainage(i + 1) - start;
    for (std::size_t j = 0; j + 1 < shares.size(); ++j) {
      if ((shares[j + 1] - shares[j]) * long_by <= kPoint) {
        continue;
      }
      const MapPoint middle = between(segment, (shares[j] + shares[j + 1]) / 2);
      if (distance(region, middle) <= kHair) {
        add_span(spans, {std::max(Metres{0}, start + shares[j] * long_by - kHair),
                         std::min(line.length(), start + shares[j + 1] * long_by + kHair)});
      }
    }
  }
  return spans;
}

bool touches(const Region& region, const Polyline& line, Metres reach) {
  if (!may_touch(region, line, reach)) {
    return false;
  }
  // Asked as "is it proven away", so that a reach that is not a number counts as touching.
  const auto away = [&](Metres distance) { return distance > reach; };
  const bool corners_away = std::ranges::all_of(
      line.points(), [&](MapPoint point) { return away(distance(region, point)); });
  const bool outline_away = std::ranges::all_of(region.rings, [&](const auto& ring) {
    return std::ranges::all_of(ring,
                               [&](MapPoint point) { return away(line.nearest(point).away); });
  });
  return !corners_away || !outline_away || !spans_inside(region, line).empty();
}

bool may_touch(const Region& region, const Polyline& line, Metres reach) {
  return !clearly_apart(extent_of(region.rings.front()), extent_of(line.points()), reach);
}

}  // namespace rimehaul::geo
