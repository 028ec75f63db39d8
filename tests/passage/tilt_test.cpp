// The parts of gravity on tilted ground, against vectors and published attitudes, and their bounds.
#include <doctest/doctest.h>

#include <cmath>
#include <random>

#include "near.h"
#include "passage/tilt.h"
#include "rig_on_slope.h"
#include "terrain/attitude.h"
#include "units/bearing.h"
#include "units/slope.h"

namespace rimehaul::passage {

namespace {

using testing::exactly;
using testing::kNoNumber;
using testing::near;
using units::Slope;

struct Parts {
  double along;    // back, when climbing
  double lateral;  // to the right
  double normal;
};

/// By vectors, axes ahead, left and up: ground z = G x + K y, its unit normal n, the direction a
/// ahead in the ground, and left in the ground n x a. Gravity is (0, 0, -1).
Parts parts_by_vectors(double grade, double cross) {
  const double normal_length = std::sqrt(1 + grade * grade + cross * cross);
  const double n[3] = {-grade / normal_length, -cross / normal_length, 1 / normal_length};
  const double ahead_length = std::sqrt(1 + grade * grade);
  const double a[3] = {1 / ahead_length, 0, grade / ahead_length};
  const double left_up = n[0] * a[1] - n[1] * a[0];  // upward part of n x a
  return {.along = a[2], .lateral = left_up, .normal = n[2]};
}

struct Range {
  double low;
  double high;
};

Range any_range(std::mt19937& dice) {
  std::uniform_real_distribution<double> slope(-0.9, 0.9);
  const double a = slope(dice);
  const double b = slope(dice);
  return {std::min(a, b), std::max(a, b)};
}

terrain::AttitudeBox box_of(Range grade, Range cross) {
  return {Slope::from_ratio(grade.low), Slope::from_ratio(grade.high), Slope::from_ratio(cross.low),
          Slope::from_ratio(cross.high)};
}

}  // namespace

TEST_CASE(
    "a slope of 25 degrees taken 40 degrees off straight up parts gravity as rigid bodies do") {
  // Rigid-body geometry: along sin(theta), lateral cos(theta) sin(phi), normal cos(beta), with
  // sin(phi) = sin(beta) sin(Delta) and tan(theta) = tan(beta) cos(Delta).
  constexpr double kRadian = 0.017453292519943295;
  const double beta = 25 * kRadian;
  const double delta = 40 * kRadian;
  const double grade = std::tan(beta) * std::cos(delta);
  const double cross = std::tan(beta) * std::sin(delta);
  const double theta = std::atan(grade);
  const double phi = std::asin(std::sin(beta) * std::sin(delta));
  const Tilt tilt = tilt_of(exactly(grade, cross));
  CHECK(near(tilt.up, 0.336394, 5e-7));
  CHECK(near(tilt.up, std::sin(theta), 1e-15));
  CHECK(near(tilt.down, -std::sin(theta), 1e-15));
  CHECK(near(tilt.lateral, 0.255822, 5e-7));
  CHECK(near(tilt.lateral, std::cos(theta) * std::sin(phi), 1e-15));
  CHECK(near(tilt.normal_least, 0.906308, 5e-7));
  CHECK(near(tilt.normal_most, std::cos(beta), 1e-15));
}

TEST_CASE("a machine rolls by less than the cross-slope of the map, which is what is limited") {
  // sin(phi) = sin(beta) sin(Delta) (rigid-body geometry); gravity leans across by tan(phi).
  constexpr double kDegrees = 57.29577951308232;
  struct Row {
    double beta;
    double delta;
    double roll;
    double cross;
  };
  for (const Row& row : {Row{25, 40, 15.76270, 16.68541}, Row{30, 45, 20.70481, 22.20765},
                         Row{20, 90, 20.0, 20.0}}) {
    CAPTURE(row.beta);
    const auto attitude = terrain::attitude_of({Slope{}, Slope::from_degrees(row.beta)},
                                               units::Bearing::from_degrees(row.delta));
    const Tilt tilt = tilt_of(exactly(attitude.grade.ratio(), attitude.cross.ratio()));
    const double phi = std::atan(tilt.right_normal);
    CHECK(near(phi * kDegrees, row.roll, 5e-6));
    CHECK(
        near(std::sin(phi), std::sin(row.beta / kDegrees) * std::sin(row.delta / kDegrees), 1e-12));
    CHECK(near(attitude.cross.degrees(), row.cross, 5e-6));
    // cos(beta) = cos(theta) cos(phi)
    CHECK(near(tilt.normal_least, std::cos(std::asin(tilt.up)) * std::cos(phi), 1e-12));
    CHECK(attitude.cross.degrees() >= phi * kDegrees - 1e-9);
  }
}

TEST_CASE("the gravity line meets the ground where rigid-body geometry says") {
  // x = -h tan(theta) / cos(phi), y = -h tan(phi); beta 25, Delta 40, h 0.7: (-.259819, -.197588).
  const double grade = Slope::from_degrees(19.65736).ratio();
  const double cross = Slope::from_degrees(16.68541).ratio();
  const Tilt tilt = tilt_of(exactly(grade, cross));
  CHECK(near(0.7 * tilt.back_normal, 0.259819, 1e-6));
  CHECK(near(0.7 * tilt.right_normal, 0.197588, 1e-6));
  CHECK(near(0.7 * tilt.left_normal, -0.197588, 1e-6));
}

TEST_CASE("no attitude within a box exceeds the box's bounds, by vectors") {
  std::mt19937 dice{20260201};
  for (int trial = 0; trial < 400; ++trial) {
    const Range grade = any_range(dice);
    const Range cross = any_range(dice);
    const Tilt tilt = tilt_of(box_of(grade, cross));
    std::uniform_real_distribution<double> any_grade(grade.low, grade.high);
    std::uniform_real_distribution<double> any_cross(cross.low, cross.high);
    for (int sample = 0; sample < 200; ++sample) {
      const bool corner = sample < 4;
      const double g = corner ? (sample % 2 == 0 ? grade.low : grade.high) : any_grade(dice);
      const double k = corner ? (sample / 2 == 0 ? cross.low : cross.high) : any_cross(dice);
      const Parts parts = parts_by_vectors(g, k);
      constexpr double kRounding = 1e-14;
      REQUIRE(parts.along <= tilt.up + kRounding);
      REQUIRE(-parts.along <= tilt.down + kRounding);
      REQUIRE(parts.normal >= tilt.normal_least - kRounding);
      REQUIRE(parts.normal <= tilt.normal_most + kRounding);
      REQUIRE(std::abs(parts.lateral) <= tilt.lateral + kRounding);
      REQUIRE(std::abs(parts.lateral / parts.normal) <= tilt.across_normal + kRounding);
      REQUIRE(parts.lateral / parts.normal <= tilt.right_normal + kRounding);
      REQUIRE(-parts.lateral / parts.normal <= tilt.left_normal + kRounding);
      REQUIRE(parts.along / parts.normal <= tilt.back_normal + kRounding);
      REQUIRE(-parts.along / parts.normal <= tilt.forward_normal + kRounding);
    }
  }
}

TEST_CASE("the bounds of a single attitude are that attitude's own parts, by vectors") {
  std::mt19937 dice{7};
  std::uniform_real_distribution<double> slope(-0.9, 0.9);
  for (int trial = 0; trial < 1000; ++trial) {
    const double g = slope(dice);
    const double k = slope(dice);
    const Parts parts = parts_by_vectors(g, k);
    const Tilt tilt = tilt_of(exactly(g, k));
    REQUIRE(near(tilt.up, parts.along, 1e-14));
    REQUIRE(near(tilt.normal_least, parts.normal, 1e-14));
    REQUIRE(near(tilt.right_normal, parts.lateral / parts.normal, 1e-14));
    REQUIRE(near(tilt.back_normal, parts.along / parts.normal, 1e-14));
    REQUIRE(near(tilt.lateral, std::abs(parts.lateral), 1e-14));
  }
}

TEST_CASE("ground that is unknown, upside down or past a million has no tilt") {
  const auto is_void = [](const terrain::AttitudeBox& box) {
    const Tilt tilt = tilt_of(box);
    return std::isnan(tilt.up) && std::isnan(tilt.down) && std::isnan(tilt.normal_least) &&
           std::isnan(tilt.normal_most) && std::isnan(tilt.lateral) &&
           std::isnan(tilt.across_normal) && std::isnan(tilt.back_normal) &&
           std::isnan(tilt.forward_normal) && std::isnan(tilt.right_normal) &&
           std::isnan(tilt.left_normal) && std::isnan(tilt.steepest_grade) &&
           std::isnan(tilt.steepest_across);
  };
  for (const double bad : {kNoNumber, HUGE_VAL, -HUGE_VAL, 1e6, -1e200}) {
    CHECK(is_void(box_of({bad, 0.1}, {0.0, 0.1})));
    CHECK(is_void(box_of({0.0, bad}, {0.0, 0.1})));
    CHECK(is_void(box_of({0.0, 0.1}, {bad, 0.1})));
    CHECK(is_void(box_of({0.0, 0.1}, {0.0, bad})));
  }
  CHECK(is_void(box_of({0.2, 0.1}, {0.0, 0.1})));
  CHECK(is_void(box_of({0.0, 0.1}, {0.2, 0.1})));
  CHECK_FALSE(is_void(box_of({0.1, 0.1}, {0.2, 0.2})));
}

TEST_CASE("larger, smaller and above zero do not swallow what is no number") {
  CHECK(larger(1.0, 2.0) == 2.0);
  CHECK(smaller(1.0, 2.0) == 1.0);
  CHECK(above_zero(-1.0) == 0.0);
  CHECK(above_zero(3.0) == 3.0);
  CHECK(std::isnan(larger(kNoNumber, 2.0)));
  CHECK(std::isnan(larger(2.0, kNoNumber)));
  CHECK(std::isnan(smaller(kNoNumber, 2.0)));
  CHECK(std::isnan(smaller(2.0, kNoNumber)));
  CHECK(std::isnan(above_zero(kNoNumber)));
}

}  // namespace rimehaul::passage
