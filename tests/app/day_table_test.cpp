// The board of named routes, of all rigs and by the hour: every cell is what `route` answers.
#include <doctest/doctest.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <set>

#include "app/tiny_site.h"

namespace rimehaul::app {

namespace {

using testing::Ran;
using testing::run_command;
using testing::TinySite;

bool says(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

void add_routes(const TinySite& site) {
  site.write(
      "routes.toml",
      "schema = 1\n[[route]]\nname = \"Up\"\nstations = [\"Base\", \"Top\"]\nrig = \"solo\"\n"
      "load_kg = 50\n[[route]]\nname = \"Sled\"\nstations = [\"Top\", \"Base\"]\n"
      "rig = \"towing\"\ntowed_load_kg = 40\n");
  site.change("site.toml",
              {"snow = \"snow.toml\"", "snow = \"snow.toml\"\nroutes = \"routes.toml\""});
}

nlohmann::json board(const TinySite& site, const std::vector<std::string>& more) {
  std::vector<std::string> words{"board", site.folder(), "--json", "-"};
  words.insert(words.end(), more.begin(), more.end());
  const Ran ran = run_command(words);
  CAPTURE(ran.err);
  REQUIRE(ran.status == Status::yes);
  return nlohmann::json::parse(ran.out);
}

Status route_at(const TinySite& site, const std::string& depart) {
  return run_command({"route", site.folder(), "--rig", "solo", "--load", "50", "--from", "Base",
                      "--to", "Top", "--depart", depart})
      .status;
}

}  // namespace

TEST_CASE("by the hour each cell is what a route answers that sets out then") {
  const TinySite site;
  add_routes(site);
  const nlohmann::json told = board(site, {"--rows", "routes", "--by", "hour"});
  REQUIRE(told["columns"].size() == 24);
  const nlohmann::json& up = told["rows"][0];
  REQUIRE(up["name"] == "Up");
  int open = 0;
  for (std::size_t hour = 0; hour < 24; ++hour) {
    const std::string depart = (hour < 10 ? "0" : "") + std::to_string(hour) + ":00";
    CAPTURE(depart);
    const bool is_open = up["cells"][hour]["verdict"] == "open";
    CHECK(is_open == (route_at(site, depart) == Status::yes));
    open += is_open ? 1 : 0;
  }
  CHECK(open == 8);  // the report holds from 06:00 to 14:00, and a rig needs some minutes
  // The window ends where the last quarter of an hour and the drive still fit into the report.
  CHECK(up["departures"].dump().find("2026-02-01T06:00:00Z") != std::string::npos);
}

TEST_CASE(
    "named routes have a column as reported, then one for each class, each rig its own load") {
  const TinySite site;
  add_routes(site);
  const nlohmann::json told = board(site, {"--rows", "routes", "--snow", "dry", "--snow", "slush"});
  REQUIRE(told["columns"].size() == 3);
  CHECK_FALSE(told["columns"][0].contains("wetness"));
  CHECK(told["columns"][2]["wetness"] == "slush");
  CHECK(told["rows"][0]["cells"][0]["verdict"] == "open");
  CHECK(told["rows"][1]["rig"] == "towing");
  CHECK(told["rows"][1]["load"]["towed_kg"] == 40);
  const Ran text = run_command({"board", site.folder(), "--rows", "routes", "--snow", "dry"});
  CHECK(says(text.out, "as reported"));
  CHECK(says(text.out, "by nobody: no card may be issued from this"));
  std::size_t longest = 0;
  for (std::size_t at = 0; at < text.out.size();) {
    const std::size_t end = text.out.find('\n', at);
    longest = std::max(longest, end - at);
    at = end + 1;
  }
  CHECK(longest <= 80);
}

TEST_CASE("all rigs stand in one table, each pair with each of them") {
  const TinySite site;
  const nlohmann::json told = board(site, {"--all-rigs", "--load", "20", "--towed-load", "30",
                                           "--from", "Base", "--snow", "dry"});
  std::set<std::string> rigs;
  for (const nlohmann::json& row : told["rows"]) {
    rigs.insert(row["rig"].get<std::string>());
  }
  CHECK(rigs == std::set<std::string>{"solo", "towing"});
}

TEST_CASE("the day on which clocks are put forward has 23 hours, and no 02:00") {
  const TinySite site;
  add_routes(site);
  site.change("site.toml", {"utc_offset_minutes = 0", "time_zone = \"CET\""});
  const Ran spring = run_command({"board", site.folder(), "--rows", "routes", "--by", "hour",
                                  "--now", "2026-03-29T10:00:00Z", "--json", "-"});
  REQUIRE(spring.status == Status::yes);
  const nlohmann::json told = nlohmann::json::parse(spring.out);
  REQUIRE(told["columns"].size() == 23);
  CHECK(told["columns"][0]["depart_utc"] == "2026-03-28T23:00:00Z");
  CHECK(told["columns"][22]["depart_utc"] == "2026-03-29T21:00:00Z");
  const Ran skipped = run_command({"board", site.folder(), "--rows", "routes", "--now",
                                   "2026-03-29T10:00:00Z", "--depart", "02:30"});
  CHECK(skipped.status == Status::wrong_usage);
  CHECK(says(skipped.err, "02:30 is skipped today, as the clocks are changed"));
}

}  // namespace rimehaul::app
