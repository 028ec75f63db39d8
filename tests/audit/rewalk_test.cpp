// The re-walk: an honest promise holds, and whatever is spoilt in it is found.
#include "audit/rewalk.h"

#include <doctest/doctest.h>

#include <cmath>
#include <functional>
#include <limits>

#include "audit/promise.h"
#include "near.h"
#include "passage/demo_scene.h"

using namespace rimehaul;
using namespace rimehaul::testing;
using audit::PromisedLeg;
using audit::rewalk;
using trails::LegId;
using Promise = std::vector<PromisedLeg>;

namespace {

/// A site, a rig and its judge, kept where they can point to each other.
struct Site {
  Site(passage::Scene of_scene, rig::Rig of_rig)
      : scene{std::move(of_scene)}, rig{std::move(of_rig)}, judge{scene, rig, snow} {}
  Site(const Site&) = delete;
  Site& operator=(const Site&) = delete;

  [[nodiscard]] Promise promise(const std::vector<std::uint32_t>& legs) const {
    std::vector<LegId> ids;
    for (const std::uint32_t leg : legs) {
      ids.push_back(LegId{leg});
    }
    return promise_along(judge, ids, mid_morning());
  }
  [[nodiscard]] audit::Rewalk walk(const Promise& promised) const {
    return rewalk(scene, rig, snow, promised);
  }

  passage::Scene scene;
  rig::Rig rig;
  snow::ConstantSnow snow = snow_of(snow::Wetness::dry);
  passage::Judge judge;
};

passage::Scene two_ways_scene(const TestTrails& all = two_ways()) {
  return scene_of({.ground = rolling()}, all);
}

TestTrails with_mark(trails::Mark mark) {
  TestTrails all = straight_trail(0);
  all.marks = {std::move(mark)};
  return all;
}

/// Whether some discrepancy of that leg has the words in it.
bool says(const audit::Rewalk& walked, std::size_t leg, const std::string& words) {
  return std::ranges::any_of(walked.discrepancies, [&](const audit::Discrepancy& one) {
    return one.leg == leg && one.what.find(words) != std::string::npos;
  });
}

/// Level ground with a trench across the trail from 0 north, so steep that nothing drives it.
Surface trench() {
  return [](double /*east_m*/, double north_m) {
    return std::abs(north_m - 150.0) < 8.0 ? 980.0 : 1000.0;
  };
}

trails::Mark bridge_over_trench() {
  return {.name = "Trench Bridge",
          .kind = trails::MarkKind::bridge,
          .trail = "Straight",
          .span = {units::Metres{125}, units::Metres{175}},
          .survey = trails::Survey{.steepest_grade = units::Slope::from_percent(1),
                                   .steepest_cross = units::Slope::from_percent(1),
                                   .standard_deviation = units::Slope::from_percent(0.2),
                                   .surveyed = units::Instant{1'700'000'000},
                                   .inspected = mid_morning()},
          .most_mass = units::Kilograms{3000},
          .room = {}};
}

}  // namespace

TEST_CASE("an honest promise holds, metre by metre, with and without a trailer") {
  for (const rig::Rig& rig : {solo_rig(), towing_rig()}) {
    CAPTURE(rig.name);
    const Site site{two_ways_scene(), rig};
    for (const std::vector<std::uint32_t>& legs : std::vector<std::vector<std::uint32_t>>{
             {0, 2}, {3, 1}, {4, 6}, {7, 5}, {4, 10}, {11, 9}}) {
      const Promise promised = site.promise(legs);
      const audit::Rewalk walked = site.walk(promised);
      for (const audit::Discrepancy& one : walked.discrepancies) {
        CHECK_MESSAGE(false, legs[0] << " leg " << one.leg << ": " << one.what);
      }
      CHECK(walked.worst_share > 0.2);
      CHECK(walked.worst_share <= std::max(promised[0].share, promised[1].share) + 1e-9);
      CHECK(walked.places_judged > 350);
    }
  }
}

TEST_CASE("speed, time and fuel of every leg are promises too, the last leg's like the others'") {
  // On a plane the bounds are tight, so a thousandth too much is found.
  const Site site{scene_of({.ground = plane(0.03, -0.04)}, straight_trail(30)), towing_rig()};
  const Promise honest = site.promise({0});
  REQUIRE(site.walk(honest).discrepancies.empty());
  const auto spoilt = [&](const std::function<void(PromisedLeg&)>& spoil) {
    Promise promise = honest;
    spoil(promise.back());
    return site.walk(promise);
  };
  CHECK(says(spoilt([](PromisedLeg& leg) { leg.speed = leg.speed * 1.001; }), 0,
             "m/s may be driven, promised"));
  CHECK(says(spoilt([](PromisedLeg& leg) { leg.time = leg.time * 0.999; }), 0, "time comes to"));
  CHECK(says(spoilt([](PromisedLeg& leg) { leg.fuel = leg.fuel * 0.999; }), 0, "fuel comes to"));
  const double none = std::numeric_limits<double>::quiet_NaN();
  for (const double number : {none, 0.0, -1.0}) {
    CHECK(says(spoilt([&](PromisedLeg& leg) { leg.speed = units::MetresPerSecond{number}; }), 0,
               "may be driven"));
    CHECK(says(spoilt([&](PromisedLeg& leg) { leg.time = units::Seconds{number}; }), 0, "time"));
    CHECK(says(spoilt([&](PromisedLeg& leg) { leg.fuel = units::Litres{number}; }), 0, "fuel"));
  }
}

TEST_CASE("a leg promised slower than it may be driven holds when its time and fuel are told so") {
  const Site site{scene_of({.ground = plane(0.03, -0.04)}, straight_trail(30)), solo_rig()};
  Promise promise = site.promise({0});
  promise[0].speed = promise[0].speed / 2.0;
  // Twice as long at half the speed: the engine idles or works no less for it.
  CHECK(says(site.walk(promise), 0, "time comes to"));
  promise[0].time = promise[0].time * 2.0 + units::Seconds{1e-6};
  promise[0].fuel = promise[0].fuel * 2.0;
  CHECK(site.walk(promise).discrepancies.empty());
}

TEST_CASE("turning back holds where there is room and is refused where there is none") {
  const Site site{two_ways_scene(), solo_rig()};
  CHECK(site.walk(site.promise({4, 10, 11, 6})).discrepancies.empty());  // at the Hut
  const audit::Rewalk walked = site.walk(site.promise({0, 1}));          // at the ford
  CHECK(says(walked, 1, "no clear ground large enough to turn back"));
}

TEST_CASE("on a plane the exact share is the one that the judge bounds") {
  // On a plane the bounds are tight, so re-walk and judge must come to the same share.
  const Site site{scene_of({.ground = plane(0.03, -0.04)}, straight_trail(30)), solo_rig()};
  const Promise promised = site.promise({0});
  const audit::Rewalk walked = site.walk(promised);
  CHECK(walked.discrepancies.empty());
  CHECK(near(walked.worst_share, promised[0].share, 1e-6));
  CHECK(walked.places_judged == 301);  // every metre of 300 m and the end
}

TEST_CASE("an empty promise is no promise") {
  const Site site{two_ways_scene(), solo_rig()};
  CHECK(says(site.walk({}), 0, "nothing was promised"));
}

TEST_CASE("whatever is spoilt in a promise is found") {
  const Site site{two_ways_scene(), solo_rig()};
  const Promise honest = site.promise({4, 10, 11, 6});
  REQUIRE(site.walk(honest).discrepancies.empty());
  struct Spoilt {
    std::string what;
    std::function<void(Promise&)> how;
  };
  const auto shifted = [](geo::Span span, double by_m) {
    return geo::Span{span.from + units::Metres{by_m}, span.to + units::Metres{by_m}};
  };
  const std::vector<Spoilt> all = {
      {"a leg is left out", [](Promise& legs) { legs.erase(legs.begin() + 1); }},
      {"legs are swapped", [](Promise& legs) { std::swap(legs[0], legs[3]); }},
      {"a leg is driven twice", [](Promise& legs) { legs.insert(legs.begin(), legs[0]); }},
      {"a leg runs the other way", [](Promise& legs) { legs[0].way = trails::Way::against; }},
      {"a share is a hair lower", [](Promise& legs) { legs[0].share -= 1e-3; }},
      {"a share is not a number", [](Promise& legs) { legs[3].share = std::nan(""); }},
      {"a share is below nothing", [](Promise& legs) { legs[2].share = -1; }},
      {"chainages are shifted", [&](Promise& legs) { legs[3].span = shifted(legs[3].span, -1); }},
      {"a leg ends early", [](Promise& legs) { legs[0].span.to -= units::Metres{5}; }},
      {"a leg runs off its trail", [](Promise& legs) { legs[3].span.to += units::Metres{5}; }},
      {"a leg has no length", [](Promise& legs) { legs[1].span.to = legs[1].span.from; }},
      {"a chainage is not a number",
       [](Promise& legs) { legs[1].span.from = units::Metres{std::nan("")}; }},
      {"a trail is unknown", [](Promise& legs) { legs[1].trail = "Nowhere"; }},
      {"another trail is named", [](Promise& legs) { legs[1].trail = "Link"; }},
      {"a leg is entered too early", [](Promise& legs) { legs[2].entry = legs[0].entry; }},
      {"a leg is entered before the one before it",
       [](Promise& legs) { legs[1].entry.seconds -= 100'000; }},
  };
  for (const Spoilt& spoilt : all) {
    CAPTURE(spoilt.what);
    Promise promise = honest;
    spoilt.how(promise);
    CHECK_FALSE(site.walk(promise).discrepancies.empty());
  }
}

TEST_CASE("a promise that is milder than need be holds") {
  const Site site{two_ways_scene(), solo_rig()};
  Promise promise = site.promise({0, 2});
  promise[0].share = 0.7;
  promise[1].share = 5.0;
  CHECK(site.walk(promise).discrepancies.empty());
}

TEST_CASE("a rest at a hut holds, one where there is no station is found") {
  const Site site{two_ways_scene(), solo_rig()};
  Promise at_hut = site.promise({4, 10, 11, 6});
  at_hut[2].entry.seconds += 600;
  at_hut[3].entry.seconds += 600;
  CHECK(site.walk(at_hut).discrepancies.empty());
  Promise at_ford = site.promise({0, 2});
  at_ford[1].entry.seconds += 2;  // entries are whole seconds, rounded up
  CHECK(says(site.walk(at_ford), 1, "the rig would wait before it, where there is no station"));
  at_ford[0].time = units::Seconds{std::nan("")};
  CHECK(says(site.walk(at_ford), 1, "the rig would wait before it"));
}

TEST_CASE("a one-way trail may not be promised against its direction") {
  TestTrails all = two_ways();
  all.trails[0].direction = trails::AllowedDirection::forward;
  const Site site{two_ways_scene(all), solo_rig()};
  CHECK(site.walk(site.promise({0, 2})).discrepancies.empty());
  Promise back = site.promise({3, 1});
  back[0].share = back[1].share = 0.7;
  const audit::Rewalk walked = site.walk(back);
  CHECK(says(walked, 0, "closed"));
  CHECK(says(walked, 1, "closed"));
}

TEST_CASE("a leg that is entered after hours is found, one in time is not") {
  TestTrails all = two_ways();
  all.trails[0].hours = trails::OpenHours{{0}, {10 * 60}};
  const Site site{two_ways_scene(all), solo_rig()};
  Promise promise = site.promise({0, 2});
  CHECK(site.walk(promise).discrepancies.empty());
  promise[1].entry.seconds += 3600;  // 10:00, having waited where nobody may
  CHECK(says(site.walk(promise), 1, "closed"));
}

TEST_CASE("a hole in the heights under the trail is found") {
  const Surface holed = [ground = rolling()](double east_m, double north_m) {
    const bool hole = std::hypot(east_m - 200.0, north_m - 110.0) < 12.0;
    return hole ? std::numeric_limits<double>::quiet_NaN() : ground(east_m, north_m);
  };
  const Site whole{two_ways_scene(), solo_rig()};
  const Site site{scene_of({.ground = holed}, two_ways()), solo_rig()};
  const audit::Rewalk walked = site.walk(whole.promise({0, 2}));
  CHECK(says(walked, 0, "not known"));
  CHECK_FALSE(says(walked, 1, "not known"));
}

TEST_CASE("ground that became steeper than promised is found at the leg where it lies") {
  const Surface bump = [ground = rolling()](double east_m, double north_m) {
    const double away = std::hypot(east_m - 450.0, north_m - 135.0);
    return ground(east_m, north_m) + (away < 40.0 ? 3.0 * (1.0 + std::cos(away / 12.7324)) : 0.0);
  };
  const Site before{two_ways_scene(), solo_rig()};
  const Site after{scene_of({.ground = bump}, two_ways()), solo_rig()};
  const audit::Rewalk walked = after.walk(before.promise({0, 2}));
  CHECK_FALSE(walked.discrepancies.empty());
  CHECK(std::ranges::none_of(walked.discrepancies,
                             [](const audit::Discrepancy& one) { return one.leg == 0; }));
}

TEST_CASE("a surveyed bridge over a trench holds, and without its inspection nothing does") {
  const TestGround ground{.ground = trench()};
  for (const rig::Rig& rig : {solo_rig(), towing_rig()}) {
    CAPTURE(rig.name);
    const Site site{scene_of(ground, with_mark(bridge_over_trench())), rig};
    Promise promised = site.promise({0});
    promised[0].permitted = true;  // the walls of the trench are steep enough to release
    const audit::Rewalk walked = site.walk(promised);
    for (const audit::Discrepancy& one : walked.discrepancies) {
      CHECK_MESSAGE(false, one.what);
    }
    trails::Mark neglected = bridge_over_trench();
    neglected.survey->inspected.reset();
    const Site other{scene_of(ground, with_mark(neglected)), rig};
    CHECK_FALSE(other.walk(promised).discrepancies.empty());
  }
}

TEST_CASE("what waits for a decision holds only where it was taken") {
  // Ground of 40 degrees within 10 m of the trail, where level 1 of the bulletin asks.
  const Surface bank = [](double east_m, double /*north_m*/) {
    return 1000.0 + (east_m < 7.0 ? 0.0 : std::min(east_m - 7.0, 60.0) * 0.84);
  };
  const Site site{scene_of({.ground = bank, .cell_m = 2.0}, straight_trail(0)), solo_rig()};
  REQUIRE(site.judge.judge(LegId{0}, mid_morning()).verdict == passage::Verdict::restricted);
  Promise promise = site.promise({0});
  CHECK(says(site.walk(promise), 0, "asks for a decision"));
  promise[0].permitted = true;
  CHECK(site.walk(promise).discrepancies.empty());
}
