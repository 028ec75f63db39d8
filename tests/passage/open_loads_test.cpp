// Intervals of load for which a leg is open: judged load by load, nothing taken as monotone.
#include <doctest/doctest.h>

#include <cmath>

#include "base/require.h"
#include "passage/demo_scene.h"
#include "passage/open_loads.h"

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
  const Judge judge{scene, rig, snow};
  return open_loads(rig, {place, step}, LegOpenWith{judge, LegId{0}, mid_morning()});
}

/// A rig with so much room on bed and sled.
rig::Rig roomy_rig(Kilograms bed, Kilograms towed) {
  rig::Rig rig = testing::towing_rig();
  rig.carrier.bed_rating = bed;
  rig.trailer->payload_rating = towed;
  return rig;
}

TEST_CASE("a sled may be loaded until the climb is too much, and not a kilogram further") {
  const Scene scene = climb_of(3);
  const rig::Rig rig = testing::towing_rig();
  const auto found = loads(scene, rig, LoadPlace::towed, Kilograms{10});
  REQUIRE(found.size() == 1);
  CHECK(found[0].from == Kilograms{0});
  CHECK(found[0].to > Kilograms{0});
  REQUIRE(found[0].to < rig.trailer->payload_rating);
  CHECK(open_with(scene, rig, LoadPlace::towed, found[0].to));
  CHECK_FALSE(open_with(scene, rig, LoadPlace::towed, found[0].to + Kilograms{1}));
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

TEST_CASE("the last load tried is the last whole kilogram of the rating, whatever the step") {
  Scene scene = climb_of(0);
  scene.rules.allowed_share = 1.0;
  scene.rules.driver_levels[0].allowed_share = 1.0;
  rig::Rig rig = testing::solo_rig();
  rig.carrier.bed_rating = Kilograms{100};
  const auto found = loads(scene, rig, LoadPlace::bed, Kilograms{30});
  REQUIRE(found.size() == 1);
  CHECK(found[0].from == Kilograms{0});
  CHECK(found[0].to == Kilograms{100});
  rig.carrier.bed_rating = Kilograms{100.9};
  CHECK(loads(scene, rig, LoadPlace::bed, Kilograms{30}).at(0).to == Kilograms{100});
}

TEST_CASE("ends are found to the kilogram, on both sides, and one kilogram further is closed") {
  const rig::Rig rig = roomy_rig(Kilograms{200}, Kilograms{0});
  for (const auto& [from, to] : {std::pair{40, 137}, std::pair{1, 26}, std::pair{100, 199}}) {
    const OpenIf between{[from = from, to = to](const rig::Rig& other) {
      return from <= other.load.bed.value() && other.load.bed.value() <= to;
    }};
    CHECK(open_loads(rig, {LoadPlace::bed, Kilograms{25}}, between) ==
          std::vector<LoadInterval>{{Kilograms{1.0 * from}, Kilograms{1.0 * to}}});
  }
}

TEST_CASE("limits that are no whole kilogram are rounded inwards") {
  const OpenIf between{[](const rig::Rig& other) {
    return 39.2 <= other.load.bed.value() && other.load.bed.value() <= 137.9;
  }};
  CHECK(open_loads(roomy_rig(Kilograms{200}, Kilograms{0}), {}, between) ==
        std::vector<LoadInterval>{{Kilograms{40}, Kilograms{137}}});
}

TEST_CASE("two islands of load stay two, and no load between them is told open") {
  const OpenIf islands{[](const rig::Rig& other) {
    const double load = other.load.bed.value();
    return load <= 30 || (80 <= load && load <= 110);
  }};
  CHECK(open_loads(roomy_rig(Kilograms{200}, Kilograms{0}), {}, islands) ==
        std::vector<LoadInterval>{{Kilograms{0}, Kilograms{30}}, {Kilograms{80}, Kilograms{110}}});
}

TEST_CASE("a carrier that pulls a heavy sled up needs ballast: too little load is closed too") {
  // Grip rises with the carrier's own weight, the sled's pull does not.
  const Scene scene = climb_of(2.5);
  const rig::Rig rig = testing::towing_rig();
  const auto found = loads(scene, rig, LoadPlace::bed, Kilograms{25});
  REQUIRE(found.size() == 1);
  CHECK(found[0].from > Kilograms{50});
  CHECK(found[0].to == Kilograms{175});  // 0.7 of the bed's 250
  CHECK_FALSE(open_with(scene, rig, LoadPlace::bed, Kilograms{0}));
  CHECK_FALSE(open_with(scene, rig, LoadPlace::bed, found[0].from - Kilograms{1}));
  CHECK(open_with(scene, rig, LoadPlace::bed, found[0].from));
  CHECK(open_with(scene, rig, LoadPlace::bed, found[0].to));
  CHECK_FALSE(open_with(scene, rig, LoadPlace::bed, found[0].to + Kilograms{1}));
}

TEST_CASE("where neither load alone opens, a pair of intervals is told, all of whose pairs open") {
  rig::Rig rig = roomy_rig(Kilograms{200}, Kilograms{200});
  rig.load.bed = Kilograms{200};
  rig.load.towed = Kilograms{200};
  const OpenIf light{[](const rig::Rig& other) {
    return other.load.bed + other.load.towed <= Kilograms{150} && other.load.bed <= Kilograms{100};
  }};
  const OpenLoads opens = loads_that_open(rig, light);
  CHECK(opens.bed.empty());
  CHECK(opens.towed.empty());
  // In steps of 50 kg: 2 bed loads by 3 towed loads are as many as 3 by 2, and more than 1 by 4.
  CHECK(opens.both ==
        std::vector<LoadPair>{{{Kilograms{0}, Kilograms{50}}, {Kilograms{0}, Kilograms{100}}}});
  rig.load.bed = Kilograms{50};
  const OpenLoads towed_alone = loads_that_open(rig, light);
  CHECK(towed_alone.towed == std::vector<LoadInterval>{{Kilograms{0}, Kilograms{100}}});
  CHECK(towed_alone.both.empty());
}

TEST_CASE("nothing open is told as nothing, and a verdict changes only where loads open") {
  const OpenLoads none =
      loads_that_open(testing::towing_rig(), OpenIf{[](const rig::Rig&) { return false; }});
  CHECK_FALSE(none.any());
  CHECK(verdict_with_loads(Verdict::closed, none) == Verdict::closed);
  const OpenLoads some{{{Kilograms{0}, Kilograms{1}}}, {}, {}};
  CHECK(verdict_with_loads(Verdict::closed, some) == Verdict::restricted);
  CHECK(verdict_with_loads(Verdict::restricted, none) == Verdict::restricted);
  CHECK(verdict_with_loads(Verdict::open, some) == Verdict::open);
}

TEST_CASE("checks that are said not to depend on the load come out alike with every load") {
  const Scene scene = testing::scene_of({testing::rolling()}, testing::two_ways());
  const snow::ConstantSnow snow = testing::snow_of(Wetness::wet);
  const rig::Rig rig = testing::towing_rig();
  int compared = 0;
  for (std::uint32_t leg = 0; leg < scene.network.legs.size(); ++leg) {
    const LegJudgement before = Judge{scene, rig, snow}.judge(LegId{leg}, mid_morning());
    rig::Rig other = rig;
    for (const double load : {0.0, 90.0, 250.0}) {
      other.load.bed = Kilograms{load};
      other.load.towed = Kilograms{300 - load};
      const LegJudgement after = Judge{scene, other, snow}.judge(LegId{leg}, mid_morning());
      REQUIRE(before.findings.size() == after.findings.size());
      for (std::size_t i = 0; i < before.findings.size(); ++i) {
        if (!depends_on_load(before.findings[i].check)) {
          CHECK(before.findings[i].share == after.findings[i].share);
          CHECK(before.findings[i].missing == after.findings[i].missing);
          CHECK(before.findings[i].refused == after.findings[i].refused);
          ++compared;
        }
      }
    }
  }
  CHECK(compared > 100);
}

TEST_CASE("no load is tried against a check that does not read it") {
  Finding steep =
      compare(Check::climb_traction, {2, units::Unit::number}, {1, units::Unit::number});
  CHECK(load_may_open({steep, kept(Check::direction)}, 0.7));
  Finding asks = kept(Check::avalanche);
  asks.asks = "to drive too near";
  CHECK(load_may_open({steep, asks}, 0.7));
  CHECK_FALSE(load_may_open({steep, refusal(Check::direction, "one-way")}, 0.7));
  CHECK_FALSE(load_may_open({steep, unknown(Check::visibility, "how far one sees")}, 0.7));
}

TEST_CASE("one place of a leg opens with the loads with which all that is found there passes") {
  const Scene scene = climb_of(3);
  rig::Rig rig = testing::towing_rig();
  rig.load.towed = Kilograms{290};
  const snow::ConstantSnow snow = testing::snow_of(Wetness::dry);
  const Judge judge{scene, rig, snow};
  const Stretch stretch = judge.stretch_of(LegId{0});
  const auto ground = footfalls(scene, stretch.line, rig, units::Metres{1});
  const PlaceOpenWith open{judge, {stretch, ground, 10}, mid_morning()};
  CHECK_FALSE(open(rig));
  const auto found = open_loads(rig, {LoadPlace::towed, Kilograms{25}}, open);
  REQUIRE(found.size() == 1);
  for (const double over : {0.0, 1.0}) {
    rig::Rig other = rig;
    other.load.towed = found[0].to + Kilograms{over};
    const Judge with_other{scene, other, snow};
    const HoursOnLeg hours = with_other.judge(LegId{0}, mid_morning()).hours;
    std::vector<Finding> all;
    for (const PlaceFinding& here : with_other.findings_at(stretch, ground[10], hours)) {
      all.push_back(here.finding);
    }
    CHECK((verdict_of(all, 0.7) == Verdict::open) == (over == 0.0));
  }
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

TEST_CASE("a rating of up to 10 000 steps is judged load by load, a larger one not at all") {
  const OpenIf always{[](const rig::Rig&) { return true; }};
  CHECK(open_loads(roomy_rig(Kilograms{250'000}, Kilograms{0}), {}, always) ==
        std::vector<LoadInterval>{{Kilograms{0}, Kilograms{250'000}}});
  CHECK(open_loads(roomy_rig(Kilograms{250'001}, Kilograms{0}), {}, always).empty());
}

TEST_CASE("halving a gap ends, too, where a step lies a hair beside a whole kilogram") {
  const Kilograms step{std::nextafter(4.0, 0.0)};
  const OpenIf below{[](const rig::Rig& other) { return other.load.bed < Kilograms{4}; }};
  CHECK(open_loads(roomy_rig(Kilograms{4}, Kilograms{0}), {LoadPlace::bed, step}, below) ==
        std::vector<LoadInterval>{{Kilograms{0}, step}});
}

TEST_CASE("of the towed loads that open with a bed load the longest run is told, not the last") {
  rig::Rig rig = roomy_rig(Kilograms{200}, Kilograms{200});
  rig.load.bed = Kilograms{200};
  rig.load.towed = Kilograms{150};
  const OpenIf gap{[](const rig::Rig& other) {
    return other.load.bed == Kilograms{50} && other.load.towed != Kilograms{150};
  }};
  const OpenLoads opens = loads_that_open(rig, gap);
  // Towed 0, 50 and 100 in a row, and 200 by itself.
  CHECK(opens.both ==
        std::vector<LoadPair>{{{Kilograms{50}, Kilograms{50}}, {Kilograms{0}, Kilograms{100}}}});
  CHECK(opens.any());
  CHECK(verdict_with_loads(Verdict::closed, opens) == Verdict::restricted);
}

TEST_CASE("a single pair of loads that opens is told") {
  rig::Rig rig = roomy_rig(Kilograms{200}, Kilograms{200});
  rig.load.bed = Kilograms{200};
  rig.load.towed = Kilograms{200};
  const OpenIf one{[](const rig::Rig& other) {
    return other.load.bed == Kilograms{50} && other.load.towed == Kilograms{100};
  }};
  CHECK(loads_that_open(rig, one).both ==
        std::vector<LoadPair>{{{Kilograms{50}, Kilograms{50}}, {Kilograms{100}, Kilograms{100}}}});
}

TEST_CASE("of pairs of loads that are as many the lighter bed is told, and each load counts once") {
  rig::Rig rig = roomy_rig(Kilograms{200}, Kilograms{200});
  rig.load.bed = Kilograms{200};
  rig.load.towed = Kilograms{100};
  const OpenIf two_and_two{[](const rig::Rig& other) {
    const Kilograms bed = other.load.bed;
    const Kilograms towed = other.load.towed;
    return (bed == Kilograms{0} && towed <= Kilograms{50}) ||
           (bed == Kilograms{100} && towed >= Kilograms{150});
  }};
  // Towed 0 and 50 with an empty bed, 150 and 200 with 100 kg on it.
  CHECK(loads_that_open(rig, two_and_two).both ==
        std::vector<LoadPair>{{{Kilograms{0}, Kilograms{0}}, {Kilograms{0}, Kilograms{50}}}});
}

TEST_CASE("no pair of loads is told where bed or sled cannot be judged, or there is no sled") {
  rig::Rig rig = roomy_rig(Kilograms{200}, Kilograms{200});
  rig.load.bed = Kilograms{200};
  rig.load.towed = Kilograms{200};
  const OpenIf light{[](const rig::Rig& other) {
    return other.load.bed <= Kilograms{50} && other.load.towed <= Kilograms{50};
  }};
  REQUIRE(loads_that_open(rig, light).both.size() == 1);
  for (const double bad : {std::nan(""), -1.0}) {
    rig::Rig other = rig;
    other.carrier.bed_rating = Kilograms{bad};
    CHECK_FALSE(loads_that_open(other, light).any());
    other = rig;
    other.trailer->payload_rating = Kilograms{bad};
    CHECK_FALSE(loads_that_open(other, light).any());
  }
  rig.trailer.reset();
  CHECK_FALSE(loads_that_open(rig, light).any());
}

TEST_CASE("intervals and pairs of loads are the same only if all of their ends are") {
  const LoadInterval interval{Kilograms{0}, Kilograms{50}};
  CHECK(interval == LoadInterval{Kilograms{0}, Kilograms{50}});
  CHECK_FALSE(interval == LoadInterval{Kilograms{1}, Kilograms{50}});
  CHECK_FALSE(interval == LoadInterval{Kilograms{0}, Kilograms{49}});
  const LoadInterval other{Kilograms{0}, Kilograms{49}};
  const LoadPair pair{interval, interval};
  CHECK(pair == LoadPair{interval, interval});
  CHECK_FALSE(pair == LoadPair{other, interval});
  CHECK_FALSE(pair == LoadPair{interval, other});
}

}  // namespace

}  // namespace rimehaul::passage
