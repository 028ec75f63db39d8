// Zones that a stretch of trail enters, the line taken as wide as it may be off.
#include "passage/zone_rules.h"

#include <algorithm>
#include <limits>

#include "passage/course.h"

namespace rimehaul::passage {

using units::Metres;
using units::MetresPerSecond;

std::vector<trails::Zone> zones_around(const std::vector<trails::Zone>& zones,
                                       const geo::Polyline& line, Metres reach) {
  std::vector<trails::Zone> near;
  std::ranges::copy_if(zones, std::back_inserter(near), [&](const trails::Zone& zone) {
    return geo::may_touch(zone.region, line, reach);
  });
  return near;
}

ZoneJudgement judge_zones(const std::vector<trails::Zone>& zones, const geo::Polyline& part,
                          Metres reach) {
  ZoneJudgement judged{kept(Check::zone, "no forbidden ground here"),
                       MetresPerSecond{std::numeric_limits<double>::infinity()}};
  const auto note = [&judged](Finding finding) {
    if (binds_before(finding, judged.finding)) {
      judged.finding = std::move(finding);
    }
  };
  for (const trails::Zone& zone : zones) {
    const bool forbidden = zone.kind == trails::ZoneKind::forbidden;
    const bool limited = zone.kind == trails::ZoneKind::speed_limit;
    if (!(forbidden || limited) || !geo::touches(zone.region, part, reach)) {
      continue;
    }
    if (forbidden) {
      note(refusal(Check::zone, "forbidden ground '" + zone.name + "'"));
    } else if (!zone.speed.has_value()) {
      note(unknown(Check::zone, "speed of the speed limit '" + zone.name + "'"));
    } else {
      judged.speed = lower_of(judged.speed, *zone.speed);
    }
  }
  return judged;
}

}  // namespace rimehaul::passage
