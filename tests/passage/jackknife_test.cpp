// Jackknife, against the moment that tracks hold with.
#include <doctest/doctest.h>

#include <cmath>

#include "near.h"
#include "rig_on_slope.h"

namespace rimehaul::passage {

namespace {

using testing::input_of;
using testing::kNoNumber;
using testing::near;
using testing::rig_without_shift;
using testing::RigOnSlope;
using testing::share_of;
using units::ForceRatio;
using units::kGravity;
using units::Slope;

constexpr double kRadian = 0.017453292519943295;

/// 15 degrees down, hitch 0.9 m behind the middle of 1.4 m of track, and a brake that takes nothing
/// worth naming of the grip, as the worked example has it.
RigOnSlope example(double lateral_grip, double articulation_deg) {
  RigOnSlope rig = rig_without_shift();
  rig.grip.brake = ForceRatio{1e9};
  rig.grip.lateral = ForceRatio{lateral_grip};
  rig.rules.articulation = Slope::from_degrees(articulation_deg);
  return rig.on_degrees(-15, 0);
}

}  // namespace

TEST_CASE("on 15 degrees 400 kg push with 787.9 N against 1160.4 N m, or 348.1 on little grip") {
  // P = m_t g (sin - f_t cos); moment of turning resistance mu_l W l / 4 (Wong, Theory of Ground
  // Vehicles, skid steering; value from memory).
  const double push = 400 * kGravity * (std::sin(15 * kRadian) - 0.06 * std::cos(15 * kRadian));
  CHECK(near(push, 787.9, 0.05));
  const Finding firm = judge_jackknife(example(0.5, 30).footing());
  CHECK(near(input_of(firm, "P"), push, 1e-6));
  CHECK(near(input_of(firm, "d_h"), 0.9, 1e-12));
  CHECK(near(firm.capacity.value, 1160.4, 0.05));
  CHECK(near(firm.demand.value, push * 0.5 * 0.9, 1e-6));
  CHECK(near(judge_jackknife(example(0.15, 30).footing()).capacity.value, 348.1, 0.05));
}

TEST_CASE("with little grip it folds past 29.40 degrees, with good grip at no angle") {
  CHECK(share_of(judge_jackknife(example(0.15, 29.39).footing())) < 1.0);
  CHECK(share_of(judge_jackknife(example(0.15, 29.41).footing())) > 1.0);
  CHECK(share_of(judge_jackknife(example(0.5, 89.999).footing())) < 1.0);
}

TEST_CASE("a trailer that does not push folds nothing") {
  RigOnSlope rig = example(0.15, 30);
  CHECK(judge_jackknife(rig.on_degrees(5, 0).footing()).share == 0.0);
  CHECK(judge_jackknife(rig.on_degrees(-2, 0).footing()).share == 0.0);  // held by its drag
}

TEST_CASE("braking and side slopes take grip from holding the tail") {
  RigOnSlope rig = example(0.5, 30);
  const double alone = judge_jackknife(rig.footing()).capacity.value;
  rig.grip.brake = ForceRatio{0.5};
  const Finding braked = judge_jackknife(rig.footing());
  const double used = input_of(braked, "u_hold");
  CHECK(used > 0.5);
  CHECK(near(braked.capacity.value, alone * std::sqrt(1 - used * used), 1e-6));
  const double across = judge_jackknife(rig.on_degrees(-15, 5).footing()).capacity.value;
  CHECK(across < braked.capacity.value);
}

TEST_CASE("where the brake needs all the grip there is none left: refused") {
  RigOnSlope rig = example(0.5, 30);
  rig.grip.brake = ForceRatio{0.2};
  CHECK(stand_of(judge_jackknife(rig.footing()), 1.0) == Stand::refused);
}

TEST_CASE("an angle that nobody knows, or a hitch at the middle, closes") {
  CHECK(stand_of(judge_jackknife(example(0.5, 90).footing()), 1.0) == Stand::missing);
  RigOnSlope rig = example(0.5, 30);
  rig.rules.articulation = Slope::from_ratio(0);
  CHECK(stand_of(judge_jackknife(rig.footing()), 1.0) == Stand::missing);
  rig = example(0.5, 30);
  rig.rig.carrier.hitch_at.forward = units::Metres{0.7};
  CHECK(stand_of(judge_jackknife(rig.footing()), 1.0) == Stand::missing);
}

}  // namespace rimehaul::passage
