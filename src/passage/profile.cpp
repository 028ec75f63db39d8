// The way of a stretch over the snow: the heights under its line, and what that costs to drive.
#include "passage/profile.h"

#include <algorithm>
#include <cmath>

namespace rimehaul::passage {

using units::Litres;
using units::Metres;
using units::Slope;

namespace {

constexpr double kSecondsPerHour = 3600.0;

struct ProfilePoint {
  Metres at;
  std::optional<geo::Height> height;
};

std::vector<ProfilePoint> points_of(const terrain::HeightMap& heights, const geo::Polyline& line,
                                    const std::vector<Footfall>& footfalls) {
  std::vector<ProfilePoint> points;
  points.reserve(footfalls.size() + 2);
  points.push_back({Metres{0}, heights.at(line.points().front())});
  for (const Footfall& footfall : footfalls) {
    points.push_back({(footfall.span.from + footfall.span.to) / 2, footfall.height});
  }
  points.push_back({line.length(), heights.at(line.points().back())});
  return points;
}

}  // namespace

std::optional<std::vector<Rise>> profile_of(const terrain::HeightMap& heights,
                                            const geo::Polyline& line,
                                            const std::vector<Footfall>& footfalls) {
  const std::vector<ProfilePoint> points = points_of(heights, line, footfalls);
  std::vector<Rise> profile;
  profile.reserve(points.size());
  for (std::size_t i = 0; i + 1 < points.size(); ++i) {
    if (!points[i].height.has_value() || !points[i + 1].height.has_value()) {
      return std::nullopt;
    }
    const Metres in_plan = points[i + 1].at - points[i].at;
    if (in_plan <= Metres{0}) {
      continue;
    }
    const double rise = (*points[i + 1].height - *points[i].height) / in_plan;
    profile.push_back({in_plan, Slope::from_ratio(rise), std::max<std::size_t>(i, 1) - 1});
  }
  return profile;
}

Way way_over(const std::vector<Rise>& profile) {
  Way way;
  for (const Rise& rise : profile) {
    const Metres up = rise.in_plan * rise.grade.ratio();
    way.climb += std::max(up, Metres{0});
    way.drop += std::max(-up, Metres{0});
    way.over_snow += over_snow(rise.in_plan, rise.grade);
  }
  return way;
}

Litres fuel_over(const std::vector<Rise>& profile, const rig::Rig& rig,
                 const std::vector<const snow::GripRow*>& grips, units::MetresPerSecond speed) {
  const rig::Weighed weighed = rig::weigh(rig);
  Litres fuel{0};
  for (const Rise& rise : profile) {
    const units::Newtons pull = pull_needed(weighed, *grips[rise.footfall], rise.grade);
    const units::Seconds time = over_snow(rise.in_plan, rise.grade) / speed;
    fuel += Litres{fuel_rate(rig.carrier, pull, speed).value() * time.value() / kSecondsPerHour};
  }
  return fuel;
}

}  // namespace rimehaul::passage
