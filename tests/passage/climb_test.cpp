// Climb traction and engine power, against closed forms of gradeability.
#include <doctest/doctest.h>

#include <cmath>

#include "near.h"
#include "rig_on_slope.h"

namespace rimehaul::passage {

namespace {

using testing::kNoNumber;
using testing::loaded_rig;
using testing::near;
using testing::rig_without_shift;
using testing::RigOnSlope;
using testing::share_of;
using units::kGravity;

double share_at(RigOnSlope stand, double grade_deg) {
  return share_of(judge_climb_traction(stand.on_degrees(grade_deg, 0).footing()));
}

}  // namespace

TEST_CASE("a rig of 700 and 400 kg climbs 13.101 degrees at a grip of 0.45, solo 21.801") {
  // Gradeability (Wong, Theory of Ground Vehicles): tan = ((mu - fv) mv - ft mt) / (mv + mt).
  const double towing = ((0.45 - 0.05) * 700 - 0.06 * 400) / 1100;
  const double solo = 0.45 - 0.05;
  CHECK(near(std::atan(towing) * 57.29577951308232, 13.101, 5e-4));
  CHECK(near(std::atan(solo) * 57.29577951308232, 21.801, 5e-4));

  RigOnSlope stand = rig_without_shift();
  CHECK(near(share_of(judge_climb_traction(stand.on(towing, 0).footing())), 1.0, 1e-12));
  CHECK(share_at(stand, 13.100) < 1.0);
  CHECK(share_at(stand, 13.102) > 1.0);
  stand.without_trailer();
  CHECK(near(share_of(judge_climb_traction(stand.on(solo, 0).footing())), 1.0, 1e-12));
  CHECK(share_at(stand, 21.800) < 1.0);
  CHECK(share_at(stand, 21.802) > 1.0);
}

TEST_CASE("starting again on the hill counts where runners that have stood drag more") {
  RigOnSlope stand = rig_without_shift();
  stand.grip.trailer_start = units::ForceRatio{0.30};
  const double limit = ((0.45 - 0.05) * 700 - 0.30 * 400) / 1100;
  CHECK(near(share_of(judge_climb_traction(stand.on(limit, 0).footing())), 1.0, 1e-12));
}

TEST_CASE("weight on skis gives no traction") {
  RigOnSlope stand = rig_without_shift().without_trailer();
  stand.rig.carrier.track_weight_share = 0.6;
  const double limit = 0.45 * 0.6 - 0.05;
  CHECK(near(share_of(judge_climb_traction(stand.on(limit, 0).footing())), 1.0, 1e-12));
}

TEST_CASE("a cross-slope takes grip from a climb") {
  const RigOnSlope stand = loaded_rig();
  CHECK(share_of(judge_climb_traction(RigOnSlope{stand}.on_degrees(8, 15).footing())) >
        share_of(judge_climb_traction(RigOnSlope{stand}.on_degrees(8, 0).footing())));
}

TEST_CASE("a trailer that lifts the hitch on a climb takes traction away") {
  RigOnSlope low = rig_without_shift();
  RigOnSlope high = low;
  high.weighed.trailer.centre.up = units::Metres{1.0};
  // U = g m_t sin h / L with nothing on the tongue.
  const double sine = std::sin(std::atan(0.1));
  const double uplift = kGravity * 400 * sine * 1.0 / 2.0;
  const Finding lifted = judge_climb_traction(high.on(0.1, 0).footing());
  const Finding level = judge_climb_traction(low.on(0.1, 0).footing());
  CHECK(near(level.capacity.value - lifted.capacity.value, 0.45 * uplift, 1e-6));
}

TEST_CASE("no grip, or none left, refuses a climb, and unknown grip closes it") {
  RigOnSlope stand = loaded_rig();
  stand.on_degrees(5, 0);
  stand.grip.traction = units::ForceRatio{0.0};
  CHECK(stand_of(judge_climb_traction(stand.footing()), 1.0) == Stand::refused);
}

TEST_CASE("power at walking pace is force times pace over the driveline's efficiency") {
  // 1100 kg on a 10 % grade against R = 0.08: 1932.08 N by W sin + R W cos, as in the energy
  // balance of motion on a grade; at 1 m/s and 0.65, 2972.4 W.
  RigOnSlope stand = rig_without_shift().without_trailer();
  stand.weighed.carrier.mass = units::Kilograms{1100};
  stand.grip.carrier_resistance.high = units::ForceRatio{0.08};
  const double cosine = std::cos(std::atan(0.1));
  const double force = 1100 * kGravity * (0.1 * cosine + 0.08 * cosine);
  CHECK(near(force, 1932.08, 0.01));
  const Finding finding = judge_engine_power(stand.on(0.1, 0).footing());
  CHECK(near(finding.demand.value, force / 0.65, 1e-9));
  CHECK(near(share_of(finding), force / 0.65 / 40'000, 1e-12));
}

TEST_CASE("an efficiency over one, or none, closes the power check") {
  RigOnSlope stand = loaded_rig();
  for (const double bad : {0.0, -0.5, 1.0001, kNoNumber}) {
    stand.rig.carrier.driveline_efficiency = bad;
    CHECK(stand_of(judge_engine_power(stand.footing()), 1.0) == Stand::missing);
  }
  stand.rig.carrier.driveline_efficiency = 1.0;
  CHECK(stand_of(judge_engine_power(stand.footing()), 1.0) == Stand::passes);
}

}  // namespace rimehaul::passage
