// Stopping ways and speeds, against uniform deceleration.
#include <doctest/doctest.h>

#include <cmath>
#include <random>

#include "near.h"
#include "passage/bend.h"
#include "passage/forces.h"
#include "rig_on_slope.h"

namespace rimehaul::passage {

namespace {

using testing::input_of;
using testing::kNoNumber;
using testing::loaded_rig;
using testing::near;
using testing::rig_without_shift;
using testing::RigOnSlope;
using units::Metres;
using units::MetresPerSecond;
using units::Seconds;

/// Carrier and trailer in one line, so that nothing but grip and brake sets how hard it may brake.
RigOnSlope straight(RigOnSlope rig) {
  rig.rules.articulation = units::Slope::from_ratio(1e-12);
  return rig;
}

/// From 20 km/h, without time to react: the numbers of the worked example.
RigOnSlope at_20_kmh(double grade_deg) {
  RigOnSlope rig = rig_without_shift();
  rig.rules.reaction = Seconds{0};
  rig.rules.walking_pace = MetresPerSecond{20 / 3.6};
  rig.rig.carrier.top_speed = MetresPerSecond{100};
  return straight(rig).on_degrees(grade_deg, 0);
}

}  // namespace

TEST_CASE("from 20 km/h the rig stops in 6.435 m on the flat and in 23.42 m on 10 degrees") {
  // a = g ((mu_b mv + ft mt) cos - (mv + mt) sin) / (mv + mt); v^2 / 2a.
  const Stopping flat = judge_stopping(at_20_kmh(0).footing(), {Metres{30}, kStraight}, 1.0);
  CHECK(near(input_of(flat.finding, "a"), 2.3982, 5e-5));
  CHECK(near(flat.finding.demand.value, 6.435, 5e-4));
  const Stopping steep = judge_stopping(at_20_kmh(-10).footing(), {Metres{30}, kStraight}, 1.0);
  CHECK(near(input_of(steep.finding, "a"), 0.6588, 5e-5));
  CHECK(near(steep.finding.demand.value, 23.42, 5e-3));
  CHECK(near(*steep.finding.share, steep.finding.demand.value / 30, 1e-12));
}

TEST_CASE("on 15 degrees it cannot stop, and no speed is allowed") {
  const Stopping stopping = judge_stopping(at_20_kmh(-15).footing(), {Metres{30}, kStraight}, 1.0);
  CHECK(stand_of(stopping.finding, 1.0) == Stand::refused);
  CHECK(stopping.speed == MetresPerSecond{0});
}

TEST_CASE("the highest speed uses up the allowed share of the sight and no more") {
  std::mt19937 dice{41};
  std::uniform_real_distribution<double> grade(-13, 10);
  std::uniform_real_distribution<double> sight(5, 80);
  for (int trial = 0; trial < 500; ++trial) {
    RigOnSlope rig = straight(rig_without_shift());
    rig.rig.carrier.top_speed = MetresPerSecond{1000};
    rig.rules.reaction = Seconds{trial % 2 == 0 ? 2.0 : 0.0};
    rig.on_degrees(grade(dice), 0);
    const double way = 0.7 * sight(dice);
    const Stopping stopping = judge_stopping(rig.footing(), {Metres{way / 0.7}, kStraight}, 0.7);
    if (stand_of(stopping.finding, 0.7) != Stand::passes) {
      CHECK(stopping.speed == MetresPerSecond{0});
      continue;
    }
    const double a = input_of(stopping.finding, "a");
    const double v = stopping.speed.value();
    const double needed = v * rig.rules.reaction.value() + v * v / (2 * a);
    CHECK(needed <= way * (1 + 1e-15));
    const double faster = v + 0.05;
    CHECK(faster * rig.rules.reaction.value() + faster * faster / (2 * a) > way * (1 - 1e-9));
    CHECK(v >= rig.rules.walking_pace.value());
  }
}

TEST_CASE("no speed is over the top speed, and an unknown top speed allows none") {
  RigOnSlope rig = loaded_rig();
  rig.rig.carrier.top_speed = MetresPerSecond{3};
  CHECK(judge_stopping(rig.footing(), {Metres{80}, kStraight}, 0.7).speed == MetresPerSecond{3});
  for (const double bad : {kNoNumber, 0.0, -1.0}) {
    rig.rig.carrier.top_speed = MetresPerSecond{bad};
    CHECK(judge_stopping(rig.footing(), {Metres{80}, kStraight}, 0.7).speed == MetresPerSecond{0});
  }
}

TEST_CASE("sight that just serves walking pace passes, a hair less does not") {
  RigOnSlope rig = loaded_rig();
  const double way =
      judge_stopping(rig.footing(), {Metres{80}, kStraight}, 1.0).finding.demand.value;
  const Stopping just = judge_stopping(rig.footing(), {Metres{way}, kStraight}, 1.0);
  CHECK(stand_of(just.finding, 1.0) == Stand::passes);
  CHECK(near(just.speed, rig.rules.walking_pace, MetresPerSecond{1e-9}));
  const Stopping less = judge_stopping(rig.footing(), {Metres{way * (1 - 1e-9)}, kStraight}, 1.0);
  CHECK(stand_of(less.finding, 1.0) == Stand::exceeds);
  CHECK(less.speed == MetresPerSecond{0});
}

TEST_CASE("no sight, unknown sight or an unknown time to react closes") {
  RigOnSlope rig = loaded_rig();
  CHECK(stand_of(judge_stopping(rig.footing(), {Metres{0}, kStraight}, 0.7).finding, 1.0) ==
        Stand::refused);
  CHECK(stand_of(judge_stopping(rig.footing(), {Metres{kNoNumber}, kStraight}, 0.7).finding, 1.0) ==
        Stand::missing);
  rig.rules.reaction = Seconds{kNoNumber};
  const Stopping stopping = judge_stopping(rig.footing(), {Metres{50}, kStraight}, 0.7);
  CHECK(stand_of(stopping.finding, 1.0) == Stand::missing);
  CHECK(stopping.speed == MetresPerSecond{0});
}

namespace {

/// Every check that the brake and a bend may spoil, for a rig that moves so.
bool keeps(const RigOnSlope& rig, const Motion& motion, double allowed_share) {
  const Footing footing = rig.footing();
  const Statics moving = statics_of(footing, motion);
  for (const Finding& finding : {judge_carrier_side_slip(moving), judge_carrier_roll_over(moving),
                                 judge_trailer_side_slip(moving), judge_trailer_roll_over(moving),
                                 judge_jackknife(moving)}) {
    if (stand_of(finding, allowed_share) != Stand::passes) {
      return false;
    }
  }
  return true;
}

}  // namespace

TEST_CASE(
    "braking as hard as it is planned, in the bend and at the speed told, nothing gives way") {
  std::mt19937 dice{47};
  const auto between = [&](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(dice);
  };
  int driven = 0;
  int held_back = 0;
  for (int trial = 0; trial < 3000; ++trial) {
    RigOnSlope rig = loaded_rig();
    rig.rig.carrier.top_speed = MetresPerSecond{8};
    rig.weighed.trailer.mass = units::Kilograms{between(50, 500)};
    rig.weighed.tongue_mass = rig.weighed.trailer.mass * between(0.0, 0.2);
    rig.weighed.trailer.centre.up = Metres{between(0.2, 0.8)};
    rig.grip.brake = units::ForceRatio{between(0.1, 0.5)};
    rig.grip.lateral = units::ForceRatio{between(0.1, 0.5)};
    if (between(0, 1) < 0.3) {
      rig.without_trailer();
    }
    rig.on_degrees(between(-12, 6), between(-6, 6));
    const Metres radius{between(3, 60)};
    const Stopping told = judge_stopping(rig.footing(), {Metres{40}, radius}, 0.7);
    if (stand_of(told.finding, 0.7) != Stand::passes || !keeps(rig, {}, 0.7)) {
      continue;
    }
    ++driven;
    const double pace = rig.rules.walking_pace.value();
    const double v = told.speed.value();
    CAPTURE(trial);
    CHECK(v >= pace);
    const double a = input_of(told.finding, "a");
    CHECK(keeps(rig, {a * (1 - 1e-9), pace * pace / radius.value()}, 0.7 * (1 + 1e-9)));
    CHECK(keeps(rig, {0.0, v * v / radius.value()}, 0.7));
    // No more can be had: crept a step faster the bend cannot be stopped in.
    if (v + 0.05 <= rig.rig.carrier.top_speed.value()) {
      RigOnSlope faster = rig;
      faster.rules.walking_pace = MetresPerSecond{v + 0.05};
      const Stopping spoilt = judge_stopping(faster.footing(), {Metres{40}, radius}, 0.7);
      CHECK(stand_of(spoilt.finding, 0.7) != Stand::passes);
    }
    const Stopping unbent = judge_stopping(rig.footing(), {Metres{40}, kStraight}, 0.7);
    held_back += v < unbent.speed.value() - 0.04 ? 1 : 0;
  }
  CHECK(driven > 500);
  CHECK(held_back > 100);
}

TEST_CASE("in a bend on ice the speed is what the grip across leaves, by hand") {
  // Level ground, no trailer, braking left out by a long sight: v^2 / R <= s mu_l g at the most,
  // with the braking's part of the friction ellipse taken off that.
  RigOnSlope rig = loaded_rig().without_trailer();
  rig.grip.lateral = units::ForceRatio{0.14};
  rig.grip.brake = units::ForceRatio{0.14};
  rig.rig.carrier.top_speed = MetresPerSecond{20};
  rig.on(0.0, 0.0);
  const double radius = 6.5;
  const double v = judge_stopping(rig.footing(), {Metres{1000}, Metres{radius}}, 0.7).speed.value();
  CHECK(v * v / radius <= 0.7 * 0.14 * 9.80665);
  const double faster = v + 0.05;
  const double left = std::sqrt(
      std::max(0.0, 0.7 * 0.7 - std::pow(faster * faster / radius / (0.14 * 9.80665), 2)));
  const double a = left * 0.14 * 0.9 * 9.80665;  // 0.9 of the weight is on the braked tracks
  const bool stops = a > 0 && faster * 2.0 + faster * faster / (2 * a) <= 0.7 * 1000;
  CHECK_FALSE(stops);
}

TEST_CASE("a bend that takes more than is allowed at walking pace is refused by what it takes") {
  // v^2 / (R mu_l g) = 0.7 at R = 1 / (0.7 x 0.14 x 9.80665) = 1.0405 m for 1 m/s.
  RigOnSlope rig = loaded_rig().without_trailer();
  rig.grip.lateral = units::ForceRatio{0.14};
  rig.grip.carrier_resistance = {units::ForceRatio{0}, units::ForceRatio{0}};
  rig.rules.walking_pace = MetresPerSecond{1};
  rig.on(0.0, 0.0);
  const auto in_bend = [&](double radius) {
    return judge_stopping(rig.footing(), {Metres{1000}, Metres{radius}}, 0.7);
  };
  const Stopping tight = in_bend(1.040);
  CHECK(*tight.finding.share == doctest::Approx(1.0 / (1.040 * 0.14 * 9.80665)));
  CHECK(stand_of(tight.finding, 0.7) == Stand::exceeds);
  CHECK(tight.finding.formula == "share of carrier side slip, rolling at v on a bend of R <= 1");
  CHECK(tight.speed == MetresPerSecond{0});
  CHECK(in_bend(1.042).finding.formula.empty());
}

TEST_CASE("a trailer that pushes at an angle lets the rig brake less hard than alone") {
  RigOnSlope rig = loaded_rig();
  rig.weighed.trailer.mass = units::Kilograms{600};
  rig.rules.articulation = units::Slope::from_degrees(60);
  rig.rig.carrier.hitch_at.forward = Metres{-1.2};
  rig.on_degrees(-3, 0);
  const auto hardest = [&](const RigOnSlope& asked) {
    return input_of(judge_stopping(asked.footing(), {Metres{40}, kStraight}, 0.7).finding, "a");
  };
  CHECK(hardest(rig) < hardest(straight(rig)));
}

TEST_CASE("a bend that only the trailer's runners cannot hold is refused by what they would take") {
  // On the level the runners are asked v^2 / R of their weight: 1 / (6 x 0.02 x 9.80665) = 0.850.
  RigOnSlope rig = rig_without_shift();
  rig.grip.trailer_lateral = units::ForceRatio{0.02};
  rig.rules.walking_pace = MetresPerSecond{1};
  rig.on(0.0, 0.0);
  const Stopping stopping = judge_stopping(rig.footing(), {Metres{1000}, Metres{6}}, 0.7);
  CHECK(near(*stopping.finding.share, 1.0 / (6 * 0.02 * 9.80665), 1e-6));
  CHECK(stopping.finding.formula == "share of trailer side slip, rolling at v on a bend of R <= 1");
  CHECK(stand_of(stopping.finding, 0.7) == Stand::exceeds);
  CHECK(stopping.speed == MetresPerSecond{0});
  CHECK(judge_stopping(rig.footing(), {Metres{1000}, kStraight}, 0.7).finding.formula.empty());
}

TEST_CASE("where something else allows less, speeds are tried to that and two steps on at most") {
  RigOnSlope rig = loaded_rig().without_trailer();
  rig.rules.walking_pace = MetresPerSecond{1};
  const auto speed = [&rig](double at_most) {
    return judge_stopping(rig.footing(), {Metres{1000}, kStraight, MetresPerSecond{at_most}}, 0.7)
        .speed.value();
  };
  REQUIRE(speed(HUGE_VAL) > 7.9);
  for (const double at_most : {1.0, 1.01, 3.0, 5.0, 6.99}) {
    CAPTURE(at_most);
    CHECK(speed(at_most) >= at_most);
    CHECK(speed(at_most) <= at_most + 2 * 0.05 + 1e-9);
  }
}

TEST_CASE("a rig that slides when it brakes is told so, and not that its hill is too steep") {
  // Braked at g (0.35 x 700 + 0.06 x 400) / 1100 = 2.398 m/s2 the sled, whose centre is 0.4 m below
  // the hitch 2 m ahead, lifts it with 400 x 2.398 x 0.4 / 2 = 192 N, and by the hill with 23 N.
  RigOnSlope rig = straight(loaded_rig());
  rig.rig.carrier.hitch_at.up = Metres{0.6};
  rig.weighed.trailer.centre.up = Metres{0.2};
  rig.weighed.tongue_mass = units::Kilograms{0};
  rig.grip.trailer_lateral = units::ForceRatio{0.5};
  rig.on(-0.03, 0.273);
  REQUIRE(keeps(rig, {}, 0.7));
  // Across 0.273 of what the carrier weighs; of the grip 0.4 of that less what lifts it.
  const double pressed = 700 * 9.80665 / std::sqrt(1 + 0.03 * 0.03 + 0.273 * 0.273);
  CHECK(0.273 * pressed / (0.4 * (pressed - 23)) < 0.69);
  CHECK(0.272 * pressed / (0.4 * (pressed - 192 - 23)) > 0.7);
  const Stopping slides = judge_stopping(rig.footing(), {Metres{1000}, kStraight}, 0.7);
  CHECK(input_of(slides.finding, "u") == 0.0);
  CHECK(slides.finding.refused == "braking at walking pace would let it slide, tip or jackknife");
  CHECK(judge_stopping(at_20_kmh(-15).footing(), {Metres{30}, kStraight}, 1.0).finding.refused ==
        "brake and drag do not overcome the hill: it cannot stop");
}

TEST_CASE("where it is not known what else allows, no speed is told") {
  const RigOnSlope rig = loaded_rig();
  const Stopping told =
      judge_stopping(rig.footing(), {Metres{80}, kStraight, MetresPerSecond{kNoNumber}}, 0.7);
  CHECK(stand_of(told.finding, 0.7) == Stand::passes);
  CHECK(told.speed == MetresPerSecond{0});
}

TEST_CASE("of a sight of which nothing may be used up no speed is left") {
  RigOnSlope rig = loaded_rig();
  rig.rules.walking_pace = MetresPerSecond{1e-300};  // its way is no part of that sight
  for (const double reaction_s : {2.0, 0.0}) {
    rig.rules.reaction = Seconds{reaction_s};
    const Stopping told = judge_stopping(rig.footing(), {Metres{1e30}, kStraight}, 0.0);
    CHECK(told.finding.share == 0.0);
    CHECK(told.speed == MetresPerSecond{0});
  }
}

}  // namespace rimehaul::passage
