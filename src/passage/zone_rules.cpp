// Zones that a stretch of trail enters, the line taken as wide as it may be off.
#include "passage/zone_rules.h"

#include <algorithm>
#include <limits>
#include <span>

namespace rimehaul::passage {

using geo::MapPoint;
using units::Metres;
using units::MetresPerSecond;

namespace {

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

bool clearly_apart(const geo::Region& region, const geo::Polyline& line, Metres reach) {
  return clearly_apart(extent_of(region.rings.front()), extent_of(line.points()), reach);
}

}  // namespace

bool touches(const geo::Region& region, const geo::Polyline& line, Metres reach) {
  if (clearly_apart(region, line, reach)) {
    return false;
  }
  // Asked as "is it proven away", so that a reach that is not a number counts as touching.
  const auto away = [&](Metres distance) { return distance > reach; };
  const bool corners_away = std::ranges::all_of(
      line.points(), [&](MapPoint point) { return away(geo::distance(region, point)); });
  const bool outline_away = std::ranges::all_of(region.rings, [&](const auto& ring) {
    return std::ranges::all_of(ring,
                               [&](MapPoint point) { return away(line.nearest(point).away); });
  });
  return !corners_away || !outline_away || !geo::spans_inside(region, line).empty();
}

std::vector<trails::Zone> zones_around(const std::vector<trails::Zone>& zones,
                                       const geo::Polyline& line, Metres reach) {
  std::vector<trails::Zone> near;
  std::ranges::copy_if(zones, std::back_inserter(near), [&](const trails::Zone& zone) {
    return !clearly_apart(zone.region, line, reach);
  });
  return near;
}

ZoneJudgement judge_zones(const std::vector<trails::Zone>& zones, const geo::Polyline& part,
                          Metres reach) {
  ZoneJudgement judged{kept(Check::zone), MetresPerSecond{std::numeric_limits<double>::infinity()}};
  const auto note = [&judged](Finding finding) {
    if (binds_before(finding, judged.finding)) {
      judged.finding = std::move(finding);
    }
  };
  for (const trails::Zone& zone : zones) {
    const bool forbidden = zone.kind == trails::ZoneKind::forbidden;
    const bool limited = zone.kind == trails::ZoneKind::speed_limit;
    if (!(forbidden || limited) || !touches(zone.region, part, reach)) {
      continue;
    }
    if (forbidden) {
      note(refusal(Check::zone, "forbidden ground '" + zone.name + "'"));
    } else if (!zone.speed.has_value()) {
      note(unknown(Check::zone, "speed of the speed limit '" + zone.name + "'"));
    } else if (!(*zone.speed >= judged.speed)) {
      judged.speed = *zone.speed;
    }
  }
  return judged;
}

}  // namespace rimehaul::passage
