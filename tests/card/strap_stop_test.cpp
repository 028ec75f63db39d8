// Where the card tells to stop: never on a bridge, in exposed ground, in a bend, on a slope or
// where nobody can pass. And where it tells not to.
#include <doctest/doctest.h>

#include <algorithm>
#include <string>

#include "card/exposed.h"
#include "card/notices.h"
#include "card/route_card.h"
#include "card/words.h"
#include "near.h"
#include "passage/demo_scene.h"
#include "passage/footfall.h"
#include "passage/judge.h"

namespace rimehaul::card {
namespace {

using testing::place;
using units::Metres;

geo::Span at_m(double from, double to) {
  return {Metres{from}, Metres{to}};
}

/// One trail of 1200 m to the north, cut in two at a station after 600 m, driven as drawn.
struct Drive {
  testing::TestTrails drawn = straight();
  testing::Surface ground = testing::plane(0, 0.01);
  rig::Rig rig = testing::towing_rig();

  static testing::TestTrails straight() {
    return {
        .trails = {testing::plain_trail("Straight", {place(0, 0), place(0, 600), place(0, 1200)})},
        .stations = {testing::plain_station("Start", place(0, 0)),
                     testing::plain_station("Half", place(0, 600)),
                     testing::plain_station("End", place(0, 1200))},
        .zones = {},
        .marks = {}};
  }

  void mark(trails::MarkKind kind, geo::Span span) {
    drawn.marks.push_back({.name = "it",
                           .kind = kind,
                           .trail = "Straight",
                           .span = span,
                           .survey = trails::Survey{{}, {}, {}, {}, testing::mid_morning()},
                           .most_mass = units::Kilograms{9'000},
                           .room = Metres{40}});
  }

  /// A runout across the trail, by metres to the north.
  void runout(double from_m, double to_m) {
    drawn.zones.push_back({.name = "Gully",
                           .kind = trails::ZoneKind::runout,
                           .region = {{{place(-50, from_m), place(50, from_m), place(50, to_m),
                                        place(-50, to_m), place(-50, from_m)}}},
                           .speed = {}});
  }

  [[nodiscard]] RouteCard card() const {
    const passage::Scene scene = testing::scene_of({ground}, drawn);
    const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry);
    const search::RouteQuestion question{
        .stations = {0, 2}, .depart = testing::mid_morning(), .permitted_by = "N. Example"};
    const passage::Judge judge{scene, rig, snow};
    search::Route route;
    for (const std::uint32_t id : {0U, 2U}) {
      const trails::LegId leg{id};
      route.legs.push_back({leg, question.depart, judge.judge(leg, question.depart), {}});
      route.legs.back().turn_into = {passage::Verdict::open,
                                     passage::kept(passage::Check::turning)};
      route.length += route.legs.back().judgement.length;
    }
    return make_card(route, {.scene = scene,
                             .rig = rig,
                             .snow = snow,
                             .question = question,
                             .made_from = {.inputs = {}, .versions = {}, .made = question.depart},
                             .snow_valid_until = {},
                             .heights_notes = {}});
  }

  /// Metres from the start of the route to the stop; below 0: none is named.
  [[nodiscard]] double stop_m() const {
    double before = 0.0;
    for (const CardLeg& leg : card().legs) {
      for (const Notice& notice : leg.notices) {
        if (notice.words.starts_with("stop, level and clear")) {
          return before + notice.span.from.value();
        }
      }
      before += leg.length.value();
    }
    return -1.0;
  }

  [[nodiscard]] double reach_m() const { return passage::overall_length(rig).value() + 10.0; }
};

bool is_told(const CardLeg& leg, const std::string& words) {
  return std::ranges::any_of(leg.notices, [&](const Notice& notice) {
    return notice.words.find(words) != std::string::npos;
  });
}

TEST_CASE("on a clear level trail the straps are looked at a fifth of the rules' distance on") {
  Drive drive;
  CHECK(drive.stop_m() == 100.0);
  drive.rig = testing::solo_rig();
  CHECK(drive.stop_m() == 100.0);
  drive.rig.load.bed = units::Kilograms{0};
  CHECK(drive.stop_m() == -1.0);
  CHECK_FALSE(is_told(drive.card().legs[0], "straps"));
}

TEST_CASE("nobody is told to stop on or near a bridge, crossing, cable, gate, cornice or drop") {
  using enum trails::MarkKind;
  for (const trails::MarkKind kind :
       {bench, bridge, road_crossing, piste_crossing, winch_cable, blasting, gate, radio_gate,
        creek_bridge, cornice, drop, dead_zone}) {
    CAPTURE(trails::words_for(kind));
    Drive drive;
    drive.mark(kind, at_m(90, 140));
    CHECK(drive.stop_m() >= 140.0 + drive.reach_m());
    CHECK(drive.stop_m() <= 141.0 + drive.reach_m());
    // A hair beyond what the rig reaches it says nothing.
    drive.drawn.marks.back().span = at_m(100.1 + drive.reach_m(), 400);
    CHECK(drive.stop_m() == 100.0);
  }
  for (const trails::MarkKind kind : {refuge, turning_room, passing_place, check_in}) {
    Drive drive;
    drive.mark(kind, at_m(90, 140));
    CHECK(drive.stop_m() == 100.0);
  }
}

TEST_CASE("nobody is told to stop where avalanches may reach, and the leg says where not to") {
  Drive drive;
  drive.runout(90, 200);
  const RouteCard card = drive.card();
  CHECK(card.verdict == passage::Verdict::restricted);
  REQUIRE(card.legs[0].exposed.size() == 1);
  const geo::Span exposed = card.legs[0].exposed[0];
  const Metres rig_length = passage::overall_length(drive.rig);
  // Pieces are up to 5 m long, and the whole rig must be out.
  CHECK(exposed.from <= Metres{90} - rig_length);
  CHECK(exposed.from >= Metres{80} - rig_length);
  CHECK(exposed.to >= Metres{200} + rig_length);
  CHECK(exposed.to <= Metres{210} + rig_length);
  CHECK(card.legs[1].exposed.empty());
  const auto told = std::ranges::find(
      card.legs[0].notices, words::exposed(metres_of(card.legs[0].exposed)), &Notice::words);
  REQUIRE(told != card.legs[0].notices.end());
  CHECK(told->span == exposed);
  CHECK(drive.stop_m() >= exposed.to.value());
}

TEST_CASE("ground exposed at a leg's end is not for stopping on the next leg's first metres") {
  Drive drive;
  drive.runout(500, 600);
  const RouteCard card = drive.card();
  REQUIRE(card.legs[1].exposed.size() == 1);
  CHECK(card.legs[1].exposed[0].from == Metres{0});
  CHECK(card.legs[1].exposed[0].to >= passage::overall_length(drive.rig));
  CHECK(metres_of({at_m(10, 20), at_m(40, 45)}) == Metres{15});
}

TEST_CASE("nobody is told to stop on a slope") {
  Drive drive;
  // 12 % up to 250 m, level behind.
  drive.ground = [](double, double north) { return 1000 + 0.12 * std::min(north, 250.0); };
  CHECK(drive.stop_m() > 250.0);
  // Along the slope is no better.
  drive.ground = [](double east, double north) { return 1000 + (north < 250 ? 0.12 : 0.0) * east; };
  CHECK(drive.stop_m() > 250.0);
}

TEST_CASE("nobody is told to stop in a bend, nor where another trail meets") {
  Drive drive;
  drive.drawn.trails[0] = testing::plain_trail(
      "Straight", testing::followed_by(testing::rounded({place(0, 0), place(0, 110), place(60, 130),
                                                         place(60, 240)}),
                                       {place(60, 600), place(60, 1200)}));
  drive.drawn.stations[1].place = place(60, 600);
  drive.drawn.stations[2].place = place(60, 1200);
  CHECK(drive.stop_m() > 130.0);
  Drive cut;
  cut.drawn.trails[0] =
      testing::plain_trail("Straight", {place(0, 0), place(0, 100), place(0, 1200)});
  cut.drawn.stations[1].place = place(0, 100);
  CHECK(cut.stop_m() >= 100.0 + cut.reach_m());
}

TEST_CASE("on a narrow lane driven both ways one stops in a passing place only") {
  Drive drive;
  drive.drawn.trails[0].lanes = 1;
  drive.drawn.trails[0].width = Metres{3.9};  // two rigs of 1.5 m and a metre between need 4
  CHECK(drive.stop_m() == -1.0);
  const std::vector<Notice> notices = drive.card().legs[0].notices;
  const auto none = std::ranges::find(
      notices, words::no_place_for_straps(Metres{500}, passage::Towing::yes), &Notice::words);
  REQUIRE(none != notices.end());
  CHECK(none->span == at_m(0, 0));
  CHECK(none->words.find("first 500 m") != std::string::npos);
  drive.mark(trails::MarkKind::passing_place, at_m(220, 230));
  CHECK(drive.stop_m() == 220.0);
  drive.drawn.trails[0].width = Metres{4.0};
  CHECK(drive.stop_m() == 100.0);
  drive.drawn.trails[0].width = Metres{3.9};
  drive.drawn.trails[0].direction = trails::AllowedDirection::forward;
  CHECK(drive.stop_m() == 100.0);
}

TEST_CASE("the stop never lies farther on than the rules' distance") {
  Drive drive;
  drive.mark(trails::MarkKind::dead_zone, at_m(0, 495));
  CHECK(drive.stop_m() == -1.0);
  drive.drawn.marks[0].span = at_m(0, 500.0 - drive.reach_m() - 1.5);
  CHECK(drive.stop_m() > 0.0);
  CHECK(drive.stop_m() <= 500.0);
}

}  // namespace
}  // namespace rimehaul::card
