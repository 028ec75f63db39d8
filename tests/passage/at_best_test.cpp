// What the judge answers for before it looks at the ground, held against what it then judges.
#include <doctest/doctest.h>

#include "near.h"
#include "passage/demo_scene.h"
#include "passage/judge.h"

namespace rimehaul::passage {

using testing::near;
using trails::LegId;

TEST_CASE("no leg is judged quicker or thriftier than was answered for without looking") {
  const Scene scene = testing::scene_of({.ground = testing::rolling()}, testing::two_ways());
  for (const rig::Rig& rig : {testing::solo_rig(), testing::towing_rig()}) {
    for (const auto wetness : {snow::Wetness::dry, snow::Wetness::moist}) {
      const snow::ConstantSnow snow = testing::snow_of(wetness);
      const Judge judge{scene, rig, snow};
      for (std::uint32_t leg = 0; leg < scene.network.legs.size(); ++leg) {
        CAPTURE(leg);
        const LegAtBest best = judge.at_best(LegId{leg});
        const LegJudgement judged = judge.judge(LegId{leg}, testing::mid_morning());
        CHECK(judged.time >= best.time);
        CHECK(judged.fuel >= best.fuel);
        CHECK(best.time > units::Seconds{0});
        CHECK(best.fuel > units::Litres{0});
      }
    }
  }
}

TEST_CASE("at best a leg takes its length at top speed, and fuel at idle for as long") {
  const Scene scene =
      testing::scene_of({.ground = testing::rolling()}, testing::straight_trail(/*bearing_deg=*/0));
  rig::Rig rig = testing::solo_rig();
  rig.carrier.top_speed = units::MetresPerSecond{5};
  rig.carrier.idle_consumption = units::LitresPerHour{3.6};
  const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry);
  const LegAtBest best = Judge{scene, rig, snow}.at_best(LegId{0});
  const double length_m = scene.network.legs[0].line.length().value();
  CHECK(near(best.time.value(), length_m / 5.0, 1e-6));
  CHECK(near(best.fuel.value(), length_m / 5.0 / 1000.0, 1e-6));
}

}  // namespace rimehaul::passage
