// The bulletin policy at, under and over its distances, and where something is not known.
#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <string>

#include "passage/avalanche.h"

namespace rimehaul::passage {

namespace {

using snow::Wetness;
using units::Metres;
using units::Slope;

constexpr double kVoid = std::numeric_limits<double>::quiet_NaN();

/// Level 2 lets a decision permit under 50 m; level 4 does not; level 5 closes all; level 1 is
/// free.
Rules policy() {
  Rules rules;
  rules.start_slope_dry = Slope::from_degrees(30);
  rules.start_slope_wet = Slope::from_degrees(25);
  rules.bulletin[0] = {.keep_off = Metres{0}};
  rules.bulletin[1] = {.keep_off = Metres{50}, .decision_may_permit = true};
  rules.bulletin[2] = {.keep_off = Metres{100}, .decision_may_permit = true};
  rules.bulletin[3] = {.keep_off = Metres{200}};
  rules.bulletin[4] = {.keep_off = Metres{200}, .all_closed = true};
  return rules;
}

hazard::Exposure exposure(double own_deg, double distance_m) {
  return {.own_slope = Slope::from_degrees(own_deg), .to_steep_ground = Metres{distance_m}};
}

Stand stand_at(const hazard::Exposure& piece, std::optional<int> level,
               Wetness wetness = Wetness::dry) {
  return stand_of(judge_avalanche(piece, level, wetness, policy()), 0.7);
}

}  // namespace

TEST_CASE("as far off as the policy says passes, a hair nearer asks or is refused") {
  CHECK(stand_at(exposure(10, 50), 2) == Stand::passes);
  CHECK(stand_at(exposure(10, 49.999), 2) == Stand::asks);
  CHECK(stand_at(exposure(10, 200), 4) == Stand::passes);
  CHECK(stand_at(exposure(10, 199.999), 4) == Stand::refused);
}

TEST_CASE("a place steep enough to release is no distance off") {
  CHECK(stand_at(exposure(29.999, 500), 4) == Stand::passes);
  CHECK(stand_at(exposure(30, 500), 4) == Stand::refused);
  CHECK(stand_at(exposure(30, 500), 2) == Stand::asks);
}

TEST_CASE("from moist on, snow is taken to release from the lower slope of wet snow") {
  CHECK(stand_at(exposure(27, 500), 4, Wetness::dry) == Stand::passes);
  CHECK(stand_at(exposure(27, 500), 4, Wetness::moist) == Stand::refused);
  CHECK(start_slope_for(Wetness::dry, policy()) == policy().start_slope_dry);
  for (const Wetness wet : {Wetness::moist, Wetness::wet, Wetness::very_wet, Wetness::slush}) {
    CHECK(start_slope_for(wet, policy()) == policy().start_slope_wet);
  }
}

TEST_CASE("release areas and runouts drawn by an expert count whatever the slope") {
  hazard::Exposure piece = exposure(5, 900);
  piece.in_release_area = true;
  CHECK(stand_at(piece, 4) == Stand::refused);
  piece.in_release_area = false;
  piece.in_runout = true;
  CHECK(stand_at(piece, 4) == Stand::refused);
  const Finding asks = judge_avalanche(piece, 2, Wetness::dry, policy());
  CHECK(asks.asks == "to drive in a runout");
}

TEST_CASE("a level at which nothing is driven closes flat ground too") {
  CHECK(stand_at(exposure(0, 1000), 5) == Stand::refused);
}

TEST_CASE("a level that asks for no distance still does not allow the ground itself") {
  CHECK(stand_at(exposure(10, 0.5), 1) == Stand::passes);
  CHECK(stand_at(exposure(10, 0), 1) == Stand::refused);
  CHECK(stand_at(exposure(35, 0.5), 1) == Stand::refused);
}

TEST_CASE("without the bulletin, the slope or the distance it is closed at every level") {
  CHECK(stand_at(exposure(0, 1000), std::nullopt) == Stand::missing);
  for (const int level : {0, 6, -1}) {
    CHECK(stand_at(exposure(0, 1000), level) == Stand::missing);
  }
  for (const int level : {1, 2, 3, 4}) {
    hazard::Exposure piece = exposure(0, 1000);
    piece.own_slope.reset();
    CHECK(stand_at(piece, level) == Stand::missing);
    piece = exposure(0, 1000);
    piece.to_steep_ground.reset();
    CHECK(stand_at(piece, level) == Stand::missing);
    CHECK(stand_at(exposure(0, kVoid), level) == Stand::missing);
    piece = exposure(0, 1000);
    piece.own_slope = Slope::from_ratio(kVoid);
    CHECK(stand_at(piece, level) == Stand::missing);
  }
}

TEST_CASE("nothing steep within a search that was too short is not far enough") {
  hazard::Exposure piece = exposure(0, 150);
  piece.nothing_steep_within_reach = true;
  CHECK(stand_at(piece, 3) == Stand::passes);
  CHECK(stand_at(piece, 4) == Stand::missing);
}

TEST_CASE("a policy without a number is closed") {
  Rules rules = policy();
  for (const double bad : {kVoid, -1.0}) {
    rules.bulletin[1].keep_off = Metres{bad};
    CHECK(stand_of(judge_avalanche(exposure(0, 1000), 2, Wetness::dry, rules), 1.0) ==
          Stand::missing);
  }
  rules = policy();
  rules.start_slope_dry = Slope::from_ratio(kVoid);
  CHECK(stand_of(judge_avalanche(exposure(0, 1000), 4, Wetness::dry, rules), 1.0) ==
        Stand::refused);
}

TEST_CASE("where no ground is steep a drawn runout is refused as such, at no distance at all") {
  hazard::Exposure piece = exposure(0, 150);
  piece.nothing_steep_within_reach = true;
  const auto distance_of = [](const Finding& finding) {
    for (const Input& input : finding.inputs.all()) {
      if (input.name == "distance") {
        return input.value;
      }
    }
    return units::Amount{};
  };
  // Kept by 150 m or more; in the runout by exactly none.
  CHECK(distance_of(judge_avalanche(piece, 3, Wetness::dry, policy())) ==
        units::Amount{150, units::Unit::metres, units::Known::at_least});
  piece.in_runout = true;
  const Finding refused = judge_avalanche(piece, 4, Wetness::dry, policy());
  CHECK(stand_of(refused, 0.7) == Stand::refused);
  CHECK(refused.refused == "in a runout");
  CHECK(distance_of(refused) == units::Amount{0, units::Unit::metres, units::Known::exactly});
  // Steep itself, though nothing around it is: no distance off either.
  piece.in_runout = false;
  piece.own_slope = Slope::from_degrees(31);
  CHECK(stand_at(piece, 4) == Stand::refused);
  CHECK(stand_at(piece, 3) == Stand::asks);
}

}  // namespace rimehaul::passage
