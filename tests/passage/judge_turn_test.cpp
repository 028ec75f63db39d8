// Turns from leg to leg: sharp corners, turning back, and ground that only the trailer is still on.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "base/require.h"
#include "near.h"
#include "passage/bends.h"
#include "passage/demo_scene.h"
#include "passage/judge.h"
#include "passage/rig_on_slope.h"
#include "passage/turning_room.h"

namespace rimehaul::passage {

namespace {

using snow::Wetness;
using testing::mid_morning;
using testing::near;
using testing::place;
using trails::LegId;
using units::Metres;

Scene scene_with(const testing::TestTrails& all, testing::Surface surface = testing::plane(0, 0)) {
  testing::TestGround ground;
  ground.ground = std::move(surface);
  return testing::scene_of(ground, all);
}

TurnJudgement turned(const Scene& scene, const rig::Rig& rig, LegId from, LegId to) {
  const snow::ConstantSnow snow = testing::snow_of(Wetness::dry);
  return Judge{scene, rig, snow}.judge_turn(from, to, mid_morning());
}

/// North for 100 m on one trail, then on another that leaves by so many degrees to the right.
testing::TestTrails corner(double degrees) {
  const geo::MapPoint corner = place(0, 100);
  const geo::MapPoint end = geo::moved(corner, units::Bearing::from_degrees(degrees), Metres{100});
  return {.trails = {testing::plain_trail("North Way", {place(0, 0), corner}),
                     testing::plain_trail("Side Way", {corner, end})},
          .stations = {},
          .zones = {},
          .marks = {}};
}

TEST_CASE("straight on from trail to trail is no turn; a square corner is wide enough for both") {
  for (const rig::Rig& rig : {testing::solo_rig(), testing::towing_rig()}) {
    CHECK(turned(scene_with(corner(0)), rig, LegId{0}, LegId{2}).verdict == Verdict::open);
    CHECK(turned(scene_with(corner(90)), rig, LegId{0}, LegId{2}).verdict == Verdict::open);
  }
}

TEST_CASE("round a corner and back along a trail one stops as on a straight line") {
  testing::TestTrails all = corner(90);
  for (const LegId to : {LegId{2}, LegId{1}}) {
    const TurnJudgement turn = turned(scene_with(all), testing::solo_rig(), LegId{0}, to);
    const auto stopping = std::ranges::find(turn.findings, Check::stopping, &Finding::check);
    REQUIRE(stopping != turn.findings.end());
    CHECK(testing::input_of(*stopping, "R") == 10'000);  // m, which counts as straight
  }
}

TEST_CASE("a corner that doubles back is too sharp for either rig") {
  for (const rig::Rig& rig : {testing::solo_rig(), testing::towing_rig()}) {
    const TurnJudgement turn = turned(scene_with(corner(150)), rig, LegId{0}, LegId{2});
    CHECK(turn.verdict == Verdict::closed);
    const bool by_its_bend =
        turn.binding.check == Check::turning || turn.binding.check == Check::off_tracking;
    CHECK(by_its_bend);
  }
}

TEST_CASE("the narrower of two trails counts at their corner, and an unknown width closes it") {
  testing::TestTrails all = corner(90);
  all.trails[0].width = Metres{4};
  CHECK(turned(scene_with(all), testing::solo_rig(), LegId{0}, LegId{2}).verdict ==
        Verdict::closed);
  CHECK(turned(scene_with(all), testing::solo_rig(), LegId{3}, LegId{1}).verdict ==
        Verdict::closed);
  all.trails[0].width.reset();
  const TurnJudgement turn = turned(scene_with(all), testing::solo_rig(), LegId{0}, LegId{2});
  CHECK(turn.verdict == Verdict::closed);
  CHECK(turn.binding.missing.find("width") != std::string::npos);
  const TurnJudgement back = turned(scene_with(all), testing::solo_rig(), LegId{3}, LegId{1});
  CHECK(back.verdict == Verdict::closed);
  CHECK(back.binding.missing.find("width") != std::string::npos);
}

TEST_CASE("a bend on the leg before a junction is the leg's, and not the turn's") {
  // Doubles back by 150 degrees 20 m before the trail goes straight on into the next.
  const geo::MapPoint bend = place(0, 80);
  const geo::MapPoint junction = place(0, 100);
  const geo::MapPoint start = geo::moved(bend, units::Bearing::from_degrees(30), Metres{80});
  const testing::TestTrails all{.trails = {testing::plain_trail("Hook", {start, bend, junction}),
                                           testing::plain_trail("On", {junction, place(0, 200)})},
                                .stations = {},
                                .zones = {},
                                .marks = {}};
  const Scene scene = scene_with(all);
  const rig::Rig rig = testing::solo_rig();
  const snow::ConstantSnow snow = testing::snow_of(Wetness::dry);
  CHECK(Judge{scene, rig, snow}.judge(LegId{0}, mid_morning()).verdict == Verdict::closed);
  CHECK(turned(scene, rig, LegId{0}, LegId{2}).verdict == Verdict::open);
}

TEST_CASE("in a turn the ground counts as far as the rig is long and a metre more on each side") {
  // 3.0 m of rig and 1 m are 4 m; there half of 1.8 m of tracks still reaches 4.9 m. From 105 m
  // north the ground is too steep.
  const auto verdict = [](double junction_north_m) {
    const geo::MapPoint junction = place(0, junction_north_m);
    testing::TestTrails all{.trails = {testing::plain_trail("South Way", {place(0, 0), junction}),
                                       testing::plain_trail("On", {junction, place(0, 200)})},
                            .stations = {},
                            .zones = {},
                            .marks = {}};
    const Scene scene = scene_with(
        all, [](double, double north) { return 1000 + (north > 105 ? north - 105 : 0.0); });
    return turned(scene, testing::solo_rig(), LegId{0}, LegId{2}).verdict;
  };
  CHECK(verdict(100.05) == Verdict::open);
  CHECK(verdict(100.15) == Verdict::closed);
}

TEST_CASE("clear ground at the junction stands in for the trails' width") {
  testing::TestTrails all = corner(150);
  trails::Mark room;
  room.name = "Yard";
  room.kind = trails::MarkKind::turning_room;
  room.trail = "North Way";
  room.span = {Metres{100}, Metres{100}};
  const rig::Rig rig = testing::towing_rig();
  room.room = room_to_turn_round(rig);
  all.marks = {room};
  CHECK(turned(scene_with(all), rig, LegId{0}, LegId{2}).verdict == Verdict::open);
  all.marks[0].room = *room.room - Metres{0.001};
  CHECK(turned(scene_with(all), rig, LegId{0}, LegId{2}).verdict == Verdict::closed);
  // Two metres short of the junction it holds two metres less around it.
  all.marks[0].span = {Metres{98}, Metres{98}};
  all.marks[0].room = *room.room + Metres{2};
  CHECK(turned(scene_with(all), rig, LegId{0}, LegId{2}).verdict == Verdict::open);
  all.marks[0].room = *room.room + Metres{1.999};
  CHECK(turned(scene_with(all), rig, LegId{0}, LegId{2}).verdict == Verdict::closed);
}

TEST_CASE("the room to turn round is by hand: r + b alone, sqrt 3 r + b with a sled") {
  // b: 3.0 - 1.8 / 2 forward and 1.5 / 2 aside. The sled follows down to 3 m: drawbar 2.2.
  const double corner_m = std::hypot(2.1, 0.75);
  CHECK(near(room_to_turn_round(testing::solo_rig()), Metres{3 + corner_m}, Metres{1e-12}));
  CHECK(near(room_to_turn_round(testing::towing_rig()), Metres{3 * std::sqrt(3) + corner_m},
             Metres{1e-12}));
}

TEST_CASE("a rig turns back only where there is room: on a trail never, at a station if clear") {
  testing::TestTrails all = testing::straight_trail(0);
  const rig::Rig rig = testing::towing_rig();
  CHECK(turned(scene_with(all), rig, LegId{0}, LegId{1}).verdict == Verdict::open);
  all.stations[1].turning_radius = room_to_turn_round(rig);
  CHECK(turned(scene_with(all), rig, LegId{0}, LegId{1}).verdict == Verdict::open);
  CHECK(turned(scene_with(all), testing::solo_rig(), LegId{0}, LegId{1}).verdict == Verdict::open);
  all.stations[1].turning_radius = room_to_turn_round(testing::solo_rig());
  CHECK(turned(scene_with(all), testing::solo_rig(), LegId{0}, LegId{1}).verdict == Verdict::open);
  CHECK(turned(scene_with(all), rig, LegId{0}, LegId{1}).verdict == Verdict::closed);
  all.stations[1].turning_radius.reset();
  const TurnJudgement none = turned(scene_with(all), rig, LegId{0}, LegId{1});
  CHECK(none.verdict == Verdict::closed);
  CHECK(none.binding.check == Check::turning);
  CHECK_FALSE(none.binding.refused.empty());
}

TEST_CASE("a room to turn on the leg counts within 15 m of its end, and no further") {
  testing::TestTrails all = testing::straight_trail(0);
  all.stations.clear();
  trails::Mark room;
  room.name = "Loop";
  room.kind = trails::MarkKind::turning_room;
  room.trail = "Straight";
  const rig::Rig rig = testing::solo_rig();
  room.room = room_to_turn_round(rig);
  room.span = {Metres{285}, Metres{285}};
  all.marks = {room};
  CHECK(turned(scene_with(all), rig, LegId{0}, LegId{1}).verdict == Verdict::open);
  all.marks[0].span = {Metres{284.9}, Metres{284.9}};
  CHECK(turned(scene_with(all), rig, LegId{0}, LegId{1}).verdict == Verdict::closed);
}

TEST_CASE("turning back asks that the ground bears every heading, not the trail's alone") {
  const rig::Rig rig = testing::solo_rig();
  // 12 degrees along the trail: within the rating's 25 as a climb, beyond 0.7 of 16 across.
  const Scene scene = scene_with(testing::straight_trail(0),
                                 testing::plane(0, std::tan(12 * std::numbers::pi / 180)));
  const TurnJudgement turn = turned(scene, rig, LegId{0}, LegId{1});
  CHECK(turn.verdict == Verdict::closed);
}

TEST_CASE("the trailer is still on the steep leg when the carrier has left it") {
  // A sidehill of 25 degrees that ends 3 m short of the corner, in cells of 1 m.
  testing::TestGround ground;
  ground.ground = [](double east, double north) { return 1000 + (north < 97 ? 0.47 * east : 0.0); };
  ground.cell_m = 1;
  ground.extent = {-60, -60, 60, 260};
  const Scene scene = testing::scene_of(ground, corner(0));
  const snow::ConstantSnow snow = testing::snow_of(Wetness::dry);
  const rig::Rig rig = testing::towing_rig();
  const Judge judge{scene, rig, snow};
  const Stretch after = judge.stretch_of(LegId{2});
  const auto joint = scene.network.legs[0].line.joined_with(after.line);
  for (const Footfall& step : footfalls(scene, joint, rig, Metres{1})) {
    if (step.span.from == Metres{100}) {
      CHECK(step.carrier->steepest_cross().ratio() < 0.001);
      CHECK(step.trailer->steepest_cross().ratio() > 0.46);
    }
  }
  CHECK(judge.judge_turn(LegId{0}, LegId{2}, mid_morning()).verdict == Verdict::closed);
}

TEST_CASE("a hole in the heights at the corner closes the turn") {
  const Scene scene = scene_with(
      corner(90), testing::with_void(testing::plane(0, 0), [](double east, double north) {
        return 3 < east && east < 7 && 98 < north && north < 102;
      }));
  const TurnJudgement turn = turned(scene, testing::solo_rig(), LegId{0}, LegId{2});
  CHECK(turn.verdict == Verdict::closed);
  CHECK(turn.binding.check == Check::heights_known);
}

TEST_CASE("legs that do not meet are no turn at all") {
  CHECK_THROWS_AS(turned(scene_with(corner(90)), testing::solo_rig(), LegId{0}, LegId{0}),
                  base::OurFault);
}

TEST_CASE("a mean strays from a straight line not at all, from a corner by a quarter of its arm") {
  const geo::Polyline straight{{place(0, 0), place(0, 100)}};
  CHECK(near(strays_from_its_mean(straight, Metres{8}), Metres{0}, Metres{1e-6}));
  // Over 4 m to each side of a square corner the mean is 2 m back on either arm: sqrt(2) aside.
  const geo::Polyline square{{place(0, 0), place(0, 50), place(50, 50)}};
  CHECK(near(strays_from_its_mean(square, Metres{8}), Metres{std::sqrt(2.0)}, Metres{1e-6}));
}

TEST_CASE("a driver does not round off a chicane that the trail makes him drive") {
  // Two bends of 80 degrees against each other, 3 m apart: straight on, if one looks from afar.
  const geo::Polyline chicane{{place(0, 0), place(0, 40), place(3, 40.5), place(3, 80)}};
  const DrivenBend driven = driven_bend(testing::solo_rig(), chicane, Metres{4}, 0.7);
  CHECK(verdict_of(driven.findings, 0.7) == Verdict::closed);
}

TEST_CASE("an unknown trail width is no reason to look for a wider way") {
  const geo::Polyline square{{place(0, 0), place(0, 50), place(50, 50)}};
  const DrivenBend driven = driven_bend(testing::solo_rig(), square, std::nullopt, 0.7);
  CHECK(verdict_of(driven.findings, 0.7) == Verdict::closed);
}

trails::Mark bench_on(const char* trail, double from_m, double to_m) {
  trails::Mark mark;
  mark.name = "Long Bench";
  mark.kind = trails::MarkKind::bench;
  mark.trail = trail;
  mark.span = {Metres{from_m}, Metres{to_m}};
  mark.survey = trails::Survey{units::Slope::from_degrees(2), units::Slope::from_degrees(1),
                               units::Slope::from_percent(0.5),
                               *units::parse_instant("2026-01-20T00:00:00Z"), mid_morning()};
  return mark;
}

TEST_CASE("a surveyed bench carries a rig over a junction as far as it and its trail go on") {
  const testing::Surface sidehill = [](double east, double north) {
    return 1000 + (115 < north && north < 185 ? 0.577 * east : 0.0);
  };
  const auto turns = [&sidehill](const testing::TestTrails& all, Verdict wanted) {
    const Scene scene = scene_with(all, sidehill);
    for (const rig::Rig& rig : {testing::solo_rig(), testing::towing_rig()}) {
      CHECK(turned(scene, rig, LegId{0}, LegId{2}).verdict == wanted);
      CHECK(turned(scene, rig, LegId{3}, LegId{1}).verdict == wanted);
    }
  };
  testing::TestTrails one{
      .trails = {testing::plain_trail("Way", {place(0, 0), place(0, 150), place(0, 300)})},
      .stations = {testing::plain_station("Halfway", place(0, 150))},
      .zones = {},
      .marks = {}};
  one.stations[0].turning_radius.reset();
  turns(one, Verdict::closed);
  one.marks = {bench_on("Way", 100, 200)};
  turns(one, Verdict::open);
  one.marks = {bench_on("Way", 100, 150)};
  turns(one, Verdict::closed);
  // The same ground, but beyond the junction another trail: the bench is said to be of the first.
  testing::TestTrails two{
      .trails = {testing::plain_trail("Way", {place(0, 0), place(0, 150)}),
                 testing::plain_trail("Other Way", {place(0, 150), place(0, 300)})},
      .stations = {},
      .zones = {},
      .marks = {bench_on("Way", 100, 200)}};
  turns(two, Verdict::closed);
  two.marks.push_back(bench_on("Other Way", 0, 50));
  turns(two, Verdict::closed);  // neither is under all of a rig that stands on both
}

TEST_CASE("where a trail crosses itself a bench carries along it, and not who turns off there") {
  // North for 100 m, round a square loop back to the crossing, and off to the west. The ground is
  // level where the trail goes on north and falls steeply across it to the east and to the west.
  testing::TestTrails all{.trails = {testing::plain_trail(
                              "Loop", {place(0, -100), place(0, 0), place(0, 100), place(100, 100),
                                       place(100, 0), place(0, 0), place(-100, 0)})},
                          .stations = {testing::plain_station("Crossing", place(0, 0))},
                          .zones = {},
                          .marks = {bench_on("Loop", 80, 130)}};
  testing::TestGround ground;
  ground.ground = [](double east, double north) {
    return 1000 + (std::abs(east) > 4 ? 0.577 * north : 0.0);
  };
  ground.cell_m = 1;
  ground.extent = {-140, -140, 140, 140};
  const Scene scene = testing::scene_of(ground, all);
  REQUIRE(scene.network.legs.size() == 6);
  const rig::Rig rig = testing::towing_rig();
  CHECK(turned(scene, rig, LegId{0}, LegId{2}).verdict == Verdict::open);
  for (const LegId after : {LegId{3}, LegId{4}}) {
    const TurnJudgement turn = turned(scene, rig, LegId{0}, after);
    CHECK(turn.verdict == Verdict::closed);
    const auto across = std::ranges::find(turn.findings, Check::cross_rating, &Finding::check);
    REQUIRE(across != turn.findings.end());
    CHECK(across->share.value_or(0) > 1);
  }
}

TEST_CASE("nobody turns back where the ground under carrier or trailer is unknown") {
  const auto with_hole = [](double from_m, double to_m) {
    testing::TestGround ground;
    ground.ground = testing::with_void(
        testing::plane(0, 0), [=](double, double north) { return from_m < north && north < to_m; });
    ground.cell_m = 1;
    ground.extent = {-60, -60, 60, 360};
    return testing::scene_of(ground, testing::straight_trail(0));
  };
  // The sled stands 3.4 m behind the carrier's middle, which is within 3.15 m of the end.
  const Scene under_sled = with_hole(292.5, 294.5);
  CHECK(turned(under_sled, testing::solo_rig(), LegId{0}, LegId{1}).verdict == Verdict::open);
  const Scene under_both = with_hole(297.5, 299.5);
  const TurnJudgement refused[] = {turned(under_sled, testing::towing_rig(), LegId{0}, LegId{1}),
                                   turned(under_both, testing::towing_rig(), LegId{0}, LegId{1}),
                                   turned(under_both, testing::solo_rig(), LegId{0}, LegId{1})};
  for (const TurnJudgement& turn : refused) {
    CHECK(turn.verdict == Verdict::closed);
    CHECK(turn.binding.check == Check::heights_known);
    CHECK_FALSE(turn.binding.missing.empty());
  }
}

}  // namespace

}  // namespace rimehaul::passage
