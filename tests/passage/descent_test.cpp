// Hold on a descent and when parked, against closed forms.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "near.h"
#include "rig_on_slope.h"

namespace rimehaul::passage {

namespace {

using testing::loaded_rig;
using testing::near;
using testing::rig_without_shift;
using testing::RigOnSlope;
using testing::share_of;
using units::kGravity;
using units::Newtons;

constexpr double kDegrees = 57.29577951308232;

double share_down(RigOnSlope rig, double degrees) {
  return share_of(judge_descent_hold(rig.on_degrees(-degrees, 0).footing()));
}

}  // namespace

TEST_CASE("a rig of 700 and 400 kg holds on 13.742 degrees, solo on 19.290") {
  // tan = (mu_b mv + ft mt) / (mv + mt), where the brake's 0.35 is 0.30 and 0.05 of drag in it.
  const double towing = (0.35 * 700 + 0.06 * 400) / 1100;
  CHECK(near(std::atan(towing) * kDegrees, 13.742, 5e-4));
  CHECK(near(std::atan(0.35) * kDegrees, 19.290, 5e-4));
  RigOnSlope rig = rig_without_shift();
  CHECK(near(share_of(judge_descent_hold(rig.on(-towing, 0).footing())), 1.0, 1e-9));
  CHECK(share_down(rig, 13.741) < 1.0);
  CHECK(share_down(rig, 13.743) > 1.0);
  rig.without_trailer();
  CHECK(near(share_of(judge_descent_hold(rig.on(-0.35, 0).footing())), 1.0, 1e-12));
  CHECK(share_down(rig, 19.289) < 1.0);
  CHECK(share_down(rig, 19.291) > 1.0);
}

TEST_CASE("what rests on the hitch would brake with the tracks, and is not counted") {
  // 12 % of 400 kg on the hitch: braked with the carrier they would hold on 14.424
  // degrees, atan((0.35 x 748 + 0.06 x 352) / 1100). Left out, as what lifts it off is not known,
  // it holds on 13.600 degrees, atan((0.35 x 700 + 0.06 x 352) / 1100): on the safe side.
  const double counted = (0.35 * 748 + 0.06 * 352) / 1100;
  const double left_out = (0.35 * 700 + 0.06 * 352) / 1100;
  CHECK(near(std::atan(counted) * kDegrees, 14.424, 5e-4));
  CHECK(near(std::atan(left_out) * kDegrees, 13.600, 5e-4));
  RigOnSlope rig = rig_without_shift();
  rig.weighed.tongue_mass = units::Kilograms{48};
  CHECK(near(share_of(judge_descent_hold(rig.on(-left_out, 0).footing())), 1.0, 1e-9));
  CHECK(share_of(judge_descent_hold(rig.on(-counted, 0).footing())) > 1.0);
}

TEST_CASE("the smaller of the brake's own force and its grip counts") {
  RigOnSlope rig = rig_without_shift().without_trailer();
  rig.on(-0.2, 0);
  const double weight = 700 * kGravity;
  const double cosine = std::cos(std::atan(0.2));
  rig.rig.carrier.brake_force = Newtons{0.35 * weight * cosine + 1.0};
  CHECK(near(judge_descent_hold(rig.footing()).capacity.value, 0.35 * weight * cosine, 1e-9));
  rig.rig.carrier.brake_force = Newtons{1'000};
  CHECK(judge_descent_hold(rig.footing()).capacity.value == 1'000);
}

TEST_CASE("climbing asks nothing of the brake, and no brake is still refused") {
  RigOnSlope rig = loaded_rig();
  rig.on_degrees(10, 0);
  CHECK(judge_descent_hold(rig.footing()).share == 0.0);
  rig.rig.carrier.brake_force = Newtons{0};
  CHECK(stand_of(judge_descent_hold(rig.footing()), 1.0) == Stand::refused);
}

TEST_CASE("a trailer's drag counts at its low side when it pushes") {
  RigOnSlope rig = rig_without_shift();
  rig.on_degrees(-10, 0);
  const double before = judge_descent_hold(rig.footing()).demand.value;
  rig.grip.trailer_resistance = {units::ForceRatio{0.02}, units::ForceRatio{0.3}};
  const double after = judge_descent_hold(rig.footing()).demand.value;
  const double cosine = std::cos(10 / kDegrees);
  CHECK(near(after - before, 0.04 * 400 * kGravity * cosine, 1e-6));
}

TEST_CASE("a parked rig is held whichever way it faces") {
  RigOnSlope rig = rig_without_shift();
  const double up = share_of(judge_parking_hold(rig.on_degrees(9, 2).footing()));
  const double down = share_of(judge_parking_hold(rig.on_degrees(-9, 2).footing()));
  CHECK(near(up, down, 1e-9));
  CHECK(up > 0.0);
}

TEST_CASE("parking is the parking brake's matter alone") {
  RigOnSlope rig = rig_without_shift().without_trailer();
  rig.on(-0.2, 0);
  rig.rig.carrier.brake_force = Newtons{0};
  rig.rig.carrier.parking_brake_force = Newtons{1'500};
  const double asked = 700 * kGravity * std::sin(std::atan(0.2));
  CHECK(near(share_of(judge_parking_hold(rig.footing())), asked / 1'500, 1e-12));
  CHECK(stand_of(judge_descent_hold(rig.footing()), 1.0) == Stand::refused);
}

}  // namespace rimehaul::passage
