// What the day and the people on board say of a whole leg: every rule is asked, and for as long as
// the rig is on the leg.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "passage/avalanche.h"
#include "passage/course.h"
#include "passage/demo_scene.h"
#include "passage/judge.h"

namespace rimehaul::passage {

namespace {

using trails::LegId;
using trails::MarkKind;
using units::Metres;

trails::Mark mark_at(MarkKind kind, double from_m, double to_m) {
  trails::Mark mark;
  mark.name = "M";
  mark.kind = kind;
  mark.trail = "Straight";
  mark.span = {Metres{from_m}, Metres{to_m}};
  return mark;
}

/// One straight trail of 300 m on gentle ground, with a mark or none.
Scene scene_with(const std::vector<trails::Mark>& marks) {
  testing::TestGround ground;
  ground.ground = testing::plane(0, 0.02);
  testing::TestTrails trails = testing::straight_trail(0);
  trails.marks = marks;
  return testing::scene_of(ground, trails);
}

LegJudgement judged(const Scene& scene, const rig::Rig& rig, const snow::DayWeather& weather,
                    snow::Wetness wetness = snow::Wetness::dry) {
  const snow::ConstantSnow snow{{wetness, snow::Surface::groomed}, weather, "told for a test"};
  return Judge{scene, rig, snow}.judge(LegId{0}, testing::mid_morning());
}

Stand stand(const LegJudgement& judgement, Check check) {
  const auto found = std::ranges::find(judgement.findings, check, &Finding::check);
  REQUIRE(found != judgement.findings.end());
  return stand_of(*found, judgement.allowed_share);
}

/// A day on which the mark M was told clear, until a while after the rig enters.
snow::DayWeather told_clear_for(std::int64_t seconds) {
  snow::DayWeather weather = testing::plain_weather();
  weather.site.marks = {{"M", true, units::Instant{testing::mid_morning().seconds + seconds}}};
  return weather;
}

TEST_CASE("new snow lets the low side sink, the deeper the less it was weighed") {
  const Scene scene = scene_with({});
  const auto share_in = [&scene](double depth_m, std::optional<double> density) {
    snow::DayWeather weather = testing::plain_weather();
    weather.new_snow = Metres{depth_m};
    if (density) {
      weather.new_snow_density = units::KilogramsPerCubicMetre{*density};
    }
    const LegJudgement judgement = judged(scene, testing::solo_rig(), weather);
    const auto found =
        std::ranges::find(judgement.findings, Check::carrier_roll_over, &Finding::check);
    REQUIRE(found != judgement.findings.end());
    return found->share.value_or(HUGE_VAL);
  };
  const double plain = share_in(0.0, std::nullopt);
  CHECK(share_in(0.05, std::nullopt) == plain);  // no deeper than by the rules
  CHECK(share_in(0.2, std::nullopt) > plain);
  CHECK(share_in(0.2, 100.0) < share_in(0.2, std::nullopt));
  CHECK(share_in(0.2, 100.0) > plain);
  CHECK(share_in(0.2, 400.0) == plain);  // 4 cm are left to sink
}

TEST_CASE("new snow of which nobody has told closes, and so does a bulletin that nobody read") {
  const Scene scene = scene_with({});
  const auto missing = [&scene](const snow::DayWeather& weather, Check check) {
    const LegJudgement judgement = judged(scene, testing::solo_rig(), weather);
    CHECK(judgement.verdict == Verdict::closed);
    const auto found = std::ranges::find(judgement.findings, check, &Finding::check);
    REQUIRE(found != judgement.findings.end());
    return found->missing;
  };
  snow::DayWeather weather = testing::plain_weather();
  weather.new_snow.reset();
  CHECK(missing(weather, Check::snow_known) == kNoNewSnow);
  CHECK(missing(weather, Check::avalanche) == kNoNewSnow);
  weather.bulletin_level.reset();
  CHECK(missing(weather, Check::snow_known) == kNoNewSnow);
  CHECK(missing(weather, Check::avalanche) == kNoBulletin);
}

TEST_CASE("a plain day passes every rule about it and about people") {
  const LegJudgement judgement =
      judged(scene_with({}), testing::solo_rig(), testing::plain_weather());
  for (const Check check : {Check::passengers, Check::alone, Check::wind, Check::rain,
                            Check::grooming, Check::single_lane, Check::tow_out}) {
    CHECK(stand(judgement, check) == Stand::passes);
  }
  CHECK(judgement.verdict == Verdict::open);
}

TEST_CASE("a mark told clear must stay so until the tail has left the leg") {
  const rig::Rig rig = testing::solo_rig();
  for (const trails::Mark& cable :
       {mark_at(MarkKind::winch_cable, 100, 200), mark_at(MarkKind::winch_cable, 0, 0.5),
        mark_at(MarkKind::winch_cable, 299.5, 300)}) {
    const Scene scene = scene_with({cable});
    const LegJudgement whole_day = judged(scene, rig, told_clear_for(36'000));
    REQUIRE(whole_day.verdict == Verdict::open);
    const auto lasting = static_cast<std::int64_t>(whole_day.time.value());
    CHECK(judged(scene, rig, told_clear_for(lasting + 60)).verdict == Verdict::open);
    const LegJudgement too_short = judged(scene, rig, told_clear_for(lasting / 2));
    CHECK(too_short.verdict == Verdict::closed);
    CHECK(stand(too_short, Check::mark) == Stand::missing);
    CHECK(judged(scene, rig, told_clear_for(-1)).verdict == Verdict::closed);
  }
}

TEST_CASE("snow over a creek is driven as surveyed and told, in dry snow only") {
  trails::Mark ford = mark_at(MarkKind::creek_bridge, 100, 120);
  ford.survey = trails::Survey{
      units::Slope::from_degrees(3), units::Slope::from_degrees(2), units::Slope::from_percent(1),
      *units::parse_instant("2026-01-20T00:00:00Z"), testing::mid_morning()};
  ford.most_mass = units::Kilograms{5'000};
  const Scene scene = scene_with({ford});
  const rig::Rig rig = testing::solo_rig();
  CHECK(judged(scene, rig, told_clear_for(36'000)).verdict == Verdict::open);
  CHECK(judged(scene, rig, testing::plain_weather()).verdict == Verdict::closed);
  const LegJudgement moist = judged(scene, rig, told_clear_for(36'000), snow::Wetness::moist);
  CHECK(moist.verdict == Verdict::closed);
  CHECK(stand(moist, Check::mark) == Stand::refused);
}

TEST_CASE("a dead zone closes its leg to a rig that nobody accompanies") {
  const Scene scene = scene_with({mark_at(MarkKind::dead_zone, 100, 200)});
  rig::Rig rig = testing::solo_rig();
  const LegJudgement alone = judged(scene, rig, testing::plain_weather());
  CHECK(stand(alone, Check::alone) == Stand::refused);
  rig.accompanied = true;
  CHECK(judged(scene, rig, testing::plain_weather()).verdict == Verdict::open);
}

TEST_CASE("passengers stay out of snow wetter than the rules say, and rain closes") {
  Scene scene = scene_with({});
  scene.rules.passengers.wettest = snow::Wetness::dry;
  rig::Rig rig = testing::solo_rig();
  rig.load.passengers = 1;
  const snow::DayWeather fine = testing::plain_weather();
  CHECK(stand(judged(scene, rig, fine), Check::passengers) == Stand::passes);
  CHECK(stand(judged(scene, rig, fine, snow::Wetness::moist), Check::passengers) == Stand::refused);
  snow::DayWeather rain = fine;
  rain.rain = true;
  CHECK(judged(scene, rig, rain).verdict == Verdict::closed);
}

TEST_CASE("groomed snow that has not set closes its leg") {
  Scene scene = scene_with({});
  scene.rules.grooming_set = units::Seconds{3'600};
  snow::DayWeather weather = testing::plain_weather();
  CHECK(stand(judged(scene, testing::solo_rig(), weather), Check::grooming) == Stand::missing);
  weather.site.grooming = {{"Straight", {testing::mid_morning().seconds - 3'599}}};
  CHECK(stand(judged(scene, testing::solo_rig(), weather), Check::grooming) == Stand::refused);
  weather.site.grooming = {{"Straight", {testing::mid_morning().seconds - 3'600}}};
  CHECK(judged(scene, testing::solo_rig(), weather).verdict == Verdict::open);
}

}  // namespace

}  // namespace rimehaul::passage
