// The verb `board`: its cells against single routes, its table, its text, and its order in wetter
// snow.
#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <regex>
#include <sstream>

#include "app/tiny_site.h"
#include "told.h"

namespace rimehaul::app {

namespace {

using testing::Ran;
using testing::run_command;
using testing::TinySite;

const std::string kDemo = std::string{RIMEHAUL_ROOT} + "/routes/marrowfell";

bool says(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

std::string bytes_of(const std::string& path) {
  std::ifstream stream{path, std::ios::binary};
  REQUIRE(stream.good());
  return {std::istreambuf_iterator<char>{stream}, std::istreambuf_iterator<char>{}};
}

/// The cells of a table's records; none of those read here holds a comma in the cells wanted.
std::vector<std::vector<std::string>> records_of(const std::string& table) {
  std::vector<std::vector<std::string>> records;
  std::istringstream lines{table};
  for (std::string line; std::getline(lines, line);) {
    std::vector<std::string>& cells = records.emplace_back();
    std::istringstream parts{line};
    for (std::string cell; std::getline(parts, cell, ',');) {
      cells.push_back(cell);
    }
  }
  return records;
}

constexpr std::size_t kSnow = 3;
constexpr std::size_t kFrom = 5;
constexpr std::size_t kTo = 6;
constexpr std::size_t kVerdict = 7;

/// The worst share that an answer in JSON tells first, as written there.
std::string worst_share_in(const std::string& json) {
  const std::string key = "\"worst_share\":";
  const std::size_t at = json.find(key);
  if (at == std::string::npos) {
    return "none";
  }
  const std::size_t from = at + key.size();
  return json.substr(from, json.find_first_of(",}", from) - from);
}

/// What the board and a single question say of one pair in one snow.
struct Asked {
  std::string site;
  std::vector<std::string> rig;
  std::string snow;
  std::string from;
  std::string to;
};

std::vector<std::string> words_for(const std::string& verb, const Asked& asked) {
  std::vector<std::string> words{verb, asked.site};
  words.insert(words.end(), asked.rig.begin(), asked.rig.end());
  for (const char* word : {"--visibility", "400", "--wind", "10", "--bulletin", "2", "--new-snow",
                           "0", "--rain", "no", "--temperature", "-5", "--json", "-"}) {
    words.emplace_back(word);
  }
  for (const std::string& word : {std::string{"--snow"}, asked.snow, std::string{"--from"},
                                  asked.from, std::string{"--to"}, asked.to}) {
    words.push_back(word);
  }
  return words;
}

void check_alike(const Asked& asked) {
  CAPTURE(asked.snow);
  CAPTURE(asked.from);
  CAPTURE(asked.to);
  const Ran board = run_command(words_for("board", asked));
  const Ran route = run_command(words_for("route", asked));
  REQUIRE(board.status == Status::yes);
  const bool open = route.status == Status::yes;
  CHECK(says(board.out, "\"verdict\":\"open\"") == open);
  if (open) {
    CHECK(worst_share_in(board.out) == worst_share_in(route.out));
    CHECK(worst_share_in(board.out) != "none");
  } else {
    REQUIRE(route.status == Status::honest_no);
    const bool restricted = says(board.out, "\"verdict\":\"restricted\"");
    CHECK((!restricted || says(route.out, "\"verdict\":\"restricted\"")));
    CHECK(worst_share_in(board.out) == "none");
  }
}

const std::vector<std::string> kSolo{"--rig", "solo", "--load", "20"};

}  // namespace

TEST_CASE("every cell of the board says what a single route says, on the tiny site") {
  const TinySite site;
  for (const char* snow : {"dry", "moist", "slush"}) {
    for (const char* to : {"Top", "Hut"}) {
      check_alike({site.folder(), kSolo, snow, "Base", to});
      check_alike({site.folder(), kSolo, snow, to, "Base"});
    }
  }
}

TEST_CASE("every cell of the board says what a single route says, on pairs of the demo" *
          doctest::test_suite("whole demo")) {
  const std::vector<std::string> sled{"--rig", "Broadfoot with sled", "--load",
                                      "40",    "--towed-load",        "60"};
  check_alike(
      {kDemo, {"--rig", "Broadfoot", "--load", "40"}, "moist", "Cable House", "Fell Lodge"});
  check_alike({kDemo, sled, "moist", "Cable House", "Fell Lodge"});
  check_alike({kDemo, sled, "wet", "Cable House", "Fell Lodge"});
}

TEST_CASE("wetter snow opens no pair at a fixed surface" * doctest::test_suite("whole demo")) {
  const TinySite scratch;
  const std::string csv = scratch.path("board.csv");
  const Ran ran = run_command({"board", kDemo, "--rig", "Broadfoot", "--load", "100",
                               "--visibility", "400", "--wind", "18", "--bulletin", "2", "--now",
                               "2026-02-01T18:00:00Z", "--csv", csv});
  REQUIRE(ran.status == Status::yes);
  const auto records = records_of(bytes_of(csv));
  REQUIRE(records.size() == 1 + 90 * 5);
  CHECK(records.front().at(kVerdict) == "verdict");
  std::size_t open = 0;
  for (std::size_t i = 2; i < records.size(); ++i) {
    const auto& drier = records[i - 1];
    const auto& here = records[i];
    if (drier.at(kFrom) == here.at(kFrom) && drier.at(kTo) == here.at(kTo)) {
      CHECK(drier.at(kSnow) != here.at(kSnow));
      CHECK((here.at(kVerdict) != "open" || drier.at(kVerdict) == "open"));
    }
    open += here.at(kVerdict) == "open" ? 1 : 0;
  }
  CHECK(open > 0);
  CHECK(open < records.size() - 1);
}

TEST_CASE("the board on the screen keeps to 80 columns, says why, and is no permission") {
  const TinySite site;
  const Ran ran = run_command({"board", site.folder(), "--rig", "towing", "--load", "20",
                               "--towed-load", "0", "--surface", "all"});
  REQUIRE(ran.status == Status::yes);
  for (const char* part :
       {"DAY BOARD", "FROM Base, groomed snow", "FROM Base, ice snow", "very wet", "closed",
        "towing in wet snow", "CAUTIONS", "A planning aid, not permission to drive."}) {
    CAPTURE(part);
    CHECK(says(ran.out, part));
  }
  std::istringstream lines{ran.out};
  for (std::string line; std::getline(lines, line);) {
    CAPTURE(line);
    CHECK(line.size() <= 80);
  }
}

TEST_CASE("a load that is too heavy for a pair asked for comes with the loads that open it") {
  const TinySite site;
  const Ran with = run_command({"board", site.folder(), "--rig", "solo", "--load", "240", "--snow",
                                "dry", "--from", "Base", "--to", "Top", "--json", "-"});
  REQUIRE(with.status == Status::yes);
  CHECK(says(with.out, "\"verdict\":\"restricted\""));
  CHECK(says(with.out, "\"bed\":[{\"from_kg\":"));
}

namespace {

/// The lines of a board's table that leave from a station; none where it cannot be had.
std::vector<std::string> lines_from(const std::string& station,
                                    const std::vector<std::string>& words) {
  const Ran ran = run_command(words);
  CAPTURE(ran.err);
  REQUIRE(ran.status == Status::yes);
  std::vector<std::string> lines;
  std::istringstream table{ran.out};
  for (std::string line; std::getline(table, line);) {
    if (says(line, "," + station + ",")) {
      lines.push_back(line);
    }
  }
  std::erase_if(lines, [&](const std::string& line) {
    return records_of(line).front().at(kFrom) != station;
  });
  return lines;
}

}  // namespace

TEST_CASE("a cell of the whole board is the same as in the board of one station, loads too") {
  const TinySite site;
  const std::vector<std::string> board{"board",  site.folder(), "--rig", "solo",
                                       "--load", "240",         "--csv", "-"};
  std::size_t with_loads = 0;
  for (const char* station : {"Base", "Top", "Hut"}) {
    std::vector<std::string> one = board;
    one.insert(one.end(), {"--from", station});
    const std::vector<std::string> lines = lines_from(station, board);
    CHECK(lines.size() == 10);
    CHECK(lines == lines_from(station, one));
    with_loads += static_cast<std::size_t>(std::ranges::count_if(
        lines, [](const std::string& line) { return says(line, "bed load from 0 kg"); }));
  }
  CHECK(with_loads > 0);
}

TEST_CASE("a pair that a load opens with a decision besides is restricted, as route says" *
          doctest::test_suite("whole demo")) {
  const std::vector<std::string> asked{
      "--rig",  "Broadfoot",   "--load", "190",        "--snow", "dry",   "--visibility",
      "400",    "--wind",      "18",     "--bulletin", "2",      "--now", "2026-02-01T18:30:00Z",
      "--from", "Cable House", "--to",   "Crow Top"};
  const auto ask = [&](const std::string& verb, const std::vector<std::string>& more) {
    std::vector<std::string> words{verb, kDemo};
    words.insert(words.end(), asked.begin(), asked.end());
    words.insert(words.end(), more.begin(), more.end());
    return run_command(words);
  };
  const Ran board = ask("board", {"--json", "-"});
  CHECK(says(board.out, "\"verdict\":\"restricted\""));
  CHECK(says(board.out, "\"and_decision\":true"));
  const std::string load = "\"bed\":[{\"from_kg\":0.0,\"to_kg\":140.0}]";
  CHECK(says(board.out, load));
  const std::string told = ask("board", {}).out;
  CHECK(says(told, "payload"));
  CHECK_FALSE(says(told, "turning"));
  CHECK(says(ask("board", {"--csv", "-"}).out, "bed load from 0 kg to 140 kg and a decision"));
  const Ran route = ask("route", {"--permitted-by", "A. Planner", "--json", "-"});
  CHECK(route.status == Status::honest_no);
  CHECK(says(route.out, "\"verdict\":\"restricted\""));
  CHECK(says(route.out, load));
}

TEST_CASE("a bulletin nobody read closes the demo's pairs, and the board says what is missing") {
  const Ran ran =
      run_command({"board", kDemo, "--rig", "Broadfoot", "--snow", "dry", "--from", "Cable House",
                   "--to", "Fell Lodge", "--now", "2027-02-01T18:00:00Z", "--json", "-"});
  REQUIRE(ran.status == Status::yes);
  CHECK(says(ran.out, "\"verdict\":\"closed\""));
  CHECK(says(ran.out, "\"missing\":["));
}

TEST_CASE("a board for an hour after the report ran out says when that was, in every form") {
  const std::vector<std::string> words{"board",  kDemo,         "--rig", "Broadfoot",
                                       "--snow", "dry",         "--now", "2026-02-01T21:30:00Z",
                                       "--from", "Cable House", "--to",  "Midway"};
  const Ran text = run_command(words);
  CHECK(says(text.out, "the site's report ran out 2026-02-01 11:00"));
  CHECK_FALSE(says(text.out, "nobody said"));
  CHECK_FALSE(says(text.out, "no report says how long"));
  std::vector<std::string> as_json = words;
  as_json.insert(as_json.end(), {"--json", "-"});
  CHECK(says(run_command(as_json).out, "\"report_ran_out_utc\":\"2026-02-01T21:00:00Z\""));
}

TEST_CASE("a cell tells its own share, and what the site's rules say is no estimate") {
  const Ran ran =
      run_command({"board", kDemo, "--rig", "Broadfoot", "--load", "100", "--wind", "18",
                   "--visibility", "400", "--bulletin", "2", "--now", "2026-02-01T18:30:00Z",
                   "--from", "Cable House", "--to", "Sledge Shed"});
  CHECK(std::regex_search(ran.out,
                          std::regex{"open 50 % +open 50 % +open 6[0-9] % +closed +closed"}));
  CHECK(std::regex_search(ran.out,
                          std::regex{"min \\([0-9]+\\) +9[0-9] % \\([0-9]+\\) +1[0-9]+ % "}));
  CHECK_FALSE(says(ran.out, "at most 1"));
  CHECK_FALSE(says(ran.out, "- setback 10.0 m from cornices"));
  CHECK(says(ran.out, "- setback 3.0 m from drops"));
  CHECK(says(ran.out, "- keep 3.0 m from drops, 10.0 m from cornices"));
  CHECK(says(ran.out, "- closed in wind over 60 km/h"));
}

TEST_CASE("a way that only lacks a status is told before one that is over a limit" *
          doctest::test_suite("whole demo")) {
  const std::string told = "today's status of blasting 'Crag Control'";
  for (const char* verb : {"board", "route"}) {
    const Ran ran =
        run_command({verb,           kDemo,        "--rig",        "Broadfoot with sled",
                     "--load",       "30",         "--towed-load", "20",
                     "--snow",       "dry",        "--now",        "2026-02-01T19:10:00Z",
                     "--from",       "Fell Lodge", "--to",         "Crow Top",
                     "--visibility", "400",        "--wind",       "18",
                     "--rain",       "no",         "--bulletin",   "2",
                     "--json",       "-"});
    CAPTURE(ran.out);
    CHECK(says(ran.out, told));
    CHECK_FALSE(says(ran.out, "\"trail\":\"Ridge Way\""));
  }
}

TEST_CASE("the printed board is tagged, says its language and title, and is the same to the byte") {
  const TinySite site;
  const auto words = [&](const std::string& file) {
    return std::vector<std::string>{"board",  site.folder(), "--rig", "solo",
                                    "--load", "20",          "--pdf", site.path(file)};
  };
  REQUIRE(run_command(words("one.pdf")).status == Status::yes);
  REQUIRE(run_command(words("two.pdf")).status == Status::yes);
  const std::string bytes = site.text("one.pdf");
  const bool same = bytes == site.text("two.pdf");
  CHECK(same);
  const std::string info = testing::told_of(bytes, "pdfinfo");
  CHECK(std::regex_search(info, std::regex{"Tagged: +yes"}));
  CHECK(std::regex_search(info, std::regex{"Title: +Day board: Tiny Fell, solo"}));
  CHECK(says(testing::told_of(bytes, "qpdf --qdf --object-streams=disable", "-"), "/Lang (en)"));
  CHECK(!std::regex_search(testing::told_of(bytes, "pdffonts"), std::regex{" no +(yes|no) +yes"}));
  CHECK(says(testing::told_of(bytes, "pdftotext -raw", "-"), "A Base"));
}

namespace {

audit::Rewalk finds_fault(const passage::Scene& /*scene*/, const rig::Rig& /*rig*/,
                          const snow::SnowAt& /*snow*/,
                          const std::vector<audit::PromisedLeg>& /*promise*/) {
  return {.discrepancies = {{0, "climb traction comes to 0.8, promised 0.6"}},
          .worst_share = 0.8,
          .places_judged = 10};
}

}  // namespace

TEST_CASE("a board with a way that is worse when walked again is withheld: 4, no table, no sheet") {
  const TinySite site;
  const Ran ran = run_command({"board", site.folder(), "--rig", "solo", "--load", "20", "--csv",
                               site.path("board.csv"), "--pdf", site.path("board.pdf")},
                              finds_fault);
  CHECK(ran.status == Status::our_fault);
  CHECK(ran.out.empty());
  CHECK_FALSE(std::filesystem::exists(site.path("board.csv")));
  CHECK_FALSE(std::filesystem::exists(site.path("board.pdf")));
}

TEST_CASE("help for the board is an answer, and a wrong name comes with the nearest") {
  const Ran help = run_command({"board", "--help"});
  CHECK(help.status == Status::yes);
  CHECK(says(help.out, "Examples:"));
  const TinySite site;
  const Ran wrong = run_command({"board", site.folder(), "--rig", "solo", "--from", "Bsae"});
  CHECK(wrong.status == Status::wrong_usage);
  CHECK(says(wrong.err, "did you mean \"Base\"?"));
  const Ran same =
      run_command({"board", site.folder(), "--rig", "solo", "--from", "Base", "--to", "Base"});
  CHECK(same.status == Status::wrong_usage);
}

}  // namespace rimehaul::app
