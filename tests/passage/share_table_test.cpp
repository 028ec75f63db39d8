// The table of shares never says less than the judge of planes, and closes what that closes.
#include "passage/share_table.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "any_rig.h"
#include "demo_scene.h"
#include "near.h"

namespace rimehaul::passage {

namespace {

using snow::Surface;
using snow::Wetness;
using terrain::AttitudeBox;
using testing::near;
using units::Slope;

constexpr double kInfinite = std::numeric_limits<double>::infinity();
constexpr double kVoid = std::numeric_limits<double>::quiet_NaN();

AttitudeBox box(double grade_low, double grade_high, double cross_low, double cross_high) {
  return {Slope::from_ratio(grade_low), Slope::from_ratio(grade_high), Slope::from_ratio(cross_low),
          Slope::from_ratio(cross_high)};
}

rig::Rig with_level(rig::Rig rig, const char* level) {
  rig.driver_level = level;
  return rig;
}

}  // namespace

TEST_CASE("on no plane of a box that passes is a share larger than the table tells for the box") {
  const Rules rules = testing::plain_rules();
  testing::Dice dice{20261126};
  for (const rig::Rig& rig : {testing::solo_rig(), testing::towing_rig()}) {
    const SlopeQuestion question{rig, rules, {Wetness::moist, Surface::groomed}};
    const ShareTable table{question};
    const PlaneJudge judge{question};
    REQUIRE(!judge.closed().has_value());
    int passing = 0;
    for (int i = 0; i < 400; ++i) {
      const AttitudeBox within = dice.box(i < 200 ? 0.15 : 0.9);
      const double told = table.share_over(within);
      passing += table.passes(within) ? 1 : 0;
      CHECK(table.passes(within) == (told <= 0.7));
      for (int j = 0; j < 10; ++j) {
        const terrain::Attitude plane{
            Slope::from_ratio(dice.between(within.grade_low.ratio(), within.grade_high.ratio())),
            Slope::from_ratio(dice.between(within.cross_low.ratio(), within.cross_high.ratio()))};
        const Finding binding = judge.binding_on(plane);
        CHECK((told > table.allowed_share() || binding.share.value_or(kInfinite) <= told));
      }
    }
    CHECK(passing > 10);
  }
}

TEST_CASE("a box that falls away to one side alone is judged falling to the other side too") {
  for (const double driver_left_m : {0.4, -0.4}) {
    rig::Rig rig = testing::solo_rig();  // its driver sits to one side
    rig.carrier.driver_at.left = units::Metres{driver_left_m};
    // Rated so high, and so top-heavy, that it is its balance that binds.
    rig.carrier.solo_empty = testing::ratings_of(44, 44, 44);
    rig.carrier.solo_loaded = testing::ratings_of(44, 44, 44);
    rig.carrier.empty.at.up = units::Metres{1.5};
    const Rules rules = testing::plain_rules();
    const PlaneJudge judge{{rig, rules, {Wetness::dry, Surface::groomed}}};
    const double right = judge.binding_over(box(0, 0, 0, 0.3)).share.value();
    const double left = judge.binding_over(box(0, 0, -0.3, 0)).share.value();
    CHECK(judge.binding_over(box(0, 0, 0, 0.3)).check == Check::carrier_roll_over);
    CHECK(right == left);
    CHECK(right > judge.binding_over(box(0, 0, 0, 0)).share.value());
  }
}

// A rating of 10 degrees, tangent 0.176327, with nothing else near its limit: cells end at whole
// percents, and a cross-slope counts by its size.
TEST_CASE("where a rating binds, the table tells the steepest edge of its cells over the rating") {
  rig::Rig rig = testing::solo_rig();
  rig.carrier.solo_empty = testing::ratings_of(10, 10, 10);
  rig.carrier.solo_loaded = testing::ratings_of(10, 10, 10);
  const Rules rules = testing::plain_rules();
  const ShareTable table{{rig, rules, {Wetness::dry, Surface::groomed}}};
  const double rated = std::tan(10 * std::acos(-1.0) / 180);
  const auto tells = [&](const AttitudeBox& asked, double steepest) {
    return near(table.share_over(asked), steepest / rated, 1e-6);
  };
  CHECK(tells(box(0.125, 0.125, 0.001, 0.001), 0.13));
  CHECK(tells(box(-0.125, -0.125, 0.001, 0.001), 0.13));
  CHECK(tells(box(0.05, 0.125, -0.001, 0.001), 0.13));
  CHECK(tells(box(-0.001, 0.001, 0.125, 0.125), 0.13));
  CHECK(tells(box(-0.001, 0.001, -0.125, -0.125), 0.13));
  CHECK(tells(box(-0.001, 0.001, -0.145, 0.125), 0.15));
  CHECK(tells(box(-0.001, 0.001, -0.125, 0.145), 0.15));
  CHECK(tells(box(-0.001, 0.175, -0.125, -0.115), 0.18));
}

TEST_CASE("beyond 45 degrees and where the ground is not known the table is closed") {
  const rig::Rig rig = testing::solo_rig();
  const Rules rules = testing::plain_rules();
  const ShareTable table{{rig, rules, {Wetness::dry, Surface::groomed}}};
  REQUIRE(table.passes(box(0, 0, 0, 0)));
  for (const AttitudeBox& closed :
       {box(0, 1, 0, 0), box(-1, 0, 0, 0), box(0, 0, 0, 1), box(0, 0, -1, 0), box(kVoid, 0, 0, 0),
        box(0, kVoid, 0, 0), box(0, 0, kVoid, 0), box(0, 0, 0, kVoid), box(0.1, 0, 0, 0),
        box(0, 0, 0.1, 0), box(-kInfinite, kInfinite, 0, 0), box(-1.5, 0, 0, 0), box(0, 0, -1.5, 0),
        box(0, 1.5, 0, 0), box(0, 0, 0, 1.5)}) {
    CHECK(table.share_over(closed) == kInfinite);
    CHECK_FALSE(table.passes(closed));
  }
}

TEST_CASE("a rig that is closed on any ground is closed in all of the table") {
  const Rules rules = testing::plain_rules();
  const snow::SnowState dry{Wetness::dry, Surface::groomed};
  const rig::Rig towed_by_a_new_driver = with_level(testing::towing_rig(), "new");
  CHECK(ShareTable{{towed_by_a_new_driver, rules, dry}}.share_over(box(0, 0, 0, 0)) == kInfinite);
  const rig::Rig unknown_level = with_level(testing::solo_rig(), "nobody's");
  CHECK(ShareTable{{unknown_level, rules, dry}}.share_over(box(0, 0, 0, 0)) == kInfinite);
  const rig::Rig new_driver = with_level(testing::solo_rig(), "new");
  CHECK(ShareTable{{new_driver, rules, dry}}.allowed_share() == 0.5);
}

TEST_CASE("a cell in which something is not known is closed, however small the other shares") {
  rig::Rig rig = testing::solo_rig();
  rig.carrier.solo_empty.climb.reset();
  rig.carrier.solo_loaded.climb.reset();
  const Rules rules = testing::plain_rules();
  const ShareTable table{{rig, rules, {Wetness::dry, Surface::groomed}}};
  CHECK(table.share_over(box(0, 0, 0, 0)) == kInfinite);
}

TEST_CASE("what one sinks in new snow takes from the table's open ground") {
  rig::Rig rig = testing::solo_rig();
  rig.carrier.solo_empty = testing::ratings_of(60, 60, 60);
  rig.carrier.solo_loaded = testing::ratings_of(60, 60, 60);
  const Rules rules = testing::plain_rules();
  const snow::SnowState fresh{Wetness::dry, Surface::fresh};
  const AttitudeBox sidehill = box(-0.01, 0.01, 0.3, 0.31);
  const double firm = ShareTable{{rig, rules, fresh}}.share_over(sidehill);
  const double deep = ShareTable{{rig, rules, fresh, units::Metres{0.4}}}.share_over(sidehill);
  CHECK(firm < deep);
  CHECK(ShareTable{{rig, rules, fresh, units::Metres{kVoid}}}.share_over(sidehill) == kInfinite);
}

}  // namespace rimehaul::passage
