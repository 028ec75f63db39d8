// Roll-over and pitch-over, against published and closed-form tip angles.
#include <doctest/doctest.h>

#include <cmath>

#include "near.h"
#include "rig_on_slope.h"

namespace rimehaul::passage {

namespace {

using testing::exactly;
using testing::input_of;
using testing::kNoNumber;
using testing::loaded_rig;
using testing::near;
using testing::RigOnSlope;
using testing::share_of;
using units::kGravity;
using units::Kilograms;
using units::Metres;
using units::Slope;

constexpr double kDegrees = 57.29577951308232;

/// A carrier 1 m wide with its centre of gravity so high and so far to the left; no reserve.
struct Box {
  double height_m = 0.7;
  double left_m = 0.0;
  double sinkage_m = 0.0;
  double reserve = 1.0;
};

RigOnSlope carrier_of(const Box& box) {
  RigOnSlope rig = loaded_rig().without_trailer();
  rig.rig.carrier.support = {{Metres{0}, Metres{-0.5}},
                             {Metres{2}, Metres{-0.5}},
                             {Metres{2}, Metres{0.5}},
                             {Metres{0}, Metres{0.5}}};
  rig.weighed.carrier.centre = {Metres{1}, Metres{box.left_m}, Metres{box.height_m}};
  rig.rules.roll_over_reserve = box.reserve;
  rig.rules.low_side_sinkage = Metres{box.sinkage_m};
  return rig;
}

double share_across(RigOnSlope rig, double degrees) {
  return share_of(judge_carrier_roll_over(rig.on_degrees(0, degrees).footing()));
}

/// Whether the share passes 1 at this cross-slope, to a thousandth of a degree.
bool tips_at(const RigOnSlope& rig, double degrees) {
  return share_across(rig, degrees - 1e-3) < 1.0 && share_across(rig, degrees + 1e-3) > 1.0;
}

}  // namespace

TEST_CASE("1 m of gauge with the centre of gravity 0.7 m up tips at 35.538 degrees") {
  // Static stability factor t / 2h = 0.7143 (as used by NHTSA); tip angle atan(t / 2h).
  const RigOnSlope rig = carrier_of({});
  CHECK(near(judge_carrier_roll_over(rig.footing()).capacity.value, 0.5 / 0.7, 1e-12));
  CHECK(tips_at(rig, 35.538));
  CHECK(near(share_across(rig, -35.538), share_across(rig, 35.538), 1e-12));
}

TEST_CASE("a load 5 cm off the middle tips at 32.735 degrees on its own side") {
  const RigOnSlope rig = carrier_of({.left_m = 0.05});
  CHECK(near(std::atan(0.45 / 0.7) * kDegrees, 32.735, 5e-4));
  CHECK(near(share_across(rig, -32.735), 1.0, 1e-4));  // falls away to the left
  CHECK(share_across(rig, 32.735) < 0.95);
}

TEST_CASE("8 cm of sinkage on the low side cost 4.574 degrees") {
  const RigOnSlope rig = carrier_of({.sinkage_m = 0.08});
  CHECK(near(std::atan(0.08) * kDegrees, 4.574, 5e-4));
  CHECK(tips_at(rig, (std::atan(0.5 / 0.7) - std::atan(0.08)) * kDegrees));
}

TEST_CASE("the low side sinks by the most of rules, measured snow and new snow, and says which") {
  RigOnSlope rig = carrier_of({.sinkage_m = 0.05});
  const auto told = [&rig](double in_new_snow_m) {
    Footing footing = rig.footing();
    footing.in_new_snow = Metres{in_new_snow_m};
    return low_side_of(footing, Check::carrier_roll_over);
  };
  CHECK(told(0.0).deeper == Metres{0.05});
  CHECK(told(0.0).origin == Origin::rules);
  CHECK(told(0.05).origin == Origin::rules);
  CHECK(told(0.08).deeper == Metres{0.08});
  CHECK(told(0.08).origin == Origin::snow_report);
  rig.grip.side_sinkage = Metres{0.1};
  CHECK(told(0.08).deeper == Metres{0.1});
  CHECK(told(0.08).origin == Origin::grip);
  CHECK(input_of(judge_carrier_roll_over(rig.footing()), "d") == 0.1);
  CHECK(std::isnan(told(kNoNumber).deeper.value()));
  rig.grip.side_sinkage = Metres{kNoNumber};
  CHECK(std::isnan(told(0.2).deeper.value()));
  CHECK(stand_of(judge_carrier_roll_over(rig.footing()), 1.0) == Stand::missing);
}

TEST_CASE("8 cm sunk in new snow cost as much as 8 cm by the rules") {
  const RigOnSlope by_rules = carrier_of({.sinkage_m = 0.08});
  RigOnSlope by_snow = carrier_of({});
  by_snow.grip.side_sinkage = Metres{0.08};
  CHECK(share_across(by_snow, 20) == share_across(by_rules, 20));
}

TEST_CASE("a load 1.1 m up brings the tip angle from 42.274 to 36.027 degrees") {
  CHECK(tips_at(carrier_of({.height_m = 0.55}), 42.274));
  CHECK(tips_at(carrier_of({.height_m = (450 * 0.55 + 150 * 1.1) / 600}), 36.027));
}

TEST_CASE("the reserve leaves its share of the tip angle, not of the tangent") {
  const RigOnSlope rig = carrier_of({.reserve = 0.6});
  CHECK(tips_at(rig, 0.6 * std::atan(0.5 / 0.7) * kDegrees));
}

TEST_CASE("on a narrow rear track the skis' stance does not count: 26.885 degrees, not 37.57") {
  RigOnSlope rig = carrier_of({.height_m = 0.65});
  // skis at 1.3 ahead, +-0.5; track's rear at -0.9, +-0.25; centre of gravity at -0.2
  rig.rig.carrier.support = {{Metres{-0.9}, Metres{-0.25}},
                             {Metres{1.3}, Metres{-0.5}},
                             {Metres{1.3}, Metres{0.5}},
                             {Metres{-0.9}, Metres{0.25}}};
  rig.weighed.carrier.centre.forward = Metres{-0.2};
  CHECK(near(std::atan(0.329545 / 0.65) * kDegrees, 26.885, 5e-4));
  CHECK(tips_at(rig, std::atan((0.25 + 0.25 * 0.7 / 2.2) / 0.65) * kDegrees));
}

TEST_CASE("a carrier pitches over its rear edge on a climb and its front edge on a descent") {
  RigOnSlope rig = carrier_of({});
  rig.weighed.carrier.centre.forward = Metres{0.6};
  rig.on(0.6 / 0.7, 0);
  CHECK(near(share_of(judge_carrier_roll_over(rig.footing())), 1.0, 1e-12));
  CHECK(near(input_of(judge_carrier_roll_over(rig.footing()), "x"), -1.0, 1e-12));
  rig.on(-1.4 / 0.7, 0);
  CHECK(near(share_of(judge_carrier_roll_over(rig.footing())), 1.0, 1e-12));
  CHECK(near(input_of(judge_carrier_roll_over(rig.footing()), "x"), 1.0, 1e-12));
}

TEST_CASE("gravity's line leaves the polygon where the share passes 1, whatever the heading") {
  // The line meets the ground at (-h tan(theta) / cos(phi), -h tan(phi)) from below the centre.
  const RigOnSlope rig = carrier_of({});
  for (double heading = 0; heading < 360; heading += 7) {
    for (const double beta : {20.0, 35.0, 45.0, 60.0}) {
      const double tangent = Slope::from_degrees(beta).ratio();
      const double grade = tangent * std::cos(heading / kDegrees);
      const double cross = tangent * std::sin(heading / kDegrees);
      const double phi = std::asin(std::sin(beta / kDegrees) * std::sin(heading / kDegrees));
      const double x = 1.0 - 0.7 * grade / std::cos(phi);
      const double y = -0.7 * std::tan(phi);
      const bool inside = x > 0.0 && x < 2.0 && std::abs(y) < 0.5;
      RigOnSlope stood = rig;
      CHECK((share_of(judge_carrier_roll_over(stood.on(grade, cross).footing())) < 1.0) == inside);
    }
  }
}

TEST_CASE("a trailer that pulls back on a climb brings the carrier nearer to rearing up") {
  // About the rear edge: W n h tan = W n i - M, with M = h_h pull + 0.2 m behind times V.
  RigOnSlope rig = loaded_rig();
  rig.rules.roll_over_reserve = 1.0;
  rig.rules.low_side_sinkage = Metres{0};
  rig.grip.trailer_resistance = {units::ForceRatio{0}, units::ForceRatio{0}};
  rig.grip.trailer_start = units::ForceRatio{0};
  rig.on(0.5, 0);
  const double sine = 0.5 / std::sqrt(1.25);
  const double cosine = 1 / std::sqrt(1.25);
  const double pull = 400 * kGravity * sine;
  const double down = kGravity * (40 * cosine - 400 * sine * 0.1 / 2.0);
  const double moment = 0.4 * pull + 0.2 * down;
  const Finding finding = judge_carrier_roll_over(rig.footing());
  CHECK(near(input_of(finding, "x"), -1.0, 1e-12));
  CHECK(near(input_of(finding, "M"), moment, 1e-9));
  const double inside = 0.7 - moment / (700 * kGravity * cosine);
  CHECK(near(finding.capacity.value, inside / 0.7, 1e-12));
  CHECK(near(finding.demand.value, 0.5, 1e-12));
}

TEST_CASE("a trailer free to roll stands on a triangle, a rigid one on its runners") {
  RigOnSlope rig = loaded_rig();
  rig.rules.roll_over_reserve = 1.0;
  rig.rules.low_side_sinkage = Metres{0};
  rig.rig.trailer->hitch_free_to_roll = false;
  rig.on(0, 0.2);
  CHECK(near(share_of(judge_trailer_roll_over(rig.footing())), 0.2 / (0.5 / 0.5), 1e-12));
  rig.rig.trailer->hitch_free_to_roll = true;
  // Apex 0.8 + 2.0 m ahead of the rear corners, +-0.5: half width at 1 m is 0.5 (1 - 1 / 2.8).
  const double half_width = 0.5 * (1 - 1 / 2.8);
  CHECK(near(share_of(judge_trailer_roll_over(rig.footing())), 0.2 / (half_width / 0.5), 1e-12));
}

TEST_CASE("a centre of gravity outside its support, or no support, is closed on level ground") {
  RigOnSlope rig = carrier_of({.left_m = 0.5});
  CHECK(stand_of(judge_carrier_roll_over(rig.footing()), 1.0) == Stand::refused);
  rig.rig.carrier.support.resize(2);
  CHECK(stand_of(judge_carrier_roll_over(rig.footing()), 1.0) == Stand::missing);
  rig = carrier_of({});
  rig.weighed.carrier.centre.up = Metres{0};
  CHECK(stand_of(judge_carrier_roll_over(rig.footing()), 1.0) == Stand::missing);
  rig = carrier_of({});
  rig.rig.carrier.support[1] = rig.rig.carrier.support[0];
  CHECK_FALSE(judge_carrier_roll_over(rig.footing()).share);
}

TEST_CASE("a reserve over one or under nothing closes") {
  for (const double bad : {0.0, -0.1, 1.01, kNoNumber}) {
    const RigOnSlope rig = carrier_of({.reserve = bad});
    CHECK(stand_of(judge_carrier_roll_over(rig.footing()), 1.0) == Stand::missing);
  }
  const RigOnSlope rig = carrier_of({.sinkage_m = -0.01});
  CHECK(stand_of(judge_carrier_roll_over(rig.footing()), 1.0) == Stand::missing);
}

}  // namespace rimehaul::passage
