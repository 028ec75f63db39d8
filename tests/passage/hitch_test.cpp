// Load on the hitch, against the statics of the trailer as a free body.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "near.h"
#include "rig_on_slope.h"

namespace rimehaul::passage {

namespace {

using testing::exactly;
using testing::kNoNumber;
using testing::loaded_rig;
using testing::near;
using testing::RigOnSlope;
using testing::share_of;
using units::ForceRatio;
using units::kGravity;

/// Load on the hitch by moments of forces about the middle of the contact: each force (ahead, up)
/// at (x, z). Solved for the hitch's upward force V on the trailer, in newtons.
double hitch_load_by_moments(double grade_deg, double drag) {
  const double theta = grade_deg * 0.017453292519943295;
  const double weight = 400 * kGravity;
  const double centre_x = 2.0 * 40.0 / 400.0;  // so that 40 kg rest on a hitch 2 m ahead
  const double centre_z = 0.5;
  const double hitch_x = 2.0;
  const double hitch_z = 0.4;
  const double pull = weight * std::sin(theta) + drag * weight * std::cos(theta);
  // moment of (fx, fz) at (x, z), positive nose-up: x fz - z fx
  const double gravity =
      centre_x * -weight * std::cos(theta) - centre_z * -weight * std::sin(theta);
  const double hitch_level = -hitch_z * pull;
  return -(gravity + hitch_level) / hitch_x;
}

RigOnSlope without_drag() {
  RigOnSlope rig = loaded_rig();
  rig.grip.trailer_resistance = {ForceRatio{0}, ForceRatio{0}};
  rig.grip.trailer_start = ForceRatio{0};
  return rig;
}

}  // namespace

TEST_CASE("on the level the hitch carries the tongue's mass") {
  const Finding finding = judge_hitch_vertical(without_drag().footing());
  CHECK(near(finding.demand.value, 40.0, 1e-12));
  CHECK(finding.capacity.value == 120.0);
  CHECK(near(share_of(finding), 40.0 / 120.0, 1e-12));
}

TEST_CASE("on a grade the hitch carries what the moments of the trailer leave to it") {
  for (const double grade_deg : {-25.0, -10.0, 0.0, 10.0, 25.0}) {
    for (const double drag : {0.0, 0.1}) {
      RigOnSlope rig = loaded_rig();
      rig.grip.trailer_resistance = {ForceRatio{0}, ForceRatio{drag}};
      rig.grip.trailer_start = ForceRatio{drag};
      rig.on_degrees(grade_deg, 0);
      CHECK(near(judge_hitch_vertical(rig.footing()).demand.value * kGravity,
                 hitch_load_by_moments(grade_deg, drag), 1e-9));
    }
  }
}

TEST_CASE("a trailer with a high load lifts the hitch on a climb, and lifting counts as load") {
  RigOnSlope rig = without_drag();
  rig.weighed.trailer.centre.up = units::Metres{1.4};
  rig.on_degrees(25, 0);
  const double theta = 25 * 0.017453292519943295;
  const double lift = 400 * std::sin(theta) * 1.0 / 2.0 - 40 * std::cos(theta);
  REQUIRE(lift > 0.0);
  CHECK(near(judge_hitch_vertical(rig.footing()).demand.value, lift, 1e-9));
}

TEST_CASE("more on the tongue than the trailer weighs, or no drawbar, closes") {
  RigOnSlope rig = without_drag();
  rig.weighed.tongue_mass = units::Kilograms{401};
  CHECK(stand_of(judge_hitch_vertical(rig.footing()), 1.0) == Stand::missing);
  rig = without_drag();
  rig.rig.trailer->drawbar_length = units::Metres{0};
  CHECK(stand_of(judge_hitch_vertical(rig.footing()), 1.0) == Stand::missing);
  rig = without_drag();
  rig.rig.carrier.hitch_vertical_rating = units::Kilograms{0};
  CHECK(stand_of(judge_hitch_vertical(rig.footing()), 1.0) == Stand::refused);
  rig = without_drag();
  rig.weighed.trailer.mass = units::Kilograms{-400};
  rig.weighed.tongue_mass = units::Kilograms{-40};
  CHECK(stand_of(judge_hitch_vertical(rig.footing()), 1.0) == Stand::missing);
}

TEST_CASE("without a trailer nothing hangs on the hitch, whatever its rating") {
  RigOnSlope rig = loaded_rig().without_trailer();
  rig.rig.carrier.hitch_vertical_rating = units::Kilograms{0};
  rig.on_degrees(20, 5);
  const Finding finding = judge_hitch_vertical(rig.footing());
  CHECK(finding.check == Check::hitch_vertical);
  CHECK(stand_of(finding, 0.0) == Stand::passes);
  CHECK(finding.inputs.all().empty());
}

}  // namespace rimehaul::passage
