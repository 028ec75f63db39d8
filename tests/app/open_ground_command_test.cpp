// Over open ground on the demo: in moist snow the snow bridge of Moss Ford is closed, and the moss
// is the way round it.
#include <doctest/doctest.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <regex>
#include <string>
#include <vector>

#include "app/tiny_site.h"

namespace rimehaul::app {
namespace {

using nlohmann::json;
using testing::Ran;
using testing::run_command;

const std::string kDemo = std::string{RIMEHAUL_ROOT} + "/routes/marrowfell";

std::vector<std::string> to_refuge(std::vector<std::string> more) {
  std::vector<std::string> words{"route",          kDemo,
                                 "--rig",          "Broadfoot",
                                 "--load",         "60",
                                 "--snow",         "moist",
                                 "--bulletin",     "1",
                                 "--visibility",   "2000",
                                 "--wind",         "10",
                                 "--rain",         "no",
                                 "--new-snow",     "0",
                                 "--from",         "Midway",
                                 "--to",           "Moss Refuge",
                                 "--depart",       "08:00",
                                 "--now",          "2026-02-01T17:00:00Z",
                                 "--alternatives", "0"};
  words.insert(words.end(), more.begin(), more.end());
  return words;
}

std::size_t times(const std::string& text, const std::string& part) {
  std::size_t count = 0;
  for (auto at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) {
    ++count;
  }
  return count;
}

}  // namespace

TEST_CASE("a card over open ground says so, and gives bearing and distance of every piece") {
  const testing::TinySite scratch;
  const Ran ran =
      run_command(to_refuge({"--json", scratch.path("a.json"), "--gpx", scratch.path("a.gpx")}));
  CAPTURE(ran.err);
  REQUIRE(ran.status == Status::yes);
  const json route = json::parse(scratch.text("a.json"))["routes"][0];
  REQUIRE(route["legs"].size() == 3);
  CHECK(route["legs"][0]["trail"] == "Moss Way");
  CHECK(std::string{route["legs"][1]["trail"]}.starts_with("Moss Flat, "));
  CHECK(route["legs"][2]["trail"] == "Moss Low");
  CHECK(times(ran.out, "open ground, not marked") == 1);
  CHECK(ran.out.find("you see less than 300 m") != std::string::npos);
  // The pieces follow each other from 0 m to the end of the leg, to the metre.
  const std::regex piece{R"(from (\d+) m to\s+(\d+) m: steer \d\d\d deg \(grid\) for (\d+) m)"};
  int reached = 0;
  int pieces = 0;
  const std::string text = std::regex_replace(ran.out, std::regex{"\\s+"}, " ");
  for (std::sregex_iterator found{text.begin(), text.end(), piece}, end; found != end; ++found) {
    CHECK(std::stoi((*found)[1]) == reached);
    reached = std::stoi((*found)[2]);
    ++pieces;
  }
  CHECK(pieces >= 3);
  CHECK(std::abs(reached - double{route["legs"][1]["length_m"]}) <= 1.0);
  // Once as a waypoint, once as a point of the route.
  CHECK(times(scratch.text("a.gpx"), "<name>steer ") == 2 * static_cast<std::size_t>(pieces));
}

TEST_CASE("without enough visibility the way over open ground is none") {
  std::vector<std::string> words = to_refuge({});
  *(std::ranges::find(words, "2000")) = "250";
  const Ran ran = run_command(words);
  CHECK(ran.status == Status::honest_no);
  CHECK(times(ran.out, "Moss Flat") == 0);
}

TEST_CASE("where nobody goes over open ground no trail is cut for it") {
  std::vector<std::string> words = to_refuge({"--json", "-"});
  *(std::ranges::find(words, "moist")) = "dry";
  const json answer = json::parse(run_command(words).out);
  REQUIRE(answer["routes"].size() == 1);
  CHECK(answer["routes"][0]["legs"].size() == 1);
}

TEST_CASE("the day board sends rigs over open ground in the snow that lets them") {
  const Ran ran = run_command({"board",        kDemo,    "--rig",      "Broadfoot",
                               "--load",       "60",     "--bulletin", "1",
                               "--visibility", "2000",   "--wind",     "10",
                               "--rain",       "no",     "--new-snow", "0",
                               "--from",       "Midway", "--to",       "Moss Refuge",
                               "--depart",     "08:00",  "--now",      "2026-02-01T17:00:00Z",
                               "--json",       "-"});
  REQUIRE(ran.status == Status::yes);
  CHECK(times(ran.out, "Moss Flat, ") >= 1);
}

}  // namespace rimehaul::app
