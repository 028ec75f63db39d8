// How hard the brake may be used, told so that it can be worked out by hand.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <string>

#include "any_rig.h"
#include "near.h"
#include "passage/forces.h"
#include "worked_by_hand.h"

namespace rimehaul::passage {

namespace {

using testing::kNoNumber;
using testing::loaded_rig;
using testing::near;
using testing::Numbers;
using testing::RigOnSlope;
using units::Metres;

/// A radius so large that the bend takes nothing at all.
constexpr Metres kNoBend{1e12};

struct Told {
  Finding finding;
  std::vector<Working> braking;
};

Told told(const RigOnSlope& rig, Metres radius, double allowed_share) {
  const Finding finding =
      judge_stopping(rig.footing(), {Metres{50}, radius}, allowed_share).finding;
  return {finding, braking_workings(rig.footing(), finding, allowed_share)};
}

std::string symbols_of(const std::vector<Working>& workings) {
  std::string symbols;
  for (const Working& working : workings) {
    symbols += working.symbol + " ";
  }
  return symbols;
}

bool is_by_brake_alone(const Told& told) {
  return symbols_of(told.braking) == "G F a ";
}

/// All that is shown of it, worked out again: G, F, u and a must come out as the finding has them.
Numbers worked_again(const RigOnSlope& rig, const Told& told) {
  Numbers shown;
  testing::work_out(shared_workings(rig.footing()), shown);
  for (const std::string given : {"v", "R", "m", "B", "t"}) {
    shown[given] = number_of(told.finding, given).value;
  }
  if (is_by_brake_alone(told)) {
    shown["u"] = 1;  // not worked out, but all of it
  }
  testing::work_out(told.braking, shown);
  for (const std::string worked : {"G", "F", "u", "a"}) {
    CAPTURE(worked);
    CHECK(shown.at(worked) == number_of(told.finding, worked).value);
  }
  if (told.finding.refused.empty()) {
    Numbers all = shown;
    all["sight"] = 50;
    CHECK(testing::comes_out_again(told.finding, {facts_of(Check::stopping).formula, {}}, all));
  }
  return shown;
}

RigOnSlope level_alone() {
  return loaded_rig().without_trailer();
}

}  // namespace

TEST_CASE("whatever holds the brake back, its part and the slowing come out of the numbers told") {
  testing::Dice dice{20261125};
  std::map<std::string, int> held_by;
  for (int trial = 0; trial < 3000; ++trial) {
    RigOnSlope rig = testing::any_rig(dice, trial % 3 == 0 ? 0.25 : 0.1);
    rig.rules.articulation = units::Slope::from_ratio(dice.between(0.05, 1.0));
    if (trial % 4 == 0) {
      rig.without_trailer();
    }
    const Told here = told(rig, Metres{dice.between(4, 100)}, dice.between(0.5, 1.0));
    if (here.braking.empty()) {
      held_by["bend alone"] += 1;
      CHECK(std::isnan(number_of(here.finding, "u").value));
      CHECK_FALSE(here.finding.formula.empty());
      continue;
    }
    const Numbers shown = worked_again(rig, here);
    if (is_by_brake_alone(here)) {
      held_by["brake alone"] += 1;
      CHECK(shown.at("u") == 1.0);
      continue;
    }
    held_by[shown.at("u") == shown.at("u_slip") ? "slip" : "jackknife"] += 1;
    const double a = shown.at("a");
    held_by[a == shown.at("a_tip") ? "tip" : a == shown.at("a_most") ? "most" : "part"] += 1;
    held_by[rig.rig.trailer ? "towing" : "alone"] += 1;
    held_by[rig.rig.trailer && shown.at("U_b") > 0.0 ? "lifted" : "not lifted"] += 1;
    held_by[rig.rig.trailer && shown.at("V_b") > shown.at("V") ? "pressed" : "not pressed"] += 1;
  }
  for (const std::string by : {"bend alone", "brake alone", "slip", "jackknife", "tip", "most",
                               "part", "towing", "alone", "lifted", "pressed"}) {
    CAPTURE(by);
    CHECK(held_by[by] > 10);
  }
}

TEST_CASE("the page's example of stopping on 6 degrees is told number by number") {
  RigOnSlope rig = loaded_rig().on_degrees(-6, 2);
  rig.rig.carrier.track_weight_share = 0.9;
  rig.rules.walking_pace = units::MetresPerSecond{1};
  const Numbers shown = worked_again(rig, told(rig, Metres{12}, 0.7));
  // By hand: sin 6 deg = 0.104528, tan 2 deg = 0.0349208, n = 0.993922, m = 1100 kg.
  CHECK(near(shown.at("a_most"), 2.39817, 5e-5));  // g (0.35 700 + 0.06 400) / 1100
  CHECK(near(shown.at("b"), 0.0084976, 5e-8));     // 1 / (12 g)
  CHECK(near(shown.at("n_c_b"), 0.993625, 2e-6));
  CHECK(near(shown.at("n_t_b"), 0.993625, 2e-6));
  CHECK(near(shown.at("n_t_most_b"), 0.994218, 2e-6));
  CHECK(near(shown.at("V_b"), 505.25, 2e-2));
  CHECK(near(shown.at("U_b"), 0, 0));
  CHECK(near(shown.at("P_b"), 206.48, 2e-2));
  CHECK(near(shown.at("G"), 2148.6, 5e-2));
  CHECK(near(shown.at("F"), 924.0, 5e-2));
  CHECK(near(shown.at("S_b"), 312.16, 2e-2));
  CHECK(near(shown.at("C_b"), 2728.4, 5e-2));
  CHECK(near(shown.at("u_slip"), 0.6906, 5e-5));
  CHECK(near(shown.at("k"), 1.836735, 5e-6));  // sin 30 deg 0.9 m / (0.7 1.4 m / 4)
  CHECK(near(shown.at("N"), 2455.5, 5e-2));
  CHECK(near(shown.at("q"), 1435.0, 5e-2));
  CHECK(near(shown.at("p"), 74.26, 5e-2));
  CHECK(near(shown.at("u"), 0.6906, 5e-5));
  // Over the front edge, 0.7 m ahead: 0.7 tan(0.6 atan(0.6316 / 0.7) - atan(0.05 / 1.4)) - 0.1052,
  // times g n; the push of the hardest braking takes 0.4 m (206.48 + 400 a_most) N off the 0.7 m.
  CHECK(near(shown.at("a_tip"), 1.897, 1e-3));
  CHECK(near(shown.at("a"), 0.5089, 5e-5));
}

TEST_CASE("what is told of the brake stands in order, and where the given numbers are from") {
  const Told towing = told(loaded_rig().on(-0.1, 0.03), Metres{20}, 0.7);
  CHECK(symbols_of(towing.braking) ==
        "s a_most b n_c_b n_t_b n_t_most_b V_b U_b P_b G F mu_l S_b C_b u_slip gamma l x_h k N q p "
        "u a_tip a ");
  const Told alone = told(level_alone().on(-0.1, 0.03), Metres{20}, 0.7);
  CHECK(symbols_of(alone.braking) == "s a_most b n_c_b G F mu_l S_b C_b u_slip u a_tip a ");
  for (const Working& working : towing.braking) {
    CAPTURE(working.symbol);
    const std::map<std::string, Origin> given{{"s", Origin::rules},
                                              {"mu_l", Origin::grip},
                                              {"gamma", Origin::rules},
                                              {"l", Origin::rig_sheet},
                                              {"x_h", Origin::rig_sheet}};
    const auto origin = given.find(working.symbol);
    CHECK(working.origin == (origin == given.end() ? Origin::derived : origin->second));
    // How hard it may be slowed before it tips is worked out edge by edge: roll-over tells how.
    CHECK(working.formula.empty() == (origin != given.end() || working.symbol == "a_tip"));
    CHECK(working.page == "docs/checks/stopping.md");
  }
}

TEST_CASE("where the steady rig gives way already, stopping is told by the brake alone") {
  // On so steep a cross-slope it slips, whatever it does.
  const RigOnSlope rig = loaded_rig().on(-0.05, 0.4);
  REQUIRE(stand_of(judge_carrier_side_slip(rig.footing()), 0.7) == Stand::exceeds);
  const Told here = told(rig, Metres{20}, 0.7);
  CHECK(is_by_brake_alone(here));
  const Numbers shown = worked_again(rig, here);
  CHECK(shown.at("G") == shown.at("C_hold"));
  CHECK(shown.at("F") == shown.at("F_hold"));
}

TEST_CASE("all the grip may be taken, and still it is not told by the brake alone") {
  // Nothing pulls across and the whole share is allowed, so that u = 1. On the level the front edge
  // of a tall rig holds the slowing back; uphill, the hardest braking that is planned.
  RigOnSlope tall = level_alone();
  tall.weighed.carrier.centre = {Metres{0.7}, Metres{0}, Metres{1.5}};
  const Told by_tip = told(tall, kNoBend, 1.0);
  CHECK(number_of(by_tip.finding, "u").value == 1.0);
  CHECK_FALSE(is_by_brake_alone(by_tip));
  const Numbers of_tall = worked_again(tall, by_tip);
  CHECK(of_tall.at("a") == of_tall.at("a_tip"));
  CHECK(of_tall.at("G") == of_tall.at("C_hold"));
  CHECK(of_tall.at("F") == of_tall.at("F_hold"));

  const RigOnSlope uphill = level_alone().on(0.15, 0);
  const Told by_most = told(uphill, kNoBend, 1.0);
  CHECK(number_of(by_most.finding, "u").value == 1.0);
  CHECK_FALSE(is_by_brake_alone(by_most));
  const Numbers of_uphill = worked_again(uphill, by_most);
  CHECK(near(of_uphill.at("a"), 0.35 * units::kGravity, 1e-12));
}

TEST_CASE("all the grip may be taken, but harsh braking shifts loads at the hitch") {
  // In line behind the carrier, so that the trailer's push turns nothing.
  RigOnSlope in_line = loaded_rig();
  in_line.rules.articulation = units::Slope::from_ratio(1e-15);
  for (const double centre_up : {0.1, 0.9}) {  // under the hitch it lifts, above it presses
    CAPTURE(centre_up);
    in_line.weighed.trailer.centre.up = Metres{centre_up};
    in_line.weighed.tongue_mass = units::Kilograms{0};
    const Told here = told(in_line, kNoBend, 1.0);
    CHECK(number_of(here.finding, "u").value == 1.0);
    CHECK_FALSE(is_by_brake_alone(here));
    const Numbers shown = worked_again(in_line, here);
    CHECK((shown.at("G") < shown.at("C_hold") - 1) == (centre_up < 0.4));
    CHECK((shown.at("F") > shown.at("F_hold") + 1) == (centre_up > 0.4));
  }
}

TEST_CASE(
    "where a weak brake slows as on a straight line, grip and its part are told all the same") {
  RigOnSlope weak = level_alone();
  weak.rig.carrier.brake_force = units::Newtons{500};
  const Told part_left = told(weak, kNoBend, 0.7);
  const Numbers of_part = worked_again(weak, part_left);
  CHECK_FALSE(is_by_brake_alone(part_left));
  CHECK(of_part.at("G") == of_part.at("C_hold"));
  CHECK(near(of_part.at("u"), 0.7, 1e-12));
  CHECK(near(of_part.at("a"), 500.0 / 700.0, 1e-12));

  RigOnSlope lifted = loaded_rig();  // by a trailer that does not drag, its weight under the hitch
  lifted.rules.articulation = units::Slope::from_ratio(1e-15);
  lifted.rig.carrier.brake_force = units::Newtons{500};
  lifted.grip.trailer_resistance.low = units::ForceRatio{0};
  lifted.weighed.trailer.centre.up = Metres{0.1};
  lifted.weighed.tongue_mass = units::Kilograms{0};
  const Told less_grip = told(lifted, kNoBend, 1.0);
  const Numbers of_less = worked_again(lifted, less_grip);
  CHECK_FALSE(is_by_brake_alone(less_grip));
  CHECK(of_less.at("G") < of_less.at("C_hold") - 1);
  CHECK(of_less.at("u") == 1.0);
  CHECK(near(of_less.at("a"), 500.0 / 1100.0, 1e-12));
}

TEST_CASE("nothing is told of the brake where the bend leaves none, or for another check") {
  RigOnSlope rig = loaded_rig().on(0, 0.1);
  const Told in_bend = told(rig, Metres{0.3}, 0.7);
  CHECK(stand_of(in_bend.finding, 0.7) == Stand::exceeds);
  CHECK(in_bend.braking.empty());
  Finding other = told(rig, Metres{20}, 0.7).finding;
  CHECK_FALSE(braking_workings(rig.footing(), other, 0.7).empty());
  other.check = Check::descent_hold;
  CHECK(braking_workings(rig.footing(), other, 0.7).empty());
}

TEST_CASE("of a brake whose grip is not known no number is told that rests on it") {
  RigOnSlope rig = loaded_rig().on(-0.1, 0.03);
  rig.grip.brake = units::ForceRatio{kNoNumber};
  const Told here = told(rig, Metres{20}, 0.7);
  CHECK(stand_of(here.finding, 0.7) == Stand::missing);
  for (const Working& working : here.braking) {
    CAPTURE(working.symbol);
    const bool rests_on_it = working.symbol == "a_most" || working.symbol == "G" ||
                             working.symbol == "F" || working.symbol == "a";
    CHECK((!rests_on_it || std::isnan(working.value.value)));
  }
}

}  // namespace rimehaul::passage
