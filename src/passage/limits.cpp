// The ground checks turned round: the steepest ground that a rig may be driven on in one snow
// state.
#include "passage/limits.h"

#include <cmath>
#include <utility>

namespace rimehaul::passage {

namespace {

/// Grade and cross-slope in tenths of a degree; the grade falls below 0.
struct Tenths {
  int grade = 0;
  int cross = 0;
};

units::Slope grade_of(int tenths) {
  return tenths < 0 ? slope_of_tenths(-tenths).reversed() : slope_of_tenths(tenths);
}

terrain::Attitude plane_of(Tenths tenths) {
  return {.grade = grade_of(tenths.grade), .cross = slope_of_tenths(tenths.cross)};
}

int tenths_of(units::Slope slope) {
  return static_cast<int>(std::lround(slope.degrees() * 10.0));
}

constexpr Tenths kClimb{.grade = 1, .cross = 0};
constexpr Tenths kDescent{.grade = -1, .cross = 0};
constexpr Tenths kAcross{.grade = 0, .cross = 1};

terrain::Attitude plane_towards(Tenths outward, int steps) {
  return plane_of({.grade = outward.grade * steps, .cross = outward.cross * steps});
}

/// Requires that level ground passes.
Limit limit_towards(const PlaneJudge& judge, Tenths outward) {
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

/// One point of an outline while it is sought.
struct Found {
  Tenths at;
  EnvelopePoint point;
};

/// The open cross-slope outward from none. Requires that this grade passes without.
Found widest_at(const PlaneJudge& judge, int grade_tenths) {
  for (int cross = 1; cross <= kScanEnd_tenths; ++cross) {
    Finding binding = judge.binding_on(plane_of({grade_tenths, cross}));
    if (stand_of(binding, judge.allowed_share()) != Stand::passes) {
      const Tenths at{grade_tenths, cross - 1};
      return {at, {.plane = plane_of(at), .binding = std::move(binding)}};
    }
  }
  const Tenths end{grade_tenths, kScanEnd_tenths};
  return {end,
          {.plane = plane_of(end), .binding = judge.binding_on(plane_of(end)), .scan_end = true}};
}

/// A straight line between two points of an outline.
struct Line {
  Tenths from;
  Tenths to;
};

/// Cross-slope of a line at a grade between its ends, rounded down.
int cross_at(const Line& line, int grade) {
  const auto [from, to] = line;
  const int run = to.grade - from.grade;
  const int weighed = from.cross * (to.grade - grade) + to.cross * (grade - from.grade);
  return weighed / run;
}

/// Adds `next` to an outline, and before it every point that the line to it would cut across.
void join(std::vector<Found>& outline, Found next, const PlaneJudge& judge) {
  for (int grade = outline.empty() ? next.at.grade : outline.back().at.grade + 1;
       grade < next.at.grade; ++grade) {
    const int cross = cross_at({outline.back().at, next.at}, grade);
    if (!judge.passes(plane_of({grade, cross}))) {
      outline.push_back(widest_at(judge, grade));
    }
  }
  outline.push_back(std::move(next));
}

}  // namespace

units::Slope slope_of_tenths(int tenths) {
  return units::Slope::from_degrees(tenths / 10.0);
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
  limits.climb = limit_towards(judge, kClimb);
  limits.descent = limit_towards(judge, kDescent);
  limits.cross = limit_towards(judge, kAcross);
  return limits;
}

Envelope envelope_of(const SlopeQuestion& question) {
  GradeLimits limits = grade_limits(question);
  if (limits.closed.has_value()) {
    return {.outline = {}, .closed = std::move(limits.closed)};
  }
  const PlaneJudge judge{question};
  const int lowest = -tenths_of(limits.descent->steepest);
  const int highest = tenths_of(limits.climb->steepest);
  constexpr int kHalfDegree = 5;
  std::vector<Found> found;
  int grade = lowest;
  while (grade < highest) {
    join(found, widest_at(judge, grade), judge);
    const int past = (grade % kHalfDegree + kHalfDegree) % kHalfDegree;
    grade += kHalfDegree - past;
  }
  join(found, widest_at(judge, highest), judge);
  Envelope envelope;
  for (Found& each : found) {
    envelope.outline.push_back(std::move(each.point));
  }
  return envelope;
}

}  // namespace rimehaul::passage
