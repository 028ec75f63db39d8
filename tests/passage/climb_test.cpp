// Climb traction and engine power, against closed forms of gradeability.
#include <doctest/doctest.h>

#include <cmath>

#include "near.h"
#include "rig_on_slope.h"
#include "snow/built_in_grip.h"
#include "snow/crrel.h"

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

namespace {

/// The vehicle of Table A5 of CRREL Report 95-1 on the level: 104092.4 N on tracks that press with
/// 51.2202 kPa, with the built-in grip of a surface.
RigOnSlope vehicle_of_table_a5(snow::Surface surface) {
  RigOnSlope stand = loaded_rig().without_trailer();
  stand.weighed.carrier.mass = units::Kilograms{104092.4 / kGravity};
  stand.rig.carrier.track_weight_share = 1.0;
  stand.grip = snow::built_in_grip({snow::Wetness::dry, surface}, units::Kilopascals{51.2202});
  return stand.on(0.0, 0.0);
}

double drawbar_of(const Finding& finding) {
  return finding.capacity.value - finding.demand.value;
}

}  // namespace

TEST_CASE("Table A5: a climb is judged with the report's traction, resistance and drawbar pull") {
  // Richmond, Shoop and Blaisdell (1995), prepared snow over a trail, then over a road.
  RigOnSlope stand = vehicle_of_table_a5(snow::Surface::groomed);
  stand.grip.carrier_resistance.high = snow::kHardGroundResistance.high;
  const Finding trail = judge_climb_traction(stand.footing());
  CHECK(near(trail.capacity.value, 29692.1, 0.06));
  CHECK(near(trail.demand.value, 5464.8, 0.06));
  CHECK(near(drawbar_of(trail), 24227.2, 0.1));
  stand.grip.carrier_resistance.high = snow::kHardGroundResistance.low;
  const Finding road = judge_climb_traction(stand.footing());
  CHECK(near(road.demand.value, 3903.5, 0.06));
  CHECK(near(drawbar_of(road), 25788.6, 0.1));
  // 12 cm of snow over ice: the report's own resistance, 5275.1 N.
  stand = vehicle_of_table_a5(snow::Surface::ice);
  stand.grip.carrier_resistance.high = units::ForceRatio{5275.1 / 104092.4};
  const Finding ice = judge_climb_traction(stand.footing());
  CHECK(near(ice.capacity.value, 16741.3, 0.06));
  CHECK(near(drawbar_of(ice), 11466.2, 0.1));
}

TEST_CASE("Table A5: on 30 degrees of undisturbed snow less is left than the report says") {
  // Traction is taken at the pressure of level ground, where the report takes that of the slope;
  // resistance falls with what presses (Wong 2008), where the report keeps it whole.
  RigOnSlope stand = vehicle_of_table_a5(snow::Surface::groomed);
  const units::Kilopascals pressure{51.2202};
  stand.grip.traction = units::ForceRatio{snow::traction_on_undisturbed_snow(pressure) / pressure};
  stand.grip.carrier_resistance.high = units::ForceRatio{5585.4 / 104092.4};
  const Finding finding = judge_climb_traction(stand.on_degrees(30, 0).footing());
  const double cosine = std::sqrt(0.75);
  CHECK(near(finding.capacity.value, 44134.3 * cosine, 0.2));
  CHECK(finding.capacity.value <= 39207.1);
  CHECK(near(finding.demand.value, 57631.6 - 5585.4 * (1 - cosine), 0.1));
  CHECK(drawbar_of(finding) < -18424.5);
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
