// The printed card: one sheet up to twelve legs, nothing cut, nothing small, read by other
// programs.
#include "ports/cairo/card_drawing.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <utility>

#include "card/sample_card.h"
#include "ports/cairo/read_back.h"

namespace rimehaul {

namespace {

using ports::cairo::draw_card;
using testing::pages_of;
using testing::smallest_letters;
using testing::times_in;
using testing::words_of;
using units::Metres;
using units::Slope;

/// With the map's frame as large as the layout leaves it.
card::CardSheet on_its_paper(card::CardSheet sheet) {
  const card::MapPaper paper = ports::cairo::card_map_paper(sheet);
  sheet.map.frame = {{Metres{0}, Metres{1000}},
                     Metres{10},
                     static_cast<std::int64_t>(paper.width.value() * 1000),
                     static_cast<std::int64_t>(paper.height.value() * 1000)};
  return sheet;
}

/// A card of so many legs with a map, a profile and a symbol made up to fit.
card::CardSheet sheet_of(int legs, const std::string& trail) {
  card::CardSheet sheet;
  sheet.card = testing::sample_card();
  sheet.card.legs.clear();
  sheet.card.verdict = passage::Verdict::open;
  sheet.map.scale = 10000;
  for (int number = 1; number <= legs; ++number) {
    card::CardLeg leg = testing::sample_leg(number);
    leg.trail = trail + " " + std::to_string(number);
    sheet.card.legs.push_back(leg);
    const Metres from{800.0 * (number - 1)};
    const Metres to{800.0 * number};
    sheet.profile.legs.push_back({from, to});
    sheet.profile.limits.push_back({{from, to}, Slope::from_degrees(12), Slope::from_degrees(9)});
    sheet.profile.pieces.push_back(
        {{from, to}, geo::Height{900}, Slope::from_degrees(-2), Slope::from_degrees(5)});
    sheet.map.ways.push_back(
        {.points = {{Metres{100}, Metres{100.0 * number}}, {Metres{900}, Metres{100.0 * number}}},
         .name = leg.trail,
         .verdict = leg.verdict,
         .number = number});
  }
  sheet.number = "20260201-0730-0123abcd";
  sheet.digest = std::string(64, 'a');
  sheet.qr = {21, std::vector<bool>(441, true)};
  return on_its_paper(std::move(sheet));
}

/// A card whose legs have more to mind than twelve of them leave room for in front.
card::CardSheet busy_sheet_of(int legs) {
  card::CardSheet sheet = sheet_of(legs, "North Traverse");
  for (card::CardLeg& leg : sheet.card.legs) {
    leg.notices.clear();
    for (int i = 0; i < 6; ++i) {
      const Metres at{100.0 * i};
      leg.notices.push_back(
          {{at, at}, "cornice " + std::to_string(i) + ": keep away", card::NoticeKind::warning});
      leg.notices.push_back(
          {{at, at}, "bay " + std::to_string(i) + ": call and wait", card::NoticeKind::help});
    }
  }
  return on_its_paper(std::move(sheet));
}

}  // namespace

TEST_CASE("a card of one, five or twelve legs is one sheet: two pages") {
  for (const int legs : {1, 5, 12}) {
    CAPTURE(legs);
    CHECK(pages_of(draw_card(sheet_of(legs, "North Traverse")).bytes) == 2);
  }
}

TEST_CASE("twelve busy legs are one sheet; what has no room in front is a note behind") {
  const card::CardSheet sheet = busy_sheet_of(12);
  const std::string bytes = draw_card(sheet).bytes;
  CHECK(pages_of(bytes) == 2);
  CHECK(smallest_letters(bytes) >= 8.0);
  const std::string front = words_of(bytes, 1);
  const std::string back = words_of(bytes, 2);
  int notes = 0;
  for (const card::CardLeg& leg : sheet.card.legs) {
    CAPTURE(leg.number);
    const std::string number = std::to_string(leg.number);
    const bool is_behind =
        back.find("Note " + number + ", " + leg.trail + ":") != std::string::npos;
    const bool is_pointed_at = front.find(number + " note " + leg.trail) != std::string::npos;
    CHECK(is_behind == is_pointed_at);
    notes += is_behind ? 1 : 0;
  }
  CHECK(notes > 0);
  CHECK(times_in(front + back, "cornice 3: keep away") == 12);
  CHECK(times_in(front + back, "bay 3: call and wait") == 12);
}

TEST_CASE("warnings stand in front before all else that is to be minded") {
  const std::string front = words_of(draw_card(busy_sheet_of(8)).bytes, 1);
  CHECK(times_in(front, "cornice 5: keep away") == 8);
  CHECK(times_in(front, "bay 5: call and wait") < 8);
}

TEST_CASE("the map gives way to the legs, and takes what they leave") {
  const auto paper = [](int legs) { return ports::cairo::card_map_paper(busy_sheet_of(legs)); };
  CHECK(paper(1).height > paper(4).height);
  CHECK(paper(1).width == paper(4).width);
  CHECK(paper(12).width < paper(1).width);
  CHECK(paper(12).height >= Metres{0.0449});
}

TEST_CASE("a leg that needs a decision says so in its row") {
  card::CardSheet sheet = sheet_of(3, "North Traverse");
  sheet.card.legs[1].verdict = passage::Verdict::restricted;
  const std::string front = words_of(draw_card(sheet).bytes, 1);
  CHECK(times_in(front, "RESTRICTED") == 1);
  CHECK(front.find("2 RESTRICTED North Traverse 2") != std::string::npos);
}

TEST_CASE("limits bear their values, rounded down, and symbols their meaning") {
  card::CardSheet sheet = sheet_of(3, "North Traverse");
  sheet.profile.limits[0].climb = Slope::from_degrees(7.09);
  const std::string front = words_of(draw_card(sheet).bytes, 1);
  for (const std::string part :
       {"12.0\u00b0 (21.2 %)", "9.0\u00b0 (15.8 %)", "7.0\u00b0 (12.4 %)", "station", "refuge",
        "room to turn", "restricted", "other trail"}) {
    CAPTURE(part);
    CHECK(front.find(part) != std::string::npos);
  }
}

TEST_CASE("forty legs with long names take more pages, and no name of them is cut") {
  const std::string name =
      "Upper Northern Long Traverse under the Three Shoulders and back to the Old Cable";
  const std::string bytes = draw_card(sheet_of(40, name)).bytes;
  CHECK(pages_of(bytes) > 2);
  const std::string words = words_of(bytes);
  for (int number = 1; number <= 40; ++number) {
    CAPTURE(number);
    CHECK(words.find(name + " " + std::to_string(number)) != std::string::npos);
  }
  CHECK(smallest_letters(bytes) >= 8.0);
}

TEST_CASE("a long site name and a name without blanks fold and stay whole") {
  card::CardSheet sheet = sheet_of(2, "North Traverse");
  sheet.card.site = "The Joint Haulage of the Upper and Lower Ridge Stations, Winter Service East";
  sheet.card.title = std::string(120, 'M');
  const std::string bytes = draw_card(sheet).bytes;
  CHECK(words_of(bytes).find(sheet.card.site) != std::string::npos);
  std::string letters = words_of(bytes);
  std::erase(letters, ' ');
  CHECK(letters.find(std::string(120, 'M')) != std::string::npos);
}

TEST_CASE("every line that a driver needs stands on the card, front or back") {
  const card::CardSheet sheet = sheet_of(3, "North Traverse");
  const std::string words = words_of(draw_card(sheet).bytes);
  for (const std::string part :
       {"OPEN", "A planning aid, not permission to drive.", "climb traction",
        "piste crossing Lower Run: stop", "Turn back or stop if", "Parking", "Before starting",
        "20260201-0730-0123abcd", "page 2 of 2", "1 : 10 000"}) {
    CAPTURE(part);
    CHECK(words.find(part) != std::string::npos);
  }
  for (const auto* list : {&sheet.card.turn_back_triggers, &sheet.card.pre_start_checks,
                           &sheet.card.parking_steps, &sheet.card.cautions}) {
    for (const std::string& line : *list) {
      CAPTURE(line);
      CHECK(words.find(line) != std::string::npos);
    }
  }
}

TEST_CASE("the same card printed twice is the same to the byte") {
  CHECK(draw_card(sheet_of(4, "A")).bytes == draw_card(sheet_of(4, "A")).bytes);
}

// 1 : 10 000 on paper: 500 m are 50 mm. The plate takes a quarter of 186 mm, the bar at most 55 %
// of that: 25.6 mm, so 200 m is the longest round bar.
TEST_CASE("the scale bar says a round length that fits") {
  CHECK(words_of(draw_card(sheet_of(2, "A")).bytes).find("200 m") != std::string::npos);
}

}  // namespace rimehaul
