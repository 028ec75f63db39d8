// Where a rig may head on ground of a gradient: never more than the judge of planes lets on.
#include "passage/heading_table.h"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>

#include "any_rig.h"
#include "demo_scene.h"

namespace rimehaul::passage {

namespace {

using snow::Surface;
using snow::Wetness;
using terrain::Gradient;
using units::Bearing;
using units::Slope;

constexpr double kInfinite = std::numeric_limits<double>::infinity();

Gradient gradient_of(double east, double north) {
  return {Slope::from_ratio(east), Slope::from_ratio(north)};
}

/// A gradient on which a hillside climbs towards a bearing.
Headings on_hillside(const HeadingTable& table, double slope_deg, double uphill_deg) {
  const Slope slope = Slope::from_degrees(slope_deg);
  const Bearing uphill = Bearing::from_degrees(uphill_deg);
  return table.on({static_cast<float>(slope.ratio() * uphill.sine()),
                   static_cast<float>(slope.ratio() * uphill.cosine())});
}

bool is_open(const Headings& headings, int sector) {
  return (headings.open >> sector & 1) != 0;
}

int turned(int mask, int sectors) {
  return (mask << sectors | mask >> (16 - sectors)) & 0xFFFF;
}

}  // namespace

TEST_CASE("in an open direction every heading passes on all ground within the tolerance") {
  const Rules rules = testing::plain_rules();
  testing::Dice dice{20261127};
  for (const rig::Rig& rig : {testing::solo_rig(), testing::towing_rig()}) {
    const SlopeQuestion question{rig, rules, {Wetness::moist, Surface::groomed}};
    const PlaneJudge judge{question};
    const double tolerance = 0.03;
    const HeadingTable table{ShareTable{question}, Slope::from_ratio(tolerance)};
    int open = 0;
    int shut = 0;
    for (int i = 0; i < 300; ++i) {
      const double east = dice.between(-0.2, 0.2);
      const double north = dice.between(-0.2, 0.2);
      const Headings found = table.on({static_cast<float>(east), static_cast<float>(north)});
      double best = kInfinite;
      for (int sector = 0; sector < Headings::kSectors; ++sector) {
        double worst = 0.0;
        for (int j = 0; j < 6; ++j) {
          const Bearing heading =
              Bearing::from_degrees(22.5 * sector + dice.between(-11.25, 11.25));
          const double off = tolerance * std::sqrt(dice.between(0, 1));
          const Bearing off_towards = Bearing::from_degrees(dice.between(0, 360));
          const Gradient gradient =
              gradient_of(east + off * off_towards.sine(), north + off * off_towards.cosine());
          const Finding binding = judge.binding_on(terrain::attitude_of(gradient, heading));
          worst = std::max(worst, binding.share.value_or(kInfinite));
          CHECK((!is_open(found, sector) || stand_of(binding, 0.7) == Stand::passes));
        }
        open += is_open(found, sector) ? 1 : 0;
        shut += is_open(found, sector) ? 0 : 1;
        best = std::min(best, worst);
      }
      // Over the allowed share the number only says that no direction passes.
      CHECK((found.share_percent > 70 || best <= found.share_percent / 100.0));
      CHECK((found.share_percent <= 70) == (found.open != 0));
    }
    CHECK(open > 60);
    CHECK(shut > 60);
  }
}

TEST_CASE("what is open turns with the hillside, quarter by quarter to the bit") {
  const rig::Rig rig = testing::solo_rig();
  const Rules rules = testing::plain_rules();
  const HeadingTable table{ShareTable{{rig, rules, {Wetness::dry, Surface::groomed}}},
                           Slope::from_ratio(0.01)};
  for (const double slope_deg : {3.0, 11.0, 14.0, 18.0, 23.0}) {
    for (const double uphill_deg : {7.0, 31.0, 44.0, 80.0}) {
      CAPTURE(slope_deg);
      CAPTURE(uphill_deg);
      const Headings first = on_hillside(table, slope_deg, uphill_deg);
      for (int quarter = 1; quarter < 4; ++quarter) {
        const Headings next = on_hillside(table, slope_deg, uphill_deg + 90.0 * quarter);
        CHECK(static_cast<int>(next.open) == turned(first.open, 4 * quarter));
        CHECK(next.share_percent == first.share_percent);
      }
    }
  }
}

// Ratings of 20 degrees along and 4 across: on a slope of 6 degrees only headings near the line of
// fall are open. With 6 degrees uphill due east these are sectors 4 (east) and 12 (west): in
// sector 4 the cross-slope reaches atan(tan 6 sin 11.25) = 1.17 degrees, under 0.7 of the rating
// by tangents (2.80); in sector 5 up to 3.34.
TEST_CASE("a rig that bears little cross-slope is open up and down the line of fall alone") {
  rig::Rig rig = testing::solo_rig();
  rig.carrier.solo_empty = testing::ratings_of(20, 20, 4);
  rig.carrier.solo_loaded = testing::ratings_of(20, 20, 4);
  const Rules rules = testing::plain_rules();
  const HeadingTable table{ShareTable{{rig, rules, {Wetness::dry, Surface::groomed}}}, Slope{}};
  CHECK(static_cast<int>(on_hillside(table, 6, 90).open) == (1 << 4 | 1 << 12));
  CHECK(static_cast<int>(on_hillside(table, 6, 0).open) == (1 << 0 | 1 << 8));
  CHECK(static_cast<int>(on_hillside(table, 6, 45).open) == (1 << 2 | 1 << 10));
  CHECK(static_cast<int>(on_hillside(table, 1, 45).open) == 0xFFFF);
  CHECK(static_cast<int>(on_hillside(table, 30, 45).open) == 0);
}

// A rating of 4 degrees across: of cells that end at whole percents those up to 0.04 pass, 0.7 of
// tan 4. On ground of ratio 0.0835 climbing towards 40 degrees the cross-slope is 0.0402 where one
// heads for 11.25, the end of sector 1, and under 0.040 from 13.5 degrees on.
TEST_CASE("a sector is closed by its own end, and the next one open") {
  rig::Rig rig = testing::solo_rig();
  rig.carrier.solo_empty = testing::ratings_of(20, 20, 4);
  rig.carrier.solo_loaded = testing::ratings_of(20, 20, 4);
  const Rules rules = testing::plain_rules();
  const HeadingTable table{ShareTable{{rig, rules, {Wetness::dry, Surface::groomed}}}, Slope{}};
  const double slope_deg = Slope::from_ratio(0.0835).degrees();
  for (const int quarter : {0, 1, 2, 3}) {
    CAPTURE(quarter);
    const Headings right = on_hillside(table, slope_deg, 40.0 + 90.0 * quarter);
    CHECK_FALSE(is_open(right, 4 * quarter + 1));
    CHECK(is_open(right, 4 * quarter + 2));
    // From the other side: sector 1 ends at 33.75, sector 3 begins at 56.25.
    const Headings left = on_hillside(table, slope_deg, 5.0 + 90.0 * quarter);
    CHECK_FALSE(is_open(left, 4 * quarter + 1));
    CHECK(is_open(left, 4 * quarter));
    const Headings far = on_hillside(table, slope_deg, 85.0 + 90.0 * quarter);
    CHECK_FALSE(is_open(far, 4 * quarter + 3));
  }
}

TEST_CASE("what is not known is closed, and so is what is steeper than the table") {
  const rig::Rig rig = testing::solo_rig();
  const Rules rules = testing::plain_rules();
  const ShareTable shares{{rig, rules, {Wetness::dry, Surface::groomed}}};
  const HeadingTable table{shares, Slope::from_ratio(0.01)};
  constexpr float kVoid = std::numeric_limits<float>::quiet_NaN();
  const auto check = [](const Headings& headings, int percent) {
    CHECK(static_cast<int>(headings.share_percent) == percent);
    CHECK(headings.open == 0);
  };
  check(table.on({kVoid, 0.0F}), 255);
  check(table.on({0.0F, kVoid}), 255);
  check(table.on({kVoid, 9.0F}), 255);
  check(table.on({9.0F, kVoid}), 255);
  check(table.on({1.0F, 0.0F}), 254);
  check(table.on({0.0F, 1.0F}), 254);
  check(table.on({-1.001F, 0.0F}), 254);
  check(table.on({0.0F, -1.001F}), 254);
  check(table.on({0.9F, 0.9F}), 254);
  check(table.on({-2.0F, 0.0F}), 254);
  check(table.on({0.0F, -2.0F}), 254);
  CHECK(static_cast<int>(table.on({0.0F, 0.0F}).open) == 0xFFFF);
  for (const double tolerance : {static_cast<double>(kVoid), -0.01, kInfinite}) {
    const HeadingTable unknown{shares, Slope::from_ratio(tolerance)};
    check(unknown.on({0.0F, 0.0F}), 255);
    check(unknown.on({5.0F, 0.0F}), 255);
  }
}

TEST_CASE("a rig that is closed in this snow is so on level ground too") {
  rig::Rig rig = testing::solo_rig();
  rig.driver_level = "nobody";
  const Rules rules = testing::plain_rules();
  const HeadingTable table{ShareTable{{rig, rules, {Wetness::dry, Surface::groomed}}}, Slope{}};
  CHECK(table.on({0.0F, 0.0F}).open == 0);
  CHECK(static_cast<int>(table.on({0.0F, 0.0F}).share_percent) == 254);
}

}  // namespace rimehaul::passage
