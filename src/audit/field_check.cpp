#include "audit/field_check.h"

#include <cmath>
#include <vector>

#include "passage/course.h"
#include "passage/footfall.h"
#include "terrain/plane.h"

namespace rimehaul::audit {

using terrain::Attitude;
using terrain::AttitudeBox;
using units::Metres;

namespace {

/// Half a line so short that the carrier stands at one place, and so long that its direction is not
/// lost in the digits of a northing.
constexpr Metres kHalfAHand{0.05};

std::optional<AttitudeBox> judged_at(const passage::Scene& scene, const rig::Rig& rig,
                                     const CheckedStand& stand) {
  const geo::Polyline line{{geo::moved(stand.at, stand.heading, -kHalfAHand),
                            geo::moved(stand.at, stand.heading, kHalfAHand)}};
  const auto tolerance = passage::slope_tolerance(scene, rig.carrier.gauge);
  std::optional<AttitudeBox> all;
  for (const passage::Footfall& footfall : passage::footfalls(scene, line, rig, Metres{0})) {
    if (!footfall.carrier || !tolerance) {
      return std::nullopt;
    }
    const AttitudeBox box = footfall.carrier->widened(*tolerance);
    all = all ? all->with(box) : box;
  }
  return all && passage::is_known(*all) ? all : std::nullopt;
}

AngleCheck held(AngleCheck check) {
  const double off_deg =
      check.found ? check.measured.degrees() - check.found->degrees() : std::nan("");
  if (std::isfinite(off_deg)) {
    check.off_deg = off_deg;
  }
  if (check.judged && std::isfinite(check.measured.ratio())) {
    const bool holds = check.judged->low <= check.measured && check.measured <= check.judged->high;
    check.within = holds ? Within::yes : Within::no;
  }
  return check;
}

std::optional<OffTogether> together(const std::vector<double>& offs_deg) {
  if (offs_deg.empty()) {
    return std::nullopt;
  }
  double sum_deg = 0.0;
  double squares_deg2 = 0.0;
  for (const double off_deg : offs_deg) {
    sum_deg += off_deg;
    squares_deg2 += off_deg * off_deg;
  }
  const auto count = static_cast<double>(offs_deg.size());
  return OffTogether{.count = offs_deg.size(),
                     .mean_deg = sum_deg / count,
                     .root_mean_square_deg = std::sqrt(squares_deg2 / count)};
}

}  // namespace

std::optional<GroundByHeights> ground_by_heights(const passage::Scene& scene, const rig::Rig& rig,
                                                 const CheckedStand& stand) {
  const auto plane = terrain::fitted_gradient(scene.heights, stand.at, stand.heading,
                                              {rig.carrier.contact_length, rig.carrier.gauge});
  if (!plane) {
    return std::nullopt;
  }
  return GroundByHeights{.found = terrain::attitude_of(*plane, stand.heading),
                         .judged = judged_at(scene, rig::without_trailer(rig), stand)};
}

const rig::Rig* smallest_tread(std::span<const rig::Rig> rigs) {
  const auto tread_m2 = [](const rig::Rig& rig) {
    return rig.carrier.contact_length.value() * rig.carrier.gauge.value();
  };
  const rig::Rig* smallest = nullptr;
  for (const rig::Rig& rig : rigs) {
    if (smallest == nullptr || tread_m2(rig) < tread_m2(*smallest)) {
      smallest = &rig;
    }
  }
  return smallest;
}

Within FieldComparison::within() const {
  if (grade.within == Within::no || cross.within == Within::no) {
    return Within::no;
  }
  return grade.within == Within::yes ? cross.within : Within::unknown;
}

FieldComparison compared(const Attitude& measured, const std::optional<GroundByHeights>& ground) {
  FieldComparison comparison{.grade = {.measured = measured.grade},
                             .cross = {.measured = measured.cross}};
  if (ground) {
    comparison.grade.found = ground->found.grade;
    comparison.cross.found = ground->found.cross;
    if (ground->judged && passage::is_known(*ground->judged)) {
      comparison.grade.judged = JudgedSpan{ground->judged->grade_low, ground->judged->grade_high};
      comparison.cross.judged = JudgedSpan{ground->judged->cross_low, ground->judged->cross_high};
    }
  }
  return {.grade = held(comparison.grade), .cross = held(comparison.cross)};
}

FieldSummary summary_of(std::span<const FieldComparison> checks) {
  FieldSummary summary{.checks = checks.size()};
  std::vector<double> grades_deg;
  std::vector<double> crosses_deg;
  for (const FieldComparison& check : checks) {
    const Within within = check.within();
    summary.within += within == Within::yes ? 1U : 0U;
    summary.outside += within == Within::no ? 1U : 0U;
    if (check.grade.off_deg) {
      grades_deg.push_back(*check.grade.off_deg);
    }
    if (check.cross.off_deg) {
      crosses_deg.push_back(*check.cross.off_deg);
    }
  }
  summary.grade = together(grades_deg);
  summary.cross = together(crosses_deg);
  return summary;
}

}  // namespace rimehaul::audit
