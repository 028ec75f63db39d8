// The ground checks turned round: the steepest ground that a rig may be driven on in one snow
// state.
#include "passage/limits.h"

#include <cmath>
#include <limits>

namespace rimehaul::passage {

namespace {

enum class Outward { climb, descent, cross };

terrain::Attitude plane_towards(Outward outward, int tenths) {
  const units::Slope slope = slope_of_tenths(tenths);
  switch (outward) {
    case Outward::climb:
      return {.grade = slope, .cross = {}};
    case Outward::descent:
      return {.grade = slope.reversed(), .cross = {}};
    case Outward::cross:
      return {.grade = {}, .cross = slope};
  }
  return {.grade = units::Slope::from_ratio(std::nan("")), .cross = {}};
}

/// Requires that level ground passes.
Limit limit_towards(const PlaneJudge& judge, Outward outward) {
  for (int tenths = 1; tenths <= kScanEnd_tenths; ++tenths) {
    Finding binding = judge.binding_on(plane_towards(outward, tenths));
    if (stand_of(binding, judge.allowed_share()) != Stand::passes) {
      return {.steepest = slope_of_tenths(tenths - 1), .binding = std::move(binding)};
    }
  }
  return {.steepest = slope_of_tenths(kScanEnd_tenths),
          .binding = judge.binding_on(plane_towards(outward, kScanEnd_tenths)),
          .scan_end = true};
}

}  // namespace

units::Slope slope_of_tenths(int tenths) {
  const double degrees = tenths / 10.0;
  units::Slope slope = units::Slope::from_degrees(degrees);
  while (slope.degrees() < degrees) {
    slope = units::Slope::from_ratio(
        std::nextafter(slope.ratio(), std::numeric_limits<double>::infinity()));
  }
  return slope;
}

GradeLimits grade_limits(const SlopeQuestion& question) {
  const PlaneJudge judge{question};
  GradeLimits limits;
  limits.allowed_share = judge.allowed_share();
  limits.closed = judge.closed();
  if (!limits.closed.has_value()) {
    Finding level = judge.binding_on({});
    if (stand_of(level, judge.allowed_share()) != Stand::passes) {
      limits.closed = std::move(level);
    }
  }
  if (limits.closed.has_value()) {
    return limits;
  }
  limits.climb = limit_towards(judge, Outward::climb);
  limits.descent = limit_towards(judge, Outward::descent);
  limits.cross = limit_towards(judge, Outward::cross);
  return limits;
}

}  // namespace rimehaul::passage
