// People and help on the card: who rides, when a rig is overdue, who tows it out and how far.
#include "card/help.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "card/day_lines.h"
#include "card/figures.h"
#include "passage/demo_scene.h"
#include "passage/judge.h"

namespace rimehaul::card {

namespace {

bool has_line(const std::vector<std::string>& lines, const std::string& part) {
  return std::ranges::any_of(
      lines, [&](const std::string& line) { return line.find(part) != std::string::npos; });
}

/// The first leg of a straight trail, driven as drawn.
struct Drive {
  passage::Scene scene;
  rig::Rig rig = testing::towing_rig();
  snow::DayWeather weather = testing::plain_weather();
  search::RouteQuestion question{
      .stations = {0, 1}, .depart = testing::mid_morning(), .permitted_by = {}};

  Drive() : scene{testing::scene_of({testing::plane(0, 0.02)}, testing::straight_trail(0))} {}

  template <class Ask>
  auto with_route(const rig::Rig* tow_out, Ask ask) const {
    const snow::ConstantSnow snow{
        {snow::Wetness::dry, snow::Surface::groomed}, weather, "told for a test"};
    const passage::Judge judge{scene, rig, snow};
    search::Route route;
    route.legs.push_back({.leg = trails::LegId{0}, .entry = question.depart});
    route.legs.back().judgement = judge.judge(trails::LegId{0}, question.depart);
    route.time = units::Seconds{600};
    CardContext context = context_of(rig, snow);
    context.tow_out = tow_out;
    return ask(route, context);
  }

  [[nodiscard]] CardContext context_of(const rig::Rig& driven, const snow::SnowAt& snow) const {
    return {.scene = scene,
            .rig = driven,
            .snow = snow,
            .question = question,
            .made_from = {.inputs = {}, .versions = {}, .made = question.depart},
            .snow_valid_until = {},
            .heights_notes = {}};
  }

  [[nodiscard]] std::vector<std::string> help(const rig::Rig* tow_out) const {
    return with_route(tow_out, [](const search::Route& route, const CardContext& context) {
      return help_lines(route, context);
    });
  }
  [[nodiscard]] std::vector<std::string> people() const {
    return with_route(nullptr, [](const search::Route&, const CardContext& context) {
      return people_lines(context);
    });
  }
};

TEST_CASE("a rig is overdue the rules' time after its arrival, and control looks for it") {
  Drive drive;
  drive.scene.rules.control = "Fell Control";
  // 09:00 and ten minutes of driving, and half an hour.
  CHECK(has_line(drive.help(nullptr), "overdue from 2026-02-01 09:40: Fell Control calls"));
  drive.scene.rules.overdue = units::Seconds{3'600};
  CHECK(has_line(drive.help(nullptr), "overdue from 2026-02-01 10:10"));
  CHECK(has_line(drive.help(nullptr), "names no rig to tow out"));
}

TEST_CASE("the tow-out rig: whether it stands ready, what it may tow, where it may not drive") {
  Drive drive;
  rig::Rig tow_out = testing::solo_rig();
  tow_out.name = "Old Hare";
  CHECK(has_line(drive.help(&tow_out), "nobody said whether it stands ready"));
  drive.weather.site.tow_out_ready = true;
  CHECK(has_line(drive.help(&tow_out), "told to stand ready"));
  CHECK_FALSE(has_line(drive.help(&tow_out), "may not drive"));
  drive.weather.site.tow_out_ready = false;
  CHECK(has_line(drive.help(&tow_out), "not ready today"));
  tow_out.carrier.towed_mass_rating = units::Kilograms{100.9};
  CHECK(has_line(drive.help(&tow_out), "it may tow 100 kg and CANNOT TOW THIS RIG AT ALL"));
  tow_out.carrier.solo_empty.climb.reset();
  CHECK(has_line(drive.help(&tow_out), "Old Hare may not drive leg 1"));
}

TEST_CASE(
    "a rig too heavy to be towed: what it weighs unloaded, and whether even that is too much") {
  Drive drive;
  drive.rig.load.bed = units::Kilograms{100};
  drive.rig.load.passengers = 1;
  rig::Rig stripped = rig::without_trailer(drive.rig);
  stripped.load.bed = units::Kilograms{0};
  stripped.load.passengers = 0;
  const units::Kilograms all = rig::weigh(drive.rig).total();
  const units::Kilograms least = rig::weigh(stripped).total();
  REQUIRE(least + units::Kilograms{100} < all);
  rig::Rig tow_out = testing::solo_rig();
  const auto told = [&](units::Kilograms most) {
    tow_out.carrier.towed_mass_rating = most;
    return drive.help(&tow_out);
  };
  CHECK_FALSE(has_line(told(all), "it may tow"));
  CHECK(has_line(told(least), "unload and unhitch first; it weighs " + mass_text(least)));
  CHECK(has_line(told(least), "this rig weighs " + mass_text(all)));
  const auto hopeless = told(least - units::Kilograms{0.01});
  CHECK(has_line(hopeless, "CANNOT TOW THIS RIG AT ALL"));
  CHECK(has_line(hopeless, mass_text(least) + " with its driver alone"));
  CHECK(has_line(told(units::Kilograms{std::nan("")}), "CANNOT TOW THIS RIG AT ALL"));
}

TEST_CASE("who rides is said in the site's words, or in ours, or nobody does") {
  Drive drive;
  drive.rig.load.passengers = 0;
  CHECK(has_line(drive.people(), "nobody rides beside the driver"));
  CHECK(has_line(drive.people(), "nobody trained goes along"));
  drive.rig.load.passengers = 1;
  CHECK(has_line(drive.people(), "belt on, helmet on"));
  drive.scene.rules.passengers.who = {"staff only"};
  drive.rig.accompanied = true;
  CHECK(drive.people().front() == "staff only");
  CHECK(has_line(drive.people(), "goes accompanied"));
}

TEST_CASE("the day in lines: each mark that needs a word, grooming, people, help") {
  Drive drive;
  trails::Mark winch;
  winch.name = "Winch";
  winch.kind = trails::MarkKind::winch_cable;
  winch.trail = "Straight";
  drive.scene.network.marks = {winch};
  drive.scene.rules.grooming_set = units::Seconds{3'600};
  const auto lines = [&] {
    return day_lines(drive.scene, drive.weather, {.depart = drive.question.depart});
  };
  CHECK(has_line(lines(), "winch cable Winch on Straight: nobody said whether it is clear"));
  CHECK(has_line(lines(),
                 "0 trails have set for 1 h 00 min since grooming; closed until they "
                 "have: Straight"));
  drive.weather.site.marks = {{"Winch", true, *units::parse_instant("2026-02-01T10:30:00Z")}};
  drive.weather.site.grooming = {{"Straight", *units::parse_instant("2026-02-01T04:00:00Z")}};
  CHECK(has_line(lines(), "Winch on Straight: told clear until 2026-02-01 10:30"));
  CHECK(has_line(lines(), "1 trail has set for 1 h 00 min since grooming"));
  drive.weather.site.marks[0].clear = false;
  CHECK(has_line(lines(), "not clear, so closed until 2026-02-01 10:30"));
  CHECK(has_line(lines(), "rain closes everything"));
  CHECK(has_line(lines(), "alone only where the radio reaches"));
  CHECK(has_line(lines(), "looked for 30 min after its reckoned arrival"));
}

TEST_CASE("the day in lines: the site's limits of wind, lanes and setbacks, and its crossings") {
  Drive drive;
  trails::Mark crossing;
  crossing.name = "Blue Run";
  crossing.kind = trails::MarkKind::piste_crossing;
  crossing.trail = "Straight";
  drive.scene.network.marks = {crossing};
  drive.scene.rules.most_wind = units::MetresPerSecond{60 / 3.6};
  drive.scene.rules.longest_single_lane = units::Metres{1'300};
  const auto lines = day_lines(drive.scene, drive.weather, {.depart = drive.question.depart});
  CHECK(has_line(lines, "stop, look and sound the horn at piste crossing Blue Run on Straight"));
  CHECK(has_line(lines, "closed in wind over 60 km/h"));
  CHECK(has_line(lines, "no radio gate: 1300 m at most"));
  CHECK(has_line(lines, "keep 3.0 m from drops, 10.0 m from cornices"));
}

TEST_CASE("the day in lines: a report or a word that ran out is told so, not as never given") {
  Drive drive;
  trails::Mark winch;
  winch.name = "Winch";
  winch.kind = trails::MarkKind::winch_cable;
  winch.trail = "Straight";
  drive.scene.network.marks = {winch};
  drive.scene.rules.tow_out.rig = "Broadfoot";
  drive.weather.site = {};
  HourOfDay hour{.depart = drive.question.depart};
  hour.report_ran_out = *units::parse_instant("2026-02-01T11:00:00Z");
  const auto over = day_lines(drive.scene, drive.weather, hour);
  CHECK(has_line(over, "the site's report ran out 2026-02-01 11:00"));
  CHECK(has_line(over, "Winch on Straight: what was said of it ran out 2026-02-01 11:00"));
  CHECK(has_line(over, "Broadfoot; what was said of it ran out 2026-02-01 11:00: ask"));
  CHECK_FALSE(has_line(over, "nobody said"));
  // The report holds, its word on the winch does not.
  drive.weather.site.marks = {{"Winch", true, *units::parse_instant("2026-02-01T04:30:00Z")}};
  CHECK(has_line(day_lines(drive.scene, drive.weather, {.depart = drive.question.depart}),
                 "Winch on Straight: what was said of it ran out 2026-02-01 04:30"));
}

}  // namespace

}  // namespace rimehaul::card
