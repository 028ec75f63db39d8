// Judgements change at no other hour than at those named.
#include "passage/turning_moments.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <random>

#include "passage/demo_scene.h"
#include "passage/judge.h"
#include "passage/remembering_judge.h"
#include "passage/turning_snow.h"

namespace rimehaul::passage {

namespace {

using testing::TurningSnow;
using trails::LegId;
using units::Instant;
using units::Period;

const Instant kDawn = *units::parse_instant("2026-02-01T06:00:00Z");

Instant at_minute(std::int64_t minute) {
  return {kDawn.seconds + 60 * minute};
}

units::TimeOfDay at_time(int hour, int minute) {
  return {hour * 60 + minute};
}

/// Everything of a judgement that a search goes by.
struct Told {
  Verdict verdict;
  std::vector<std::pair<Check, Stand>> stands;
  std::optional<double> share;
  double time_s;

  friend bool operator==(const Told&, const Told&) = default;
};

template <class Judgement>
std::vector<std::pair<Check, Stand>> stands_of(const Judgement& judged, double allowed) {
  std::vector<std::pair<Check, Stand>> stands;
  for (const Finding& finding : judged.findings) {
    stands.emplace_back(finding.check, stand_of(finding, allowed));
  }
  return stands;
}

Told told(const LegJudgement& judged) {
  return {judged.verdict, stands_of(judged, judged.allowed_share), judged.share(),
          judged.time.value()};
}

std::vector<std::int64_t> hours_asked(const LegJudgement& judged, Instant entry) {
  std::vector<std::int64_t> later{0};
  for (const Instant asked : judged.hours.asked) {
    later.push_back(asked.seconds - entry.seconds);
  }
  if (judged.hours.staying.has_value()) {
    later.push_back(units::after({}, *judged.hours.staying).seconds);
  }
  return later;
}

/// Whether a moment lies between two entries, both moved to some hour that was asked for.
bool separated(const std::vector<Instant>& moments, const std::vector<std::int64_t>& hours,
               Period entries) {
  return std::ranges::any_of(hours, [&](std::int64_t later) {
    return std::ranges::any_of(moments, [&](Instant moment) {
      return entries.from.seconds + later < moment.seconds &&
             moment.seconds <= entries.to.seconds + later;
    });
  });
}

/// A bridge on the trail, surveyed and looked at in the course of the morning.
trails::Mark bridge(std::int64_t surveyed_min, std::int64_t inspected_min) {
  trails::Mark mark;
  mark.name = "Beck Bridge";
  mark.kind = trails::MarkKind::bridge;
  mark.trail = "Straight";
  mark.span = {units::Metres{100}, units::Metres{120}};
  mark.most_mass = units::Kilograms{5'000};
  mark.survey = trails::Survey{units::Slope::from_percent(2), units::Slope::from_percent(1),
                               units::Slope::from_percent(0.2), at_minute(surveyed_min),
                               at_minute(inspected_min)};
  return mark;
}

trails::Mark gate() {
  trails::Mark mark;
  mark.name = "Gate";
  mark.kind = trails::MarkKind::gate;
  mark.trail = "Straight";
  mark.span = {units::Metres{200}, units::Metres{200}};
  return mark;
}

/// One trail and all that reads the hour, rolled.
struct Rolled {
  explicit Rolled(std::uint32_t seed) : engine{seed} {
    scene.rules.grooming_set = units::Seconds{60.0 * below(90) + 0.5};
    scene.rules.driver_levels[0].hours = trails::OpenHours{at_time(6, below(30)), at_time(8, 30)};
    weather.site.marks = {{"Gate", true, at_minute(60 + below(90))}};
    weather.site.grooming = {{"Straight", at_minute(below(30) - 60)}};
    weather.site.last_weather = at_minute(below(40) - 20);
    if (seed % 3 != 0) {  // the clock is put forward or back in the course of the morning
      scene.rules.local_clock =
          units::LocalClock{0, {{at_minute(below(150)), seed % 3 == 1 ? 60 : -60}}};
    }
    if (seed % 2 == 1) {
      scene.rules.orders.trails.push_back(
          {"Straight", trails::OpenHours{at_time(6, below(60)), at_time(8, below(60))}, "N. N."});
      scene.rules.orders.leaves.push_back({at_minute(60 + below(90)), "N. N."});
    }
    const std::int64_t melts = 30 + below(60);
    slush = {at_minute(melts), at_minute(melts + 10 + below(30))};
  }
  int below(int count) { return static_cast<int>(engine() % static_cast<unsigned>(count)); }

  [[nodiscard]] testing::TestTrails trails() {
    testing::TestTrails all = testing::straight_trail(0);
    all.trails[0].hours = trails::OpenHours{at_time(6, below(60)), at_time(8, below(60))};
    all.marks = {bridge(below(60), below(60)), gate()};
    return all;
  }

  std::mt19937 engine;
  Scene scene = testing::scene_of({.ground = testing::plane(0, 0.02)}, trails());
  snow::DayWeather weather = testing::plain_weather();
  Period slush{};
};

}  // namespace

TEST_CASE("a judgement changes at a moment named, or its stay before one, and at no other hour") {
  std::size_t changes = 0;
  for (std::uint32_t seed = 0; seed < 6; ++seed) {
    CAPTURE(seed);
    Rolled rolled{seed};
    const rig::Rig rig = testing::solo_rig();
    const TurningSnow snow{rolled.weather, rolled.slush};
    const Judge judge{rolled.scene, rig, snow};
    GroundMemory ground;
    const RememberingJudge remembering{judge, ground};
    const Period day{at_minute(-10), at_minute(24 * 60)};
    const std::vector<Instant> moments = remembering.turning_moments(LegId{0}, day);
    REQUIRE(std::ranges::is_sorted(moments));
    LegJudgement before = remembering.judge(LegId{0}, at_minute(-5));
    constexpr std::int64_t kStep = 15;
    for (Instant entry = at_minute(-5); entry < at_minute(180); entry.seconds += kStep) {
      const Instant next{entry.seconds + kStep};
      LegJudgement after = remembering.judge(LegId{0}, next);
      if (!(told(before) == told(after))) {
        CAPTURE(units::text_of(next));
        ++changes;
        REQUIRE(separated(moments, hours_asked(before, entry), {entry, next}));
      }
      before = std::move(after);
    }
  }
  CHECK(changes > 20);  // else nothing was tried
}

TEST_CASE("turns change when a survey begins to count, and with the snow") {
  testing::TestTrails all = testing::two_ways();
  trails::Mark shelf = bridge(30, 45);
  shelf.trail = "Lower Way";
  shelf.span = {units::Metres{195}, units::Metres{206}};
  all.marks = {shelf};
  const Scene scene = testing::scene_of({.ground = testing::rolling()}, all);
  const rig::Rig rig = testing::solo_rig();
  const TurningSnow snow{testing::plain_weather(), {at_minute(60), at_minute(90)}};
  const Judge judge{scene, rig, snow};
  const auto onward = std::ranges::find_if(scene.network.legs, [&](const trails::Leg& leg) {
    return scene.network.trails[leg.trail].name == "Lower Way" && leg.span.from.value() > 0 &&
           leg.way == trails::Way::as_drawn;
  });
  REQUIRE(onward != scene.network.legs.end());
  const LegId to{static_cast<std::uint32_t>(onward - scene.network.legs.begin())};
  const auto inward = std::ranges::find_if(scene.network.legs, [&](const trails::Leg& leg) {
    return leg.trail == onward->trail && leg.to == onward->from && leg.way == trails::Way::as_drawn;
  });
  const LegId from{static_cast<std::uint32_t>(inward - scene.network.legs.begin())};
  GroundMemory ground;
  const RememberingJudge remembering{judge, ground};
  const std::vector<Instant> moments =
      remembering.turning_moments(from, to, {at_minute(0), at_minute(120)});
  CHECK(moments == std::vector{at_minute(30), at_minute(45), at_minute(60),
                               Instant{at_minute(90).seconds + 1}});
  std::vector<Instant> changed;
  auto before = judge.judge_turn(from, to, at_minute(0));
  for (std::int64_t minute = 1; minute < 120; ++minute) {
    auto after = judge.judge_turn(from, to, at_minute(minute));
    if (stands_of(before, 0.7) != stands_of(after, 0.7)) {
      changed.push_back(at_minute(minute));
    }
    before = std::move(after);
  }
  CHECK_FALSE(changed.empty());
  for (const Instant change : changed) {
    CHECK(std::ranges::any_of(moments, [&](Instant moment) {
      return change.seconds - 60 < moment.seconds && moment <= change;
    }));
  }
}

TEST_CASE("a trail that is open all day, in snow that stays, never turns") {
  testing::TestTrails all = testing::straight_trail(0);
  Scene scene = testing::scene_of({.ground = testing::plane(0, 0.02)}, all);
  rig::Rig rig = testing::solo_rig();
  const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry);
  const Period day{at_minute(0), at_minute(24 * 60)};
  CHECK(Judge{scene, rig, snow}.turning_moments(LegId{0}, day).empty());
  scene.network.trails[0].hours = std::nullopt;
  CHECK(Judge{scene, rig, snow}.turning_moments(LegId{0}, day).empty());
  scene.network.trails[0].hours = trails::OpenHours{{0}, {600}};
  CHECK(Judge{scene, rig, snow}.turning_moments(LegId{0}, day) ==
        std::vector{Instant{at_minute(4 * 60).seconds + 1}, at_minute(18 * 60)});
}

TEST_CASE("what is ordered, surveyed or groomed elsewhere turns nothing on this trail") {
  testing::TestTrails all = testing::two_ways();
  trails::Mark shelf = bridge(30, 45);
  shelf.trail = "Lower Way";
  all.marks = {shelf};
  Scene scene = testing::scene_of({.ground = testing::rolling()}, all);
  scene.rules.orders.trails.push_back(
      {"Lower Way", trails::OpenHours{at_time(6, 20), at_time(7, 20)}, "N. N."});
  const rig::Rig rig = testing::solo_rig();
  snow::DayWeather weather = testing::plain_weather();
  for (const trails::Trail& trail : scene.network.trails) {
    weather.site.grooming.push_back({trail.name, at_minute(10)});
  }
  const TurningSnow snow{weather, {at_minute(60), at_minute(90)}};
  const Period morning{at_minute(0), at_minute(120)};
  const auto turns_at = [&](std::size_t trail, Instant moment) {
    const auto moments = turning_moments_of_trail({scene, rig, snow}, trail, morning);
    return std::ranges::find(moments, moment) != moments.end();
  };
  const auto hours_at = at_minute(20);
  const auto set_at = at_minute(100);
  scene.rules.grooming_set.reset();
  int elsewhere = 0;
  for (std::size_t i = 0; i < scene.network.trails.size(); ++i) {
    const bool lower = scene.network.trails[i].name == "Lower Way";
    elsewhere += lower ? 0 : 1;
    CHECK(turns_at(i, hours_at) == lower);
    CHECK(turns_at(i, at_minute(30)) == lower);
    CHECK_FALSE(turns_at(i, set_at));
  }
  CHECK(elsewhere > 0);
  scene.rules.grooming_set = units::Seconds{90 * 60};
  CHECK(turns_at(0, set_at));
}

}  // namespace rimehaul::passage
