// The way of a stretch over the snow: the heights under its line, and what that costs to drive.
#include "passage/profile.h"

#include <algorithm>
#include <cmath>
#include <span>

#include "passage/tilt.h"

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

/// Grades between which the ground goes from one point to the next.
struct GradeRange {
  Slope low;
  Slope high;
};

GradeRange grades_on(std::span<const Footfall> footfalls, Slope mean) {
  GradeRange range{mean, mean};
  for (const Footfall& footfall : footfalls) {
    if (footfall.carrier.has_value()) {
      range.low = std::min(range.low, footfall.carrier->grade_low);
      range.high = std::max(range.high, footfall.carrier->grade_high);
    }
  }
  return range;
}

/// The most that a convex function of the grade can come to on average where the grade goes between
/// two ends and has a known mean: that of ground that has the one or the other end's grade and
/// nothing between.
template <class Convex>
double most_on_average(const Rise& rise, const Convex& function) {
  const double low = rise.low.ratio();
  const double high = rise.high.ratio();
  if (!(low < high)) {
    return function(rise.grade);
  }
  const double at_high = (rise.grade.ratio() - low) / (high - low);
  return at_high * function(rise.high) + (1.0 - at_high) * function(rise.low);
}

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
  if (footfalls.empty()) {
    return std::nullopt;
  }
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
    const Slope grade = Slope::from_ratio((*points[i + 1].height - *points[i].height) / in_plan);
    const std::size_t before = std::max<std::size_t>(i, 1) - 1;
    const std::size_t under = std::min(i, footfalls.size() - 1);
    const GradeRange range =
        grades_on(std::span{footfalls}.subspan(before, under - before + 1), grade);
    profile.push_back({in_plan, grade, range.low, range.high, before, under});
  }
  return profile;
}

Way way_over(const std::vector<Rise>& profile) {
  Way way;
  for (const Rise& rise : profile) {
    const Metres up = rise.in_plan * rise.grade.ratio();
    way.climb += std::max(up, Metres{0});
    way.drop += std::max(-up, Metres{0});
    way.over_snow += Metres{
        most_on_average(rise, [&](Slope grade) { return over_snow(rise.in_plan, grade).value(); })};
  }
  return way;
}

Litres fuel_over(const std::vector<Rise>& profile, const rig::Rig& rig,
                 const std::vector<const snow::GripRow*>& grips, units::MetresPerSecond speed) {
  const rig::Weighed weighed = rig::weigh(rig);
  Litres fuel{0};
  for (const Rise& rise : profile) {
    // The pull times the way over the snow is linear in the grade; idling for that way, and the
    // larger of both, are convex in it.
    const auto litres_at = [&](Slope grade) {
      const units::Newtons pull{larger(pull_needed(weighed, *grips[rise.before], grade).value(),
                                       pull_needed(weighed, *grips[rise.under], grade).value())};
      const units::Seconds time = over_snow(rise.in_plan, grade) / speed;
      return fuel_rate(rig.carrier, pull, speed).value() * time.value() / kSecondsPerHour;
    };
    fuel += Litres{most_on_average(rise, litres_at)};
  }
  return fuel;
}

}  // namespace rimehaul::passage
