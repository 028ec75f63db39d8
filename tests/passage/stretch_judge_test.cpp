// What a stretch asks of its marks and zones, part by part.
#include "passage/stretch_judge.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <utility>
#include <vector>

#include "passage/demo_scene.h"
#include "passage/site_rules.h"

namespace rimehaul::passage {

namespace {

using testing::mid_morning;
using testing::place;
using trails::LegId;
using units::Metres;
using units::MetresPerSecond;

testing::TestTrails trail_with_gate(double from_m, double to_m) {
  testing::TestTrails all = testing::straight_trail(0);
  trails::Mark gate;
  gate.name = "Low Gate";
  gate.kind = trails::MarkKind::gate;
  gate.trail = "Straight";
  gate.span = {Metres{from_m}, Metres{to_m}};
  all.marks = {gate};
  return all;
}

std::vector<Finding> gates_on(const testing::TestTrails& all, double from_m, double to_m) {
  const Scene scene = testing::scene_of({}, all);
  const rig::Rig rig = testing::solo_rig();
  const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry);
  const Judge judge{scene, rig, snow};
  const Stretch stretch = judge.stretch_of(LegId{0});
  return StretchJudge{judge, stretch}.judge_marks({Metres{from_m}, Metres{to_m}}, mid_morning());
}

TEST_CASE("a mark is asked for the parts of a stretch that it touches, its ends included") {
  const testing::TestTrails all = trail_with_gate(50, 60);
  CHECK(gates_on(all, 0, 49.999).empty());
  CHECK(gates_on(all, 60.001, 300).empty());
  for (const auto& [from, to] : {std::pair{0.0, 50.0}, std::pair{60.0, 300.0}}) {
    const auto found = gates_on(all, from, to);
    REQUIRE(found.size() == 1);
    CHECK(found[0].missing == "today's status of gate 'Low Gate'");
    CHECK(found[0].at == Metres{50});
  }
}

TEST_CASE("a mark whose place is no number is asked for on every part") {
  const testing::TestTrails all = trail_with_gate(std::nan(""), std::nan(""));
  CHECK(gates_on(all, 0, 10).size() == 1);
  CHECK(gates_on(all, 290, 300).size() == 1);
}

/// The straight trail's first footfall, in a zone with a speed limit.
PlaceJudgement limited_to(MetresPerSecond limit, std::optional<snow::SnowState> state) {
  testing::TestTrails all = testing::straight_trail(0);
  trails::Zone zone;
  zone.name = "Village";
  zone.kind = trails::ZoneKind::speed_limit;
  zone.region = {
      {{place(-50, -50), place(50, -50), place(50, 50), place(-50, 50), place(-50, -50)}}};
  zone.speed = limit;
  all.zones = {zone};
  const Scene scene = testing::scene_of({}, all);
  const rig::Rig rig = testing::solo_rig();
  const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry);
  const Judge judge{scene, rig, snow};
  const Stretch stretch = judge.stretch_of(LegId{0});
  const auto ground = ground_under(scene, rig, stretch);
  return StretchJudge{judge, stretch}.judge_piece(ground.front(), {state, mid_morning()});
}

TEST_CASE("a zone's limit slows what may be driven, and gives no speed where none is known") {
  const snow::SnowState dry{snow::Wetness::dry, snow::Surface::groomed};
  CHECK(limited_to(MetresPerSecond{1.5}, dry).speed == MetresPerSecond{1.5});
  const PlaceJudgement unknown_snow = limited_to(MetresPerSecond{1.5}, std::nullopt);
  CHECK_FALSE(unknown_snow.speed.has_value());
  CHECK(verdict_of(unknown_snow.findings, 0.7) == Verdict::closed);
}

TEST_CASE("a limit that is no number closes the place that it limits") {
  const snow::SnowState dry{snow::Wetness::dry, snow::Surface::groomed};
  CHECK(verdict_of(limited_to(MetresPerSecond{1.5}, dry).findings, 0.7) == Verdict::open);
  CHECK(verdict_of(limited_to(MetresPerSecond{std::nan("")}, dry).findings, 0.7) ==
        Verdict::closed);
}

TEST_CASE("forbidden ground is entered as far aside as the rig's side and the line's error reach") {
  // Half of 1.5 m of rig and 1 m of error: 1.75 m.
  const auto zone_stand = [](double aside_m, const rig::Rig& rig) {
    testing::TestTrails all = testing::straight_trail(0);
    all.zones = {{.name = "Kettle",
                  .kind = trails::ZoneKind::forbidden,
                  .region = {{{place(aside_m, -9), place(50, -9), place(50, 50), place(aside_m, 50),
                               place(aside_m, -9)}}},
                  .speed = std::nullopt}};
    const Scene scene = testing::scene_of({}, all);
    const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry);
    const Judge judge{scene, rig, snow};
    const Stretch stretch = judge.stretch_of(LegId{0});
    const auto ground = ground_under(scene, rig, stretch);
    const auto findings = StretchJudge{judge, stretch}
                              .judge_piece(ground.front(), {snow::SnowState{}, mid_morning()})
                              .findings;
    const auto found = std::ranges::find(findings, Check::zone, &Finding::check);
    REQUIRE(found != findings.end());
    return stand_of(*found, 0.7);
  };
  CHECK(zone_stand(1.745, testing::solo_rig()) == Stand::refused);
  CHECK(zone_stand(1.755, testing::solo_rig()) == Stand::passes);
  // A sled of 2.5 m is wider: 2.25 m.
  rig::Rig wide = testing::towing_rig();
  wide.trailer->overall_width = Metres{2.5};
  CHECK(zone_stand(2.245, wide) == Stand::refused);
  CHECK(zone_stand(2.255, wide) == Stand::passes);
}

TEST_CASE("an error of the line that makes no sense widens nothing, and is closed elsewhere") {
  trails::Trail trail = testing::plain_trail("Way", {place(0, 0), place(100, 0)});
  trail.line_error = Metres{3};
  CHECK(line_error_of(trail) == Metres{3});
  trail.line_error = Metres{0.5};
  CHECK(line_error_of(trail) == Metres{0.5});
  CHECK(stand_of(judge_trail_attributes(trail), 1.0) == Stand::passes);
  for (const double bad : {-1.0, std::nan(""), std::numeric_limits<double>::infinity()}) {
    trail.line_error = Metres{bad};
    CHECK(line_error_of(trail) == Metres{0});
    CHECK(stand_of(judge_trail_attributes(trail), 1.0) == Stand::missing);
  }
  trail.line_error.reset();
  CHECK(line_error_of(trail) == Metres{0});
  CHECK(stand_of(judge_trail_attributes(trail), 1.0) == Stand::missing);
}

}  // namespace

}  // namespace rimehaul::passage
