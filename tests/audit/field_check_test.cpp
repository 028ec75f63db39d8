// Angles measured by hand against the heights: closed forms on a tilted plane, sums by hand, NaN.
#include "audit/field_check.h"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <numbers>
#include <vector>

#include "near.h"
#include "passage/demo_scene.h"
#include "passage/footfall.h"

using namespace rimehaul;
using namespace rimehaul::testing;
using audit::FieldComparison;
using audit::Within;
using terrain::Attitude;
using terrain::AttitudeBox;
using units::Bearing;
using units::Slope;

namespace {

constexpr double kNaN = std::numeric_limits<double>::quiet_NaN();

Attitude degrees(double grade_deg, double cross_deg) {
  return {Slope::from_degrees(grade_deg), Slope::from_degrees(cross_deg)};
}

/// Found as given, judged a degree steeper or gentler.
audit::GroundByHeights ground(double grade_deg, double cross_deg) {
  return {.found = degrees(grade_deg, cross_deg),
          .judged = AttitudeBox{.grade_low = Slope::from_degrees(grade_deg - 1),
                                .grade_high = Slope::from_degrees(grade_deg + 1),
                                .cross_low = Slope::from_degrees(cross_deg - 1),
                                .cross_high = Slope::from_degrees(cross_deg + 1)}};
}

double sine_of(double angle_deg) {
  return std::sin(angle_deg * std::numbers::pi / 180.0);
}
double cosine_of(double angle_deg) {
  return std::cos(angle_deg * std::numbers::pi / 180.0);
}

/// sigma of the bilinear gradient on square cells, by hand: see terrain/error.h.
double sigma_on(double cell_m, double deviation_m, double alike_m) {
  const double side = std::exp(-cell_m / alike_m);
  const double corner = std::exp(-cell_m * std::numbers::sqrt2 / alike_m);
  const double variance =
      deviation_m * deviation_m / (cell_m * cell_m) * (2 * (1 - side) + 1 - 2 * side + corner);
  return std::sqrt(variance);
}

}  // namespace

TEST_CASE("on a tilted plane grade and cross-slope are tan(beta) cos and sin of the angle to it") {
  // Falls at 12 degrees towards 210, so it climbs straight towards 30. For a heading a degrees to
  // the right of that: grade = tan beta cos a, and the ground falls away to the right by tan beta
  // sin a.
  const double beta = std::tan(12.0 * std::numbers::pi / 180.0);
  const passage::Scene scene = scene_of({.ground = hillside(12, 210)}, straight_trail(0));
  const double wide = 1.645 * sigma_on(5.0, 0.05, 20.0) + 0.005;
  for (const double heading_deg : {0.0, 30.0, 75.0, 120.0, 210.0, 300.0, 359.0}) {
    CAPTURE(heading_deg);
    const auto found = audit::ground_by_heights(
        scene, solo_rig(), {place(13, 27), Bearing::from_degrees(heading_deg)});
    REQUIRE(found.has_value());
    const double grade = beta * cosine_of(heading_deg - 30.0);
    const double cross = beta * sine_of(heading_deg - 30.0);
    CHECK(near(found->found.grade.ratio(), grade, 1e-9));
    CHECK(near(found->found.cross.ratio(), cross, 1e-9));
    REQUIRE(found->judged.has_value());
    CHECK(near(found->judged->grade_low.ratio(), grade - wide, 1e-6));
    CHECK(near(found->judged->grade_high.ratio(), grade + wide, 1e-6));
    CHECK(near(found->judged->cross_low.ratio(), cross - wide, 1e-6));
    CHECK(near(found->judged->cross_high.ratio(), cross + wide, 1e-6));
  }
}

TEST_CASE("what is judged of a trail's piece holds what is judged of a stand on it") {
  const passage::Scene scene =
      scene_of({.ground = rough(7, 0.3, 0.1), .cell_m = 2.0, .extent = {-60, -60, 60, 380}},
               straight_trail(0));
  const rig::Rig rig = solo_rig();
  const trails::Leg& leg = scene.network.legs.front();
  const auto tolerance = passage::slope_tolerance(scene, rig.carrier.gauge);
  REQUIRE(tolerance.has_value());
  for (const passage::Footfall& footfall :
       passage::footfalls(scene, leg.line, rig, units::Metres{1})) {
    const auto found = audit::ground_by_heights(scene, rig, {footfall.middle, footfall.heading});
    REQUIRE((found.has_value() && found->judged.has_value() && footfall.carrier.has_value()));
    const AttitudeBox whole = footfall.carrier->widened(*tolerance);
    const AttitudeBox& here = *found->judged;
    CHECK(here.holds(found->found));
    CHECK(whole.grade_low <= here.grade_low);
    CHECK(here.grade_high <= whole.grade_high);
    CHECK(whole.cross_low <= here.cross_low);
    CHECK(here.cross_high <= whole.cross_high);
  }
}

TEST_CASE("where heights are missing, or nobody declared their error, nothing is within") {
  const auto hole = with_void(plane(0, 0.1), [](double east_m, double) { return east_m > 50.0; });
  passage::Scene scene = scene_of({.ground = hole}, straight_trail(0));
  const Attitude measured = degrees(5.7, 0);
  const audit::CheckedStand there{place(100, 100), Bearing{}};
  CHECK_FALSE(audit::ground_by_heights(scene, solo_rig(), there).has_value());
  const FieldComparison blind = audit::compared(measured, std::nullopt);
  CHECK(blind.within() == Within::unknown);
  CHECK_FALSE(blind.grade.off_deg.has_value());

  scene.trust.errors.clear();
  const auto found = audit::ground_by_heights(scene, solo_rig(), {place(0, 100), Bearing{}});
  REQUIRE(found.has_value());
  CHECK_FALSE(found->judged.has_value());
  const FieldComparison bare = audit::compared(measured, found);
  CHECK(bare.within() == Within::unknown);
  // The angle of 10 % is 5.7106 degrees.
  REQUIRE(bare.grade.off_deg.has_value());
  CHECK(near(*bare.grade.off_deg, 5.7 - 5.710593, 1e-6));
}

TEST_CASE("an angle at the end of what is judged by is within, a hair beyond is outside") {
  CHECK(audit::compared(degrees(8, 3), ground(7, 3)).within() == Within::yes);
  CHECK(audit::compared(degrees(6, 2), ground(7, 3)).within() == Within::yes);
  CHECK(audit::compared(degrees(8 + 1e-9, 3), ground(7, 3)).within() == Within::no);
  CHECK(audit::compared(degrees(6 - 1e-9, 3), ground(7, 3)).within() == Within::no);
  const FieldComparison across = audit::compared(degrees(7, 4.5), ground(7, 3));
  CHECK(across.grade.within == Within::yes);
  CHECK(across.cross.within == Within::no);
  CHECK(across.within() == Within::no);
  CHECK(near(across.cross.off_deg.value_or(0), 1.5, 1e-12));
  CHECK(audit::compared(degrees(7, 1.9), ground(7, 3)).cross.within == Within::no);
}

TEST_CASE("what is no number is never within, whichever side it stands on") {
  const Slope nothing = Slope::from_ratio(kNaN);
  const FieldComparison measured = audit::compared({nothing, Slope{}}, ground(7, 0));
  CHECK(measured.grade.within == Within::unknown);
  CHECK_FALSE(measured.grade.off_deg.has_value());
  CHECK(measured.cross.within == Within::yes);
  CHECK(measured.within() == Within::unknown);
  CHECK(audit::compared({Slope{}, nothing}, ground(0, 7)).within() == Within::unknown);
  for (Slope AttitudeBox::*side : {&AttitudeBox::grade_low, &AttitudeBox::grade_high,
                                   &AttitudeBox::cross_low, &AttitudeBox::cross_high}) {
    audit::GroundByHeights spoilt = ground(7, 3);
    (*spoilt.judged).*side = nothing;
    CHECK(audit::compared(degrees(7, 3), spoilt).within() == Within::unknown);
  }
  audit::GroundByHeights lost = ground(7, 3);
  lost.found.grade = nothing;
  CHECK_FALSE(audit::compared(degrees(7, 3), lost).grade.off_deg.has_value());
}

TEST_CASE("mean and root mean square are those of the differences that are known") {
  // Off by +1, -2 and +4 degrees: mean 1, root mean square sqrt(21 / 3) = 2.645751.
  // Across by 0, 0.5 and -0.5: mean 0, root mean square sqrt(0.5 / 3) = 0.408248.
  const std::vector<FieldComparison> checks{audit::compared(degrees(8, 3), ground(7, 3)),
                                            audit::compared(degrees(5, 3.5), ground(7, 3)),
                                            audit::compared(degrees(11, 2.5), ground(7, 3)),
                                            audit::compared(degrees(11, 2.5), std::nullopt)};
  const audit::FieldSummary summary = audit::summary_of(checks);
  CHECK(summary.checks == 4);
  CHECK(summary.within == 1);
  CHECK(summary.outside == 2);
  REQUIRE(summary.grade.has_value());
  CHECK(summary.grade->count == 3);
  CHECK(near(summary.grade->mean_deg, 1.0, 1e-9));
  CHECK(near(summary.grade->root_mean_square_deg, 2.645751, 1e-6));
  REQUIRE(summary.cross.has_value());
  CHECK(near(summary.cross->mean_deg, 0.0, 1e-9));
  CHECK(near(summary.cross->root_mean_square_deg, 0.408248, 1e-6));

  const audit::FieldSummary none = audit::summary_of({});
  CHECK(none.checks == 0);
  CHECK_FALSE(none.grade.has_value());
  CHECK_FALSE(audit::summary_of(std::span{checks}.last(1)).cross.has_value());
}

TEST_CASE("the ground under the smallest tread counts, and none where there is no rig") {
  std::vector<rig::Rig> rigs{solo_rig(), solo_rig(), solo_rig()};
  rigs[1].carrier.gauge = units::Metres{1.0};
  rigs[2].carrier.gauge = units::Metres{1.0};
  CHECK(audit::smallest_tread(rigs) == &rigs[1]);
  CHECK(audit::smallest_tread({}) == nullptr);
}
