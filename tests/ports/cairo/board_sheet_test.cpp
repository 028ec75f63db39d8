// The printed day board: as many sheets as its pairs take, nothing cut, nothing small.
#include "ports/cairo/board_sheet.h"

#include <doctest/doctest.h>

#include <iterator>
#include <regex>
#include <string>

#include "ports/cairo/read_back.h"

namespace rimehaul {

namespace {

using passage::Verdict;
using ports::cairo::draw_board;
using testing::pages_of;
using testing::smallest_letters;
using testing::words_of;

passage::Finding finding_of(passage::Check check, double share) {
  passage::Finding finding;
  finding.check = check;
  finding.share = share;
  return finding;
}

void set_open(card::BoardRow& row) {
  row.verdict = Verdict::open;
  row.binding = finding_of(passage::Check::carrier_side_slip, 0.5);
  row.stand = passage::Stand::passes;
  row.worst_share = 0.5;
  row.time = units::Seconds{500};
}

void set_restricted(card::BoardRow& row) {
  row.verdict = Verdict::restricted;
  row.binding = finding_of(passage::Check::climb_traction, 0.82);
  row.stand = passage::Stand::exceeds;
  row.loads.bed = {{units::Kilograms{25}, units::Kilograms{137}}};
}

void set_unknown(card::BoardRow& row) {
  row.binding = passage::Finding{};
  row.binding->check = passage::Check::avalanche;
  row.binding->missing = "the bulletin's level";
  row.stand = passage::Stand::missing;
}

/// So many stations, all pairs, in all classes of one surface.
card::BoardReport board_with(int stations, const std::string& name) {
  card::BoardReport report;
  report.site = "Long Fell";
  report.rig = "Broadfoot";
  report.driver_level = "seasoned";
  report.allowed_share = 0.7;
  report.told_by = {"assumed for planning, weather observed by A. Example", {}};
  report.snow_valid_until = units::Instant{1'769'954'400};
  report.made_from.made = units::Instant{1'769'940'000};
  report.estimates = {"reaction time 2 s"};
  report.made_from.inputs = {{"site.toml", "site", "", {}}};
  for (int i = 0; i < snow::kWetnessCount; ++i) {
    report.snows.push_back({.wetness = static_cast<snow::Wetness>(i)});
  }
  for (int from = 0; from < stations; ++from) {
    for (int to = 0; to < stations; ++to) {
      for (std::size_t i = 0; from != to && i < report.snows.size(); ++i) {
        card::BoardRow row;
        row.trail = "Birk Climb";
        (i < 2 ? set_open : i < 4 ? set_restricted : set_unknown)(row);
        row.from = name + " " + std::to_string(from);
        row.to = name + " " + std::to_string(to);
        row.snow = report.snows[i];
        report.rows.push_back(row);
      }
    }
  }
  return report;
}

}  // namespace

TEST_CASE("ten stations in five snows fit front and back of a sheet, the tables in front") {
  card::BoardReport report = board_with(10, "Hut");
  for (int line = 0; line < 20; ++line) {
    report.today.push_back("gate Cable Gate " + std::to_string(line) + ": told clear until 11:00");
  }
  const std::string bytes = draw_board(report).bytes;
  CHECK(pages_of(bytes) == 2);
  CHECK(smallest_letters(bytes) >= 8.0);
  const std::string front = testing::told_of(bytes, "pdftotext -raw -l 1", "-");
  for (const char* part : {"dry, groomed", "slush, groomed", "J Hut 9", "Cable Gate 19"}) {
    CAPTURE(part);
    CHECK(front.find(part) != std::string::npos);
  }
  CHECK(front.find("SHA-256") == std::string::npos);
}

TEST_CASE("more stations and surfaces go on to more sheets, and every pair stands on them") {
  card::BoardReport report = board_with(31, "Hut");
  const std::string bytes = draw_board(report).bytes;
  CHECK(pages_of(bytes) > 4);
  CHECK(smallest_letters(bytes) >= 8.0);
  const std::string words = words_of(bytes);
  CHECK(words.find("AE Hut 30") != std::string::npos);
  const std::regex open{"\\b50 ?1\\b"};
  const std::string raw = testing::told_of(bytes, "pdftotext -raw", "-");
  const auto cells =
      std::distance(std::sregex_iterator{raw.begin(), raw.end(), open}, std::sregex_iterator{});
  CHECK(cells >= 31 * 30 * 2);  // two of five snows are open
}

TEST_CASE("long names fold and stay whole") {
  const std::string name =
      "The Upper Northern Winter Lodge of the Three Shoulders beside the Old Cable";
  card::BoardReport report = board_with(3, name);
  report.site = std::string(90, 'M');
  const std::string bytes = draw_board(report).bytes;
  const std::string words = words_of(bytes);
  for (int station = 0; station < 3; ++station) {
    CHECK(words.find(name + " " + std::to_string(station)) != std::string::npos);
  }
  std::string letters = words;
  std::erase(letters, ' ');
  CHECK(letters.find(report.site) != std::string::npos);
  CHECK(smallest_letters(bytes) >= 8.0);
}

TEST_CASE("a line of the day that is too long for what is left of a page goes on whole") {
  card::BoardReport report = board_with(10, "Hut");
  std::string last;
  for (int word = 0; word < 400; ++word) {
    last = "trail" + std::to_string(word);
    report.today.resize(1);
    report.today[0] += " " + last;
  }
  const std::string bytes = draw_board(report).bytes;
  CHECK(words_of(bytes).find(last) != std::string::npos);
  CHECK(pages_of(bytes) <= 3);
}

TEST_CASE("verdict, check, share, loads, snow, observer, validity and inputs are told in words") {
  card::BoardReport report = board_with(2, "Hut");
  const std::string words = words_of(draw_board(report).bytes);
  for (const std::string part :
       {"Day board: Long Fell; Broadfoot", "50 1", "82 2", "?3", "carrier side slip on Birk Climb",
        "climb traction on Birk Climb; opens with bed load from 25 kg to 137 kg",
        "avalanche exposure on Birk Climb: not known", "very wet, groomed", "A. Example",
        "runs out 2026-02-01 14:00", "reaction time 2 s", "site.toml", "SHA-256",
        "A planning aid, not permission to drive.", "closed: something is not known", "page 1 of 1",
        "B Hut 1"}) {
    CAPTURE(part);
    CHECK(words.find(part) != std::string::npos);
  }
}

TEST_CASE("the board lies on its side") {
  CHECK(testing::told_of(draw_board(board_with(2, "Hut")).bytes, "pdfinfo")
            .find("841.89 x 595.276") != std::string::npos);
}

TEST_CASE("the same board printed twice is the same to the byte") {
  CHECK(draw_board(board_with(4, "A")).bytes == draw_board(board_with(4, "A")).bytes);
}

}  // namespace rimehaul
