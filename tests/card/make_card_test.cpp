#include <doctest/doctest.h>

#include <algorithm>
#include <string>

#include "card/card_text.h"
#include "card/notices.h"
#include "card/route_card.h"
#include "card/triggers.h"
#include "card/words.h"
#include "near.h"
#include "passage/demo_scene.h"

namespace rimehaul::card {
namespace {

using units::Metres;

trails::Mark mark_on(const std::string& trail, trails::MarkKind kind, geo::Span span) {
  return {.name = std::string{"the "} + trails::words_for(kind),
          .kind = kind,
          .trail = trail,
          .span = span,
          .survey = {},
          .most_mass = {},
          .room = {}};
}

geo::Span at_m(double from, double to) {
  return {Metres{from}, Metres{to}};
}

/// Depot to Lodge over the Lower Way, with something to mind.
testing::TestTrails lower_way_with_marks() {
  testing::TestTrails trails = testing::two_ways();
  trails.marks = {mark_on("Lower Way", trails::MarkKind::dead_zone, at_m(120, 160)),
                  mark_on("Lower Way", trails::MarkKind::piste_crossing, at_m(40, 40)),
                  mark_on("Lower Way", trails::MarkKind::check_in, at_m(300, 300)),
                  mark_on("Lower Way", trails::MarkKind::refuge, at_m(150, 150))};
  trails.marks.push_back(mark_on("Lower Way", trails::MarkKind::turning_room, at_m(90, 90)));
  trails.marks.back().room = Metres{20};
  trails.stations[1].turning_radius.reset();
  return trails;
}

/// The Lower Way as a route, judged leg by leg, in the direction asked for.
struct Drive {
  passage::Scene scene = testing::scene_of({testing::rolling()}, lower_way_with_marks());
  rig::Rig rig = testing::solo_rig();
  snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry);
  search::RouteQuestion question{
      .stations = {0, 1}, .depart = testing::mid_morning(), .permitted_by = {}};
  search::Route route;

  explicit Drive(trails::Way way) {
    const passage::Judge judge{scene, rig, snow};
    for (std::uint32_t i = 0; i < scene.network.legs.size(); ++i) {
      const trails::Leg& leg = scene.network.legs[i];
      if (scene.network.trails[leg.trail].name == "Lower Way" && leg.way == way) {
        add(judge, trails::LegId{i});
      }
    }
    if (way == trails::Way::against) {
      std::ranges::reverse(route.legs);
      std::ranges::reverse(question.stations);
    }
  }

  void add(const passage::Judge& judge, trails::LegId id) {
    search::RouteLeg part{id, question.depart, judge.judge(id, question.depart), {}};
    part.turn_into = {passage::Verdict::open, passage::kept(passage::Check::turning)};
    route.worst_share = std::max(route.worst_share, part.judgement.share().value_or(9.0));
    route.time += part.judgement.time;
    route.fuel += part.judgement.fuel;
    route.length += part.judgement.length;
    route.legs.push_back(part);
  }

  [[nodiscard]] CardContext context() const {
    return {.scene = scene,
            .rig = rig,
            .snow = snow,
            .question = question,
            .made_from = {.inputs = {}, .versions = {}, .made = question.depart},
            .snow_valid_until = {},
            .heights_notes = {},
            .places_rewalked = 7};
  }
};

bool has_line(const std::vector<std::string>& lines, std::string_view part) {
  return std::ranges::any_of(
      lines, [&](const std::string& line) { return line.find(part) != std::string::npos; });
}

TEST_CASE("the card of a route holds its legs in order and adds them up") {
  const Drive drive{trails::Way::as_drawn};
  const RouteCard card = make_card(drive.route, drive.context());
  REQUIRE(card.legs.size() == 2);
  CHECK(card.title == "Depot to Lodge");
  CHECK(card.legs[0].from == "Depot");
  CHECK(card.legs[0].to == card.legs[1].from);
  CHECK(card.legs[1].to == "Lodge");
  CHECK(testing::near(card.climb, card.legs[0].climb + card.legs[1].climb, Metres{1e-9}));
  CHECK(testing::near(card.drop, card.legs[0].drop + card.legs[1].drop, Metres{1e-9}));
  CHECK(card.verdict == passage::Verdict::open);
  CHECK(card.permitted_by.empty());
  CHECK(card.total_mass == rig::weigh(drive.rig).total());
  CHECK(card.worst_share == drive.route.worst_share);
}

TEST_CASE("the trace starts and ends at the stations, with heights, and never strides over 25 m") {
  const Drive drive{trails::Way::as_drawn};
  const RouteCard card = make_card(drive.route, drive.context());
  REQUIRE(card.trace.size() > 10);
  CHECK(card.trace.front().place == drive.scene.network.stations[0].place);
  CHECK(card.trace.back().place == drive.scene.network.stations[1].place);
  CHECK(testing::near(card.trace.back().chainage, drive.route.length, Metres{30}));
  for (std::size_t i = 1; i < card.trace.size(); ++i) {
    const Metres stride = card.trace[i].chainage - card.trace[i - 1].chainage;
    CHECK(stride > Metres{0});
    CHECK(stride <= Metres{25.001});
    CHECK(card.trace[i].height.has_value());
  }
}

TEST_CASE("what lies on the way is told in driving order, and in the other order on the way back") {
  const auto order = [](const RouteCard& card) {
    std::vector<std::string> starts;
    for (const CardLeg& leg : card.legs) {
      for (const Notice& notice : leg.notices) {
        // The look at the straps goes by the distance driven, not by a place.
        if (!notice.words.starts_with("stop, level and clear")) {
          starts.push_back(notice.words.substr(0, 10));
        }
      }
    }
    return starts;
  };
  const Drive there{trails::Way::as_drawn};
  const Drive back{trails::Way::against};
  auto on_the_way = order(make_card(there.route, there.context()));
  const auto on_the_way_back = order(make_card(back.route, back.context()));
  REQUIRE(on_the_way.size() == 5);
  CHECK(on_the_way.front().starts_with("piste"));
  std::ranges::reverse(on_the_way);
  // The refuge lies within the dead zone, which is met first whichever way it is driven.
  std::swap(on_the_way[1], on_the_way[2]);
  CHECK(on_the_way_back == on_the_way);
}

TEST_CASE("the next turn-round and refuge ahead are those not yet passed") {
  const Drive drive{trails::Way::as_drawn};
  const RouteCard card = make_card(drive.route, drive.context());
  REQUIRE(card.legs[0].turn_round.distance.has_value());
  CHECK(testing::near(*card.legs[0].turn_round.distance, Metres{90}, Metres{1e-6}));
  REQUIRE(card.legs[0].refuge.distance.has_value());
  CHECK(testing::near(*card.legs[0].refuge.distance, Metres{150}, Metres{1e-6}));
  CHECK_FALSE(card.legs[1].turn_round.distance.has_value());
  REQUIRE(card.legs[1].refuge.distance.has_value());
  CHECK(card.legs[1].refuge.name == "Lodge");
  CHECK(testing::near(*card.legs[1].refuge.distance, card.legs[1].length, Metres{2}));
}

TEST_CASE("a turning room smaller than the rig needs is no turn-round") {
  Drive drive{trails::Way::as_drawn};
  drive.scene.network.marks.back().room = Metres{2};
  const RouteCard card = make_card(drive.route, drive.context());
  CHECK_FALSE(card.legs[0].turn_round.distance.has_value());
}

TEST_CASE("the side of a cornice or drop is told as the driver meets it, driven either way") {
  trails::Mark edge = mark_on("Lower Way", trails::MarkKind::cornice, at_m(60, 80));
  edge.room = Metres{12.8};
  edge.side = trails::Side::right;
  const auto told = [&edge](trails::Way way) {
    Drive drive{way};
    drive.scene.network.marks.push_back(edge);
    std::string all;
    for (const CardLeg& leg : make_card(drive.route, drive.context()).legs) {
      for (const Notice& notice : leg.notices) {
        all += notice.words + "\n";
      }
    }
    return all;
  };
  const auto says = [](const std::string& all, const char* part) {
    return all.find(part) != std::string::npos;
  };
  using trails::Way;
  CHECK(says(told(Way::as_drawn), "cornice on the RIGHT, 12 m from the line: keep left\n"));
  CHECK(says(told(Way::against), "cornice on the LEFT, 12 m from the line: keep right\n"));
  edge.side.reset();
  CHECK(says(told(Way::as_drawn), "cornice, 12 m from the line, side not told"));
  edge.kind = trails::MarkKind::drop;
  edge.side = trails::Side::left;
  CHECK(says(told(Way::as_drawn), "on the LEFT, 12 m from the line: keep right, walking pace"));
}

TEST_CASE("radio: leaving, dead zones and check-ins in driving order, arrival") {
  const Drive drive{trails::Way::as_drawn};
  const auto radio = radio_lines(drive.route, drive.context());
  REQUIRE(radio.size() == 5);
  CHECK(radio[0].starts_with("the site names nobody to call"));
  CHECK(radio[1].starts_with("call on leaving Depot"));
  CHECK(radio[2].find("no radio") != std::string::npos);
  CHECK(radio[2].find("leg 1 from 120 m to 160 m") != std::string::npos);
  CHECK(radio[3].starts_with("leg 2 at "));
  CHECK(radio[4] == "call on arrival at Lodge");
}

TEST_CASE("turn-back triggers carry the numbers of this route") {
  Drive drive{trails::Way::as_drawn};
  drive.scene.network.trails[0].hours = trails::OpenHours{{0}, {17 * 60 + 30}};
  const auto triggers = turn_back_triggers(drive.route, drive.context());
  // Marker spacing 20 m, two of them; sight of 60 m along the trail: the larger counts.
  CHECK(has_line(triggers, "less than 60 m"));
  CHECK(has_line(triggers, "wind over 72 km/h"));  // 20 m/s
  CHECK(has_line(triggers, "off Lower Way by 17:30"));
  CHECK(has_line(triggers, "judged (dry, groomed)"));
  CHECK(has_line(triggers, "above level 1"));
  CHECK(has_line(triggers, "begins to rain"));
  CHECK(has_line(triggers, "13.4 L (the reserve)"));  // a third of 40 L, rounded up
}

TEST_CASE("the wind to turn back at is the least that closes any trail of the route or the site") {
  // A third trail of the scene is not driven, so its limit says nothing.
  Drive drive{trails::Way::as_drawn};
  drive.scene.network.trails[1].most_wind = units::MetresPerSecond{2};
  drive.scene.network.trails[0].most_wind = units::MetresPerSecond{40.0 / 3.6};
  CHECK(has_line(turn_back_triggers(drive.route, drive.context()), "wind over 40 km/h"));
  drive.scene.rules.most_wind = units::MetresPerSecond{10};
  CHECK(has_line(turn_back_triggers(drive.route, drive.context()), "wind over 36 km/h"));
  drive.scene.rules.most_wind.reset();
  CHECK(has_line(turn_back_triggers(drive.route, drive.context()), "wind over 40 km/h"));
  drive.scene.network.trails[0].most_wind.reset();
  CHECK_FALSE(has_line(turn_back_triggers(drive.route, drive.context()), "wind over"));
}

/// A route over three trails, the second and third of them standing in for further ones.
Drive drive_over_three_trails() {
  Drive drive{trails::Way::as_drawn};
  search::RouteLeg more = drive.route.legs.back();
  for (std::uint32_t i = 0; i < drive.scene.network.legs.size() && drive.route.legs.size() < 4;
       i += 2) {
    if (drive.scene.network.legs[i].trail == drive.route.legs.size() - 1) {
      more.leg = trails::LegId{i};
      drive.route.legs.push_back(more);
    }
  }
  REQUIRE(drive.route.legs.size() == 4);  // Lower Way twice, Upper Way, Link
  return drive;
}

TEST_CASE("when to be off a trail is said of each that no later trail's closing implies") {
  Drive drive = drive_over_three_trails();
  std::vector<trails::Trail>& trails = drive.scene.network.trails;
  const auto closes = [](int hour) { return trails::OpenHours{{0}, {hour * 60}}; };
  trails[0].hours = closes(15);
  trails[1].hours = closes(16);
  trails[2].hours = closes(17);
  auto triggers = turn_back_triggers(drive.route, drive.context());
  CHECK(has_line(triggers, "off Lower Way by 15:00"));
  CHECK(has_line(triggers, "off Upper Way by 16:00"));
  CHECK(has_line(triggers, "off Link by 17:00"));
  trails[2].hours = closes(14);
  triggers = turn_back_triggers(drive.route, drive.context());
  CHECK(has_line(triggers, "off Link by 14:00"));
  CHECK_FALSE(has_line(triggers, "off Upper Way"));
  CHECK_FALSE(has_line(triggers, "off Lower Way"));
  // Midnight closes too, unless the trail never does.
  trails[2].hours = trails::OpenHours{{1}, {1440}};
  CHECK(has_line(turn_back_triggers(drive.route, drive.context()), "off Link by 24:00"));
  trails[2].hours = trails::OpenHours{{0}, {1440}};
  CHECK_FALSE(has_line(turn_back_triggers(drive.route, drive.context()), "off Link"));
  // Past midnight, one o'clock comes after eleven.
  trails[0].hours = closes(23);
  trails[1].hours = closes(1);
  drive.route.legs[2].entry = *units::parse_instant("2026-02-02T00:10:00Z");
  triggers = turn_back_triggers(drive.route, drive.context());
  CHECK(has_line(triggers, "off Lower Way by 23:00"));
  CHECK(has_line(triggers, "off Upper Way by 01:00"));
}

TEST_CASE("snow is worse than judged leg by leg, where legs were judged in different snow") {
  Drive drive = drive_over_three_trails();
  const snow::SnowState moist{snow::Wetness::moist, snow::Surface::groomed};
  drive.route.legs[1].judgement.snow = {moist};
  CHECK(has_line(turn_back_triggers(drive.route, drive.context()),
                 "judged (legs 1, 3, 4: dry, groomed / leg 2: moist, groomed)"));
  drive.route.legs[0].judgement.snow = {moist};
  drive.route.legs[2].judgement.snow = {moist};
  CHECK(has_line(turn_back_triggers(drive.route, drive.context()),
                 "judged (legs 1 to 3: moist, groomed / leg 4: dry, groomed)"));
}

TEST_CASE("the sight to turn back at is the most that any leg asks for") {
  Drive drive = drive_over_three_trails();
  drive.scene.network.trails[2].sight = Metres{90};
  CHECK(least_visibility(drive.route, drive.context()) == Metres{90});
  drive.scene.network.trails[1].marker_spacing = Metres{70};
  CHECK(least_visibility(drive.route, drive.context()) == Metres{140});
}

TEST_CASE("a mark that was told clear until an hour is a reason, wherever the judge asks of it") {
  Drive drive{trails::Way::as_drawn};
  snow::DayWeather weather = testing::plain_weather();
  weather.site.marks = {{"the gate", true, *units::parse_instant("2026-02-01T10:30:00Z")}};
  drive.snow = {{snow::Wetness::dry, snow::Surface::groomed}, weather, "told"};
  CHECK_FALSE(has_line(turn_back_triggers(drive.route, drive.context()), "the gate"));
  // The second mark of that name is on the way: one that ends where the first leg begins.
  drive.scene.network.marks.push_back(mark_on("Upper Way", trails::MarkKind::gate, at_m(5, 5)));
  drive.scene.network.marks.push_back(mark_on("Lower Way", trails::MarkKind::gate, at_m(-9, 0)));
  CHECK(has_line(turn_back_triggers(drive.route, drive.context()),
                 "past the gate by 2026-02-01 10:30, until when"));
}

TEST_CASE("far markers ask for more sight than the trail's own") {
  Drive drive{trails::Way::as_drawn};
  drive.scene.network.trails[0].marker_spacing = Metres{50};
  CHECK(least_visibility(drive.route, drive.context()) == Metres{100});
}

TEST_CASE("fuel: enough to come back says nothing, less warns, too little for the route says so") {
  Drive drive{trails::Way::as_drawn};
  drive.route.fuel = units::Litres{3};
  drive.rig.carrier.tank = units::Litres{30};
  drive.scene.rules.fuel_reserve = 0.25;
  const auto warnings = [&drive](double aboard_l, std::optional<double> back_l) {
    drive.rig.load.fuel = units::Litres{aboard_l};
    CardContext context = drive.context();
    context.fuel_back = back_l ? std::optional{units::Litres{*back_l}} : std::nullopt;
    return fuel_warnings(drive.route, context);
  };
  CHECK(warnings(14.5, 4.0).empty());
  CHECK(has_line(warnings(14.4, 4.0), "come back"));
  CHECK(has_line(warnings(14.4, 4.0), "takes 14.5 L"));
  CHECK(has_line(warnings(10.5, 4.0), "come back"));
  CHECK(has_line(warnings(10.4, 4.0), "does not cover"));
  CHECK(has_line(warnings(std::nan(""), 4.0), "does not cover"));
  CHECK(has_line(warnings(30, std::nan("")), "come back"));
  CHECK(has_line(warnings(30, std::nullopt), "no way back is open"));
}

TEST_CASE("where fuel is to be had on the way, the warning names the place") {
  Drive drive{trails::Way::as_drawn};
  drive.route.fuel = units::Litres{3};
  drive.rig.carrier.tank = units::Litres{30};
  drive.scene.rules.fuel_reserve = 0.25;
  drive.rig.load.fuel = units::Litres{11};
  const auto warnings = [&drive] {
    CardContext context = drive.context();
    context.fuel_back = units::Litres{4};
    return fuel_warnings(drive.route, context);
  };
  CHECK(has_line(warnings(), "there is no fuel on this way"));
  drive.scene.network.stations[1].kind = trails::StationKind::fuel;
  CHECK(has_line(warnings(), "fuel on this way at Lodge, and then ask anew"));
}

TEST_CASE("a decision that was taken is told with its leg and with who took it") {
  Drive drive{trails::Way::as_drawn};
  drive.question.permitted_by = "N. Example";
  passage::Finding asking = passage::kept(passage::Check::avalanche);
  asking.asks = "drive near steep ground";
  drive.route.legs[1].judgement.findings.push_back(asking);
  const RouteCard card = make_card(drive.route, drive.context());
  CHECK(card.verdict == passage::Verdict::restricted);
  REQUIRE(card.permitted.size() == 1);
  CHECK(card.permitted[0] == "leg 2: drive near steep ground");
  CHECK(card.permitted_by == "N. Example");
}

TEST_CASE("a turn that is tighter than its leg is what binds the leg") {
  Drive drive{trails::Way::as_drawn};
  drive.route.legs[1].turn_into.binding.share = 0.69;
  const RouteCard card = make_card(drive.route, drive.context());
  CHECK(card.legs[1].binding_share == 0.69);
  CHECK(card.legs[1].binding_key == "turning");
  CHECK(card.legs[1].binding_check.starts_with("turn into the leg"));
}

TEST_CASE("skis, runners and the hitch are looked over only where the rig has them") {
  Drive solo{trails::Way::as_drawn};
  const auto alone = make_card(solo.route, solo.context()).pre_start_checks;
  CHECK_FALSE(has_line(alone, "hitch"));
  CHECK_FALSE(has_line(alone, "skis"));
  solo.rig.trailer = testing::plain_trailer();
  solo.rig.carrier.kind = rig::CarrierKind::skis_and_tracks;
  const auto towing = make_card(solo.route, solo.context()).pre_start_checks;
  for (const char* part :
       {"fluids", "leaks", "fuel", "axle fastenings", "skis", "brake", "steering", "stop switch",
        "lights", "belts", "runners", "hitch", "safety strap or chain", "load"}) {
    CAPTURE(part);
    CHECK(has_line(towing, part));
  }
}

TEST_CASE("the same route gives the same card, letter by letter") {
  const Drive drive{trails::Way::as_drawn};
  CHECK(text_of(make_card(drive.route, drive.context()), 80) ==
        text_of(make_card(drive.route, drive.context()), 80));
}

}  // namespace
}  // namespace rimehaul::card
