// Intervals of load for which a leg is open: judged load by load, nothing taken as monotone.
#include <doctest/doctest.h>

#include <cmath>

#include "base/require.h"
#include "passage/demo_scene.h"
#include "passage/judge.h"

namespace rimehaul::passage {

namespace {

using snow::Wetness;
using testing::mid_morning;
using trails::LegId;
using units::Kilograms;

Scene climb_of(double per_cent) {
  testing::TestGround ground;
  ground.ground = testing::plane(0, per_cent / 100);
  return testing::scene_of(ground, testing::straight_trail(0));
}

bool open_with(const Scene& scene, rig::Rig rig, LoadPlace place, Kilograms load) {
  (place == LoadPlace::bed ? rig.load.bed : rig.load.towed) = load;
  const snow::ConstantSnow snow = testing::snow_of(Wetness::dry);
  return Judge{scene, rig, snow}.judge(LegId{0}, mid_morning()).verdict == Verdict::open;
}

std::vector<LoadInterval> loads(const Scene& scene, const rig::Rig& rig, LoadPlace place,
                                Kilograms step) {
  const snow::ConstantSnow snow = testing::snow_of(Wetness::dry);
  return open_loads(Judge{scene, rig, snow}, LegId{0}, place, step, mid_morning());
}

TEST_CASE("a sled may be loaded until the climb is too much, and not a step further") {
  const Scene scene = climb_of(3);
  const rig::Rig rig = testing::towing_rig();
  const auto found = loads(scene, rig, LoadPlace::towed, Kilograms{10});
  REQUIRE(found.size() == 1);
  CHECK(found[0].from == Kilograms{0});
  CHECK(found[0].to > Kilograms{0});
  REQUIRE(found[0].to < rig.trailer->payload_rating);
  CHECK(open_with(scene, rig, LoadPlace::towed, found[0].to));
  CHECK_FALSE(open_with(scene, rig, LoadPlace::towed, found[0].to + Kilograms{10}));
}

TEST_CASE("every load judged by itself says what the intervals say") {
  const Scene scene = climb_of(2);
  const rig::Rig rig = testing::towing_rig();
  for (const LoadPlace place : {LoadPlace::bed, LoadPlace::towed}) {
    const auto found = loads(scene, rig, place, Kilograms{35});
    const Kilograms rating =
        place == LoadPlace::bed ? rig.carrier.bed_rating : rig.trailer->payload_rating;
    for (Kilograms load{0}; load <= rating; load += Kilograms{35}) {
      bool in_an_interval = false;
      for (const LoadInterval& interval : found) {
        in_an_interval = in_an_interval || (interval.from <= load && load <= interval.to);
      }
      CAPTURE(load.value());
      CHECK(open_with(scene, rig, place, load) == in_an_interval);
    }
  }
}

TEST_CASE("the last load tried is the rating itself, whatever the step") {
  Scene scene = climb_of(0);
  scene.rules.allowed_share = 1.0;
  scene.rules.driver_levels[0].allowed_share = 1.0;
  rig::Rig rig = testing::solo_rig();
  rig.carrier.bed_rating = Kilograms{100};
  const auto found = loads(scene, rig, LoadPlace::bed, Kilograms{30});
  REQUIRE(found.size() == 1);
  CHECK(found[0].from == Kilograms{0});
  CHECK(found[0].to == Kilograms{100});
}

TEST_CASE("what closes a leg at any load leaves no interval") {
  const Scene scene = climb_of(60);
  CHECK(loads(scene, testing::towing_rig(), LoadPlace::towed, Kilograms{50}).empty());
  CHECK(loads(scene, testing::solo_rig(), LoadPlace::bed, Kilograms{50}).empty());
}

TEST_CASE("there is no towed load without a trailer, and no steps without a size") {
  const Scene scene = climb_of(0);
  CHECK(loads(scene, testing::solo_rig(), LoadPlace::towed, Kilograms{50}).empty());
  CHECK_THROWS_AS(loads(scene, testing::solo_rig(), LoadPlace::bed, Kilograms{0}), base::OurFault);
  CHECK_THROWS_AS(loads(scene, testing::solo_rig(), LoadPlace::bed, Kilograms{std::nan("")}),
                  base::OurFault);
}

TEST_CASE("a bed whose rating is no number can be loaded with nothing") {
  const Scene scene = climb_of(0);
  rig::Rig rig = testing::solo_rig();
  rig.carrier.bed_rating = Kilograms{std::nan("")};
  CHECK(loads(scene, rig, LoadPlace::bed, Kilograms{50}).empty());
}

}  // namespace

}  // namespace rimehaul::passage
