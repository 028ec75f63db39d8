// Grade and cross-slope of a rig on ground of known slope, and boxes of them.
#include "terrain/attitude.h"

#include <doctest/doctest.h>

#include <cmath>
#include <initializer_list>
#include <numbers>

#include "near.h"

namespace rimehaul {

namespace {

using terrain::Attitude;
using terrain::AttitudeBox;
using terrain::Gradient;
using testing::near;
using testing::near_degrees;
using units::Bearing;
using units::Slope;

/// Ground that climbs due north at so many degrees.
Gradient climbing_north(double degrees) {
  return {Slope{}, Slope::from_degrees(degrees)};
}

AttitudeBox box(double grade_low, double grade_high, double cross_low, double cross_high) {
  return {Slope::from_ratio(grade_low), Slope::from_ratio(grade_high), Slope::from_ratio(cross_low),
          Slope::from_ratio(cross_high)};
}

Attitude attitude(double grade, double cross) {
  return {Slope::from_ratio(grade), Slope::from_ratio(cross)};
}

}  // namespace

// tan beta cos delta and tan beta sin delta, rigid-body geometry.
TEST_CASE("a slope of 25 degrees taken 40 degrees off its fall line") {
  const Attitude found = attitude_of(climbing_north(25), Bearing::from_degrees(40));
  CHECK(near(found.grade.percent(), 35.721, 5e-4));
  CHECK(near_degrees(found.grade, 19.65736, 5e-6));
  CHECK(near_degrees(found.cross, 16.68541, 5e-6));
}

TEST_CASE("a slope of 30 degrees taken at 45 degrees, and one of 20 straight across") {
  const Attitude half = attitude_of(climbing_north(30), Bearing::from_degrees(45));
  CHECK(near_degrees(half.grade, 22.20765, 5e-6));
  CHECK(near_degrees(half.cross, 22.20765, 5e-6));
  const Attitude across = attitude_of(climbing_north(20), Bearing::from_degrees(90));
  CHECK(near_degrees(across.grade, 0.0, 1e-9));
  CHECK(near_degrees(across.cross, 20.0, 1e-9));
}

TEST_CASE("ground that falls away to the right is a positive cross-slope, to the left negative") {
  // Uphill is north: heading east the ground falls to the south, which is right.
  CHECK(attitude_of(climbing_north(10), Bearing::from_degrees(90)).cross > Slope{});
  CHECK(attitude_of(climbing_north(10), Bearing::from_degrees(270)).cross < Slope{});
  CHECK(attitude_of(climbing_north(10), Bearing::from_degrees(0)).grade > Slope{});
  CHECK(attitude_of(climbing_north(10), Bearing::from_degrees(180)).grade < Slope{});
}

TEST_CASE("grade and cross-slope together make the slope, whatever the heading") {
  const Gradient ground{Slope::from_ratio(0.31), Slope::from_ratio(-0.17)};
  for (int degrees = 0; degrees < 360; degrees += 7) {
    const Attitude there = attitude_of(ground, Bearing::from_degrees(degrees));
    const double sum = std::hypot(there.grade.ratio(), there.cross.ratio());
    CHECK(near(sum, std::hypot(0.31, 0.17), 1e-12));
    const Attitude back = attitude_of(ground, Bearing::from_degrees(degrees).opposite());
    CHECK(near(back.grade.ratio(), -there.grade.ratio(), 1e-12));
    CHECK(near(back.cross.ratio(), -there.cross.ratio(), 1e-12));
  }
}

TEST_CASE("a box holds its own limits and nothing a hair beyond") {
  const AttitudeBox limits = box(-0.1, 0.2, -0.3, 0.4);
  CHECK(limits.holds(attitude(-0.1, -0.3)));
  CHECK(limits.holds(attitude(0.2, 0.4)));
  CHECK_FALSE(limits.holds(attitude(0.2 + 1e-12, 0.0)));
  CHECK_FALSE(limits.holds(attitude(-0.1 - 1e-12, 0.0)));
  CHECK_FALSE(limits.holds(attitude(0.0, 0.4 + 1e-12)));
  CHECK_FALSE(limits.holds(attitude(0.0, -0.3 - 1e-12)));
  CHECK_FALSE(limits.holds(attitude(NAN, 0.0)));
  CHECK_FALSE(box(NAN, 0.2, -0.3, 0.4).holds(attitude(0.0, 0.0)));
}

TEST_CASE("a tolerance grows a box on all four sides, and an impossible one makes it unknown") {
  const AttitudeBox wide = box(-0.1, 0.2, -0.3, 0.4).widened(Slope::from_ratio(0.05));
  CHECK(near(wide.grade_low.ratio(), -0.15, 1e-12));
  CHECK(near(wide.grade_high.ratio(), 0.25, 1e-12));
  CHECK(near(wide.cross_low.ratio(), -0.35, 1e-12));
  CHECK(near(wide.cross_high.ratio(), 0.45, 1e-12));
  for (const double impossible : {-0.01, static_cast<double>(NAN)}) {
    const AttitudeBox unknown = box(-1, 1, -1, 1).widened(Slope::from_ratio(impossible));
    CHECK_FALSE(unknown.holds(attitude(0, 0)));
    CHECK(std::isnan(unknown.steepest_grade().ratio()));
    CHECK(std::isnan(unknown.steepest_cross().ratio()));
  }
}

TEST_CASE("two boxes join into the smallest that holds both, and one unknown makes all unknown") {
  const AttitudeBox both = box(-0.1, 0.2, -0.3, 0.4).with(box(-0.2, 0.1, 0.0, 0.5));
  CHECK(both.grade_low == Slope::from_ratio(-0.2));
  CHECK(both.grade_high == Slope::from_ratio(0.2));
  CHECK(both.cross_low == Slope::from_ratio(-0.3));
  CHECK(both.cross_high == Slope::from_ratio(0.5));
  const AttitudeBox unknown = box(NAN, NAN, NAN, NAN);
  CHECK_FALSE(box(-1, 1, -1, 1).with(unknown).holds(attitude(0, 0)));
  CHECK_FALSE(unknown.with(box(-1, 1, -1, 1)).holds(attitude(0, 0)));
}

TEST_CASE("the steepest and the gentlest grade of a box, across zero and on either side of it") {
  CHECK(box(-0.3, 0.2, -0.1, 0.4).steepest_grade() == Slope::from_ratio(0.3));
  CHECK(box(-0.3, 0.2, -0.1, 0.4).steepest_cross() == Slope::from_ratio(0.4));
  CHECK(box(-0.3, 0.2, 0, 0).gentlest_grade() == Slope{});
  CHECK(box(0.0, 0.2, 0, 0).gentlest_grade() == Slope{});
  CHECK(box(0.1, 0.2, 0, 0).gentlest_grade() == Slope::from_ratio(0.1));
  CHECK(box(-0.3, -0.2, 0, 0).gentlest_grade() == Slope::from_ratio(0.2));
  CHECK(std::isnan(box(NAN, 0.2, 0, 0).gentlest_grade().ratio()));
  CHECK(std::isnan(box(0.1, NAN, 0, 0).steepest_grade().ratio()));
}

}  // namespace rimehaul
