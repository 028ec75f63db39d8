// Bounds of the parts of gravity over a box of grades and cross-slopes.
//
// Let g = |G| and k = |K|.
// - along = G / sqrt(1 + G^2) rises with G, so its ends lie at the ends of the box's grade.
// - normal = 1 / sqrt(1 + g^2 + k^2) falls with g and with k: least at the steepest, most at the
//   gentlest of both.
// - lateral = k / (sqrt(1 + g^2) sqrt(1 + g^2 + k^2)) falls with g and rises with k, for
//   k / sqrt(1 + g^2 + k^2) does: most at the gentlest grade and the steepest cross-slope.
// - lateral / normal = K / sqrt(1 + G^2) rises with K; its size falls with g. Its most lies at the
//   box's highest K and, when that is not below 0, at the gentlest grade, else at the steepest.
// - along / normal = G sqrt(1 + G^2 + K^2) / sqrt(1 + G^2) = sqrt(G^2 + G^2 K^2 / (1 + G^2)) with
//   the sign of G: its size rises with g and with k. Its most lies at the box's highest G and, when
//   that is not below 0, at the steepest cross-slope, else at the gentlest.
#include "passage/tilt.h"

#include <cmath>
#include <limits>

namespace rimehaul::passage {

namespace {

constexpr double kUnknown = std::numeric_limits<double>::quiet_NaN();

/// Sizes of a range that may hold zero.
struct Sizes {
  double least;
  double most;
};

/// Ends of a range of tangents.
struct Ends {
  double low;
  double high;
};

Sizes sizes_of(Ends ends) {
  const double a = std::abs(ends.low);
  const double b = std::abs(ends.high);
  const bool holds_zero = ends.low <= 0.0 && ends.high >= 0.0;
  return {.least = holds_zero ? 0.0 : smaller(a, b), .most = larger(a, b)};
}

/// From a million on a square may overflow, and no ground is that steep.
constexpr double kNoGround = 1e6;

bool is_ground(double tangent) {
  return std::abs(tangent) < kNoGround;  // NaN fails this
}

/// Length along the snow of a metre in plan.
double stretch_of(double grade) {
  return std::sqrt(1.0 + grade * grade);
}

double part_along(double grade) {
  return grade / stretch_of(grade);
}

/// One attitude, both tangents.
struct Corner {
  double grade;
  double cross;
};

double normal(Corner corner) {
  return 1.0 / std::sqrt(1.0 + corner.grade * corner.grade + corner.cross * corner.cross);
}

double most_along_per_normal(double highest_grade, Sizes cross) {
  const double k = highest_grade >= 0.0 ? cross.most : cross.least;
  return part_along(highest_grade) / normal({highest_grade, k});
}

double most_lateral_per_normal(double highest_cross, Sizes grade) {
  const double g = highest_cross >= 0.0 ? grade.least : grade.most;
  return highest_cross / stretch_of(g);
}

Tilt unknown_tilt() {
  return {kUnknown, kUnknown, kUnknown, kUnknown, kUnknown, kUnknown,
          kUnknown, kUnknown, kUnknown, kUnknown, kUnknown, kUnknown};
}

}  // namespace

double along(units::Slope grade) {
  return part_along(grade.ratio());
}

double above_zero(double value) {
  return value <= 0.0 ? 0.0 : value;
}

// NOLINTNEXTLINE(bugprone-easily-swappable-parameters): either order will do
double larger(double a, double b) {
  if (a >= b) {
    return a;
  }
  return b > a ? b : kUnknown;
}

// NOLINTNEXTLINE(bugprone-easily-swappable-parameters): either order will do
double smaller(double a, double b) {
  return -larger(-a, -b);
}

Tilt tilt_of(const terrain::AttitudeBox& box) {
  const double grade_low = box.grade_low.ratio();
  const double grade_high = box.grade_high.ratio();
  const double cross_low = box.cross_low.ratio();
  const double cross_high = box.cross_high.ratio();
  const bool known = is_ground(grade_low) && is_ground(grade_high) && is_ground(cross_low) &&
                     is_ground(cross_high) && grade_low <= grade_high && cross_low <= cross_high;
  if (!known) {
    return unknown_tilt();
  }
  const Sizes grade = sizes_of({grade_low, grade_high});
  const Sizes cross = sizes_of({cross_low, cross_high});
  return {.up = part_along(grade_high),
          .down = part_along(-grade_low),
          .normal_least = normal({grade.most, cross.most}),
          .normal_most = normal({grade.least, cross.least}),
          .lateral = cross.most / stretch_of(grade.least) * normal({grade.least, cross.most}),
          .across_normal = cross.most / stretch_of(grade.least),
          .back_normal = most_along_per_normal(grade_high, cross),
          .forward_normal = most_along_per_normal(-grade_low, cross),
          .right_normal = most_lateral_per_normal(cross_high, grade),
          .left_normal = most_lateral_per_normal(-cross_low, grade),
          .steepest_grade = grade.most,
          .steepest_across = cross.most};
}

}  // namespace rimehaul::passage
