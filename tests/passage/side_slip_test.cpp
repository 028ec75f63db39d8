// Side slip of carrier and trailer, with what pulls along counted in.
#include <doctest/doctest.h>

#include <cmath>

#include "near.h"
#include "passage/forces.h"
#include "rig_on_slope.h"

namespace rimehaul::passage {

namespace {

using testing::exactly;
using testing::loaded_rig;
using testing::near;
using testing::RigOnSlope;
using testing::share_of;
using units::ForceRatio;
using units::kGravity;

constexpr double kRadian = 0.017453292519943295;

/// Without drag, one grip along and across.
RigOnSlope solo_on_even_grip(double grip) {
  RigOnSlope rig = loaded_rig().without_trailer();
  rig.grip.traction = rig.grip.brake = rig.grip.lateral = ForceRatio{grip};
  rig.grip.carrier_resistance = {ForceRatio{0}, ForceRatio{0}};
  return rig;
}

}  // namespace

TEST_CASE(
    "of a grip however small that part counts as taken which is asked, of none nothing is known") {
  const auto taken = [](double asked, double given) {
    return grip_taken({units::Newtons{asked}, units::Newtons{given}, units::Newtons{given}});
  };
  CHECK(taken(150, 600) == 0.25);
  CHECK(taken(0.25, 0.5) == 0.5);
  CHECK(taken(-1, 0.5) == 0.0);
  for (const double none : {0.0, -600.0, testing::kNoNumber}) {
    CHECK(std::isnan(taken(150, none)));
  }
}

TEST_CASE("on 25 degrees a carrier needs a grip of 0.4663 whichever way it heads") {
  // sqrt(along^2 + lateral^2) = sin(beta), normal = cos(beta): mu >= tan(beta).
  CHECK(near(std::tan(25 * kRadian), 0.4663, 5e-5));
  for (const double heading_deg : {0.0, 40.0, 90.0, 140.0, 180.0, 220.0}) {
    const double grade = std::tan(25 * kRadian) * std::cos(heading_deg * kRadian);
    const double cross = std::tan(25 * kRadian) * std::sin(heading_deg * kRadian);
    RigOnSlope rig = solo_on_even_grip(std::tan(25 * kRadian));
    CHECK(near(share_of(judge_carrier_side_slip(rig.on(grade, cross).footing())), 1.0, 1e-12));
    RigOnSlope slippery = solo_on_even_grip(0.4662);
    CHECK(share_of(judge_carrier_side_slip(slippery.on(grade, cross).footing())) > 1.0);
    RigOnSlope rough = solo_on_even_grip(0.4664);
    CHECK(share_of(judge_carrier_side_slip(rough.on(grade, cross).footing())) < 1.0);
  }
}

TEST_CASE("grip along and across make an ellipse") {
  RigOnSlope rig = solo_on_even_grip(0.5);
  rig.grip.lateral = ForceRatio{0.25};
  rig.on(0.2, 0.1);
  const double along = 0.2 * std::sqrt(1.05) / std::sqrt(1.04) / 0.5;
  const double across = 0.1 / std::sqrt(1.04) / 0.25;
  CHECK(near(share_of(judge_carrier_side_slip(rig.footing())), std::hypot(along, across), 1e-12));
}

TEST_CASE("the trailer's tongue pulls the carrier across") {
  RigOnSlope rig = loaded_rig();
  rig.carrier = exactly(0, 0);
  rig.trailer = exactly(0, 0.2);
  const Finding finding = judge_carrier_side_slip(rig.footing());
  const double tongue = 40 * kGravity * 0.2 / std::sqrt(1.04);
  CHECK(near(testing::input_of(finding, "Y"), tongue, 1e-9));
  rig.trailer = exactly(0, 0);
  CHECK(share_of(judge_carrier_side_slip(rig.footing())) < share_of(finding));
}

TEST_CASE("a carrier that cannot climb the grade has no grip left across it") {
  RigOnSlope rig = loaded_rig();
  rig.on_degrees(20, 1);
  CHECK(share_of(judge_carrier_side_slip(rig.footing())) > 1.0);
  rig.grip.traction = ForceRatio{0};
  CHECK_FALSE(judge_carrier_side_slip(rig.footing()).share);
}

TEST_CASE("a trailer slips where the tangent across is over its grip, with nothing shifted") {
  RigOnSlope rig = testing::rig_without_shift();
  rig.grip.trailer_resistance = {ForceRatio{0}, ForceRatio{0}};
  rig.grip.trailer_start = ForceRatio{0};
  CHECK(near(share_of(judge_trailer_side_slip(rig.on(0, 0.3).footing())), 1.0, 1e-9));
  CHECK(near(share_of(judge_trailer_side_slip(rig.on(0, -0.15).footing())), 0.5, 1e-9));
}

TEST_CASE("load that a descent shifts on to the hitch is lost to the runners") {
  RigOnSlope rig = loaded_rig();
  rig.weighed.trailer.centre.up = units::Metres{1.2};
  const double level = share_of(judge_trailer_side_slip(rig.on(0, 0.1).footing()));
  CHECK(share_of(judge_trailer_side_slip(rig.on(-0.2, 0.1).footing())) > level);
}

TEST_CASE("without a trailer nothing of it slips") {
  RigOnSlope rig = loaded_rig().without_trailer();
  CHECK(judge_trailer_side_slip(rig.on(0, 5.0).footing()).share == 0.0);
}

}  // namespace rimehaul::passage
