// Rules about people: drivers, passengers, and driving alone.
#include "passage/crew_rules.h"

#include <doctest/doctest.h>

#include <cmath>

#include "passage/demo_scene.h"
#include "passage/judge.h"

namespace rimehaul::passage {

namespace {

using units::Metres;

Stand stand(const Finding& finding) {
  return stand_of(finding, 0.7);
}

bool names(const Finding& finding, const char* what) {
  return finding.missing.find(what) != std::string::npos;
}

TEST_CASE("a driver's level must be in the rules, and only some may tow") {
  const Rules rules = testing::plain_rules();
  rig::Rig rig = testing::towing_rig();
  CHECK(stand(judge_driver_level(rig, rules)) == Stand::passes);
  rig.driver_level = "new";
  CHECK(stand(judge_driver_level(rig, rules)) == Stand::refused);
  rig.trailer.reset();
  CHECK(stand(judge_driver_level(rig, rules)) == Stand::passes);
  rig.driver_level = "visitor";
  const Finding finding = judge_driver_level(rig, rules);
  CHECK(stand(finding) == Stand::missing);
  CHECK(names(finding, "visitor"));
}

TEST_CASE("drivers of a level with hours enter and leave a leg within them") {
  Rules rules = testing::plain_rules();  // local time is UTC here
  const rig::Rig rig = testing::solo_rig();
  const auto at = [&](const char* entry, double lasting_s) {
    return stand(
        judge_driver_hours(rig, {*units::parse_instant(entry), units::Seconds{lasting_s}}, rules));
  };
  CHECK(at("2026-02-01T03:00:00Z", 60) == Stand::passes);
  DriverLevel& level = rules.driver_levels[0];
  REQUIRE(level.name == rig.driver_level);
  level.hours = trails::OpenHours{{8 * 60}, {16 * 60}};
  CHECK(at("2026-02-01T07:59:59Z", 60) == Stand::refused);
  CHECK(at("2026-02-01T08:00:00Z", 60) == Stand::passes);
  CHECK(at("2026-02-01T15:59:00Z", 60) == Stand::passes);
  CHECK(at("2026-02-01T15:59:00Z", 60.5) == Stand::refused);
  CHECK(at("2026-02-01T15:59:00Z", std::nan("")) == Stand::refused);
  level.hours = trails::OpenHours{{0}, {24 * 60}};
  CHECK(at("2026-02-01T23:59:00Z", 600) == Stand::passes);
  rules.driver_levels.clear();
  CHECK(at("2026-02-01T12:00:00Z", 60) == Stand::missing);
}

TEST_CASE("a leg is closed to a driver outside the hours of the level, as its place is") {
  passage::Scene scene = testing::scene_of({testing::plane(0, 0.02)}, testing::straight_trail(0));
  const rig::Rig rig = testing::solo_rig();
  scene.rules.driver_levels[0].hours = trails::OpenHours{{10 * 60}, {16 * 60}};
  const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry);
  const Judge judge{scene, rig, snow};
  const LegJudgement early = judge.judge(trails::LegId{0}, testing::mid_morning());
  CHECK(early.verdict == Verdict::closed);
  CHECK(early.bind().check == Check::driver_level);
  const units::Instant later{testing::mid_morning().seconds + 3600};
  CHECK(judge.judge(trails::LegId{0}, later).verdict == Verdict::open);
}

TEST_CASE("nobody tows in snow wetter than the site and the driver's level allow") {
  Rules rules = testing::plain_rules();
  const rig::Rig rig = testing::towing_rig();
  const auto in = [&](snow::Wetness wetness) {
    return stand(judge_towing_in_wet_snow(rig, rules, {wetness, snow::Surface::groomed}));
  };
  CHECK(in(snow::Wetness::very_wet) == Stand::passes);
  CHECK(in(snow::Wetness::slush) == Stand::refused);
  rules.driver_levels[0].wettest_towing = snow::Wetness::moist;
  CHECK(in(snow::Wetness::moist) == Stand::passes);
  CHECK(in(snow::Wetness::wet) == Stand::refused);
  rules.wettest_towing = snow::Wetness::dry;
  CHECK(in(snow::Wetness::moist) == Stand::refused);
  rules.driver_levels.clear();
  CHECK(in(snow::Wetness::dry) == Stand::missing);
}

rig::Rig with_passenger() {
  rig::Rig rig = testing::towing_rig();
  rig.load.passengers = 1;
  return rig;
}

TEST_CASE("passengers ride with a driver who may carry them, and with a trailer only by rule") {
  Rules rules = testing::plain_rules();
  rig::Rig rig = with_passenger();
  CHECK(stand(judge_passengers(rig, rules)) == Stand::passes);
  rules.passengers.with_trailer = false;
  CHECK(stand(judge_passengers(rig, rules)) == Stand::refused);
  rig.trailer.reset();
  CHECK(stand(judge_passengers(rig, rules)) == Stand::passes);
  rig.driver_level = "new";
  CHECK(stand(judge_passengers(rig, rules)) == Stand::refused);
  rig.driver_level = "visitor";
  CHECK(stand(judge_passengers(rig, rules)) == Stand::missing);
  rig.load.passengers = 0;
  CHECK(stand(judge_passengers(rig, rules)) == Stand::passes);
}

TEST_CASE("by default a new driver carries nobody, and nobody rides while a trailer is towed") {
  const Rules rules = default_rules();
  rig::Rig rig = with_passenger();
  CHECK(stand(judge_passengers(rig, rules)) == Stand::refused);
  rig.trailer.reset();
  CHECK(stand(judge_passengers(rig, rules)) == Stand::passes);
  rig.driver_level = "new";
  CHECK(stand(judge_passengers(rig, rules)) == Stand::refused);
}

TEST_CASE("snow wetter than the rules say carries no passengers") {
  Rules rules = testing::plain_rules();
  rules.passengers.wettest = snow::Wetness::moist;
  rig::Rig rig = with_passenger();
  const auto in = [&](snow::Wetness wetness) {
    return stand(judge_passengers_in_snow(rig, rules, {wetness, snow::Surface::groomed}));
  };
  CHECK(in(snow::Wetness::moist) == Stand::passes);
  CHECK(in(snow::Wetness::wet) == Stand::refused);
  rig.load.passengers = 0;
  CHECK(in(snow::Wetness::slush) == Stand::passes);
}

trails::Mark dead_zone(double from_m, double to_m) {
  trails::Mark mark;
  mark.name = "Hollow";
  mark.kind = trails::MarkKind::dead_zone;
  mark.span = {Metres{from_m}, Metres{to_m}};
  return mark;
}

TEST_CASE("alone through no dead zone longer than the rules say; accompanied through any") {
  Rules rules = default_rules();
  rig::Rig rig = testing::towing_rig();
  const trails::Mark mark = dead_zone(40, 240);
  const std::vector<MarkOnStretch> marks{{&mark, mark.span}};
  CHECK(stand(judge_alone(rig, rules, {})) == Stand::passes);
  CHECK(stand(judge_alone(rig, rules, marks)) == Stand::refused);
  CHECK(judge_alone(rig, rules, marks).at == Metres{40});
  rules.alone.longest_dead_zone = Metres{200};
  CHECK(stand(judge_alone(rig, rules, marks)) == Stand::passes);
  rules.alone.longest_dead_zone = Metres{199.9};
  CHECK(stand(judge_alone(rig, rules, marks)) == Stand::refused);
  rules.alone.longest_dead_zone = Metres{std::nan("")};
  CHECK(stand(judge_alone(rig, rules, marks)) == Stand::refused);
  rig.accompanied = true;
  CHECK(stand(judge_alone(rig, rules, marks)) == Stand::passes);
  rig.accompanied = false;
  rules.alone.allowed = false;
  CHECK(stand(judge_alone(rig, rules, {})) == Stand::refused);
}

TEST_CASE("a dead zone that is marked as a point has no known length") {
  Rules rules = default_rules();
  rules.alone.longest_dead_zone = Metres{10'000};
  const trails::Mark mark = dead_zone(40, 40);
  const Finding finding = judge_alone(testing::towing_rig(), rules, {{&mark, mark.span}});
  CHECK(stand(finding) == Stand::missing);
  CHECK(names(finding, "Hollow"));
}

TEST_CASE("of several dead zones the one that is too long is told, whichever comes first") {
  Rules rules = default_rules();
  rules.alone.longest_dead_zone = Metres{100};
  const trails::Mark first = dead_zone(40, 240);
  const trails::Mark second = dead_zone(300, 360);
  const MarkOnStretch too_long{&first, first.span};
  const MarkOnStretch short_enough{&second, second.span};
  for (const auto& marks :
       {std::vector{too_long, short_enough}, std::vector{short_enough, too_long}}) {
    const Finding finding = judge_alone(testing::towing_rig(), rules, marks);
    CHECK(stand(finding) == Stand::refused);
    CHECK(finding.at == Metres{40});
    CHECK(finding.demand.value == 200.0);
  }
}

}  // namespace

}  // namespace rimehaul::passage
