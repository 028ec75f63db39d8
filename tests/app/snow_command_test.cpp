// The snow of the day on the demo mountain: softens by noon, freezes by night, and routes follow
// it.
#include <doctest/doctest.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "app/tiny_site.h"
#include "app/workplace.h"

namespace rimehaul::app {
namespace {

using nlohmann::json;
using testing::Ran;
using testing::run_command;
using Words = std::vector<std::string>;

bool says(const std::string& text, const std::string& words) {
  return text.find(words) != std::string::npos;
}

Words with(Words words, const Words& more) {
  words.insert(words.end(), more.begin(), more.end());
  return words;
}

const Words kSnow{"snow",          "routes/marrowfell",
                  "--snow-report", "routes/marrowfell/snow-day.toml",
                  "--now",         "2026-02-01T19:00:00Z"};

/// What an hour that begins at a moment is judged as; null when it is not there.
json judged_as(const json& day, const std::string& start_utc) {
  for (const json& hour : day["hours"]) {
    if (hour["start_utc"] == start_utc) {
      return hour["judged_as"];
    }
  }
  return {};
}

json day_at(const std::string& trail, const std::string& at) {
  const Ran ran = run_command(with(kSnow, {"--trail", trail, "--at", at, "--json", "-"}));
  CAPTURE(ran.err);
  REQUIRE(ran.status == Status::yes);
  return json::parse(ran.out);
}

}  // namespace

TEST_CASE("the sunny side goes wet before noon, and has frozen over by the night") {
  const testing::Workplace workplace;
  const Ran ran = run_command(with(kSnow, {"--trail", "Noon Run", "--at", "400"}));
  CAPTURE(ran.out);
  CAPTURE(ran.err);
  CHECK(ran.status == Status::yes);
  CHECK(says(ran.out, "likely wet from "));
  CHECK(says(ran.out, "refrozen by "));
  CHECK(says(ran.out, " +- 2 h"));
  CHECK(says(ran.out, "Marrowfell weather desk (invented)"));
  CHECK(says(ran.out, "seen"));
}

TEST_CASE("what was seen rules its hour, the forecast counts later, and JSON tells who says so") {
  const testing::Workplace workplace;
  const json day = day_at("Noon Run", "400");
  CHECK(day["kind"] == "snow_day");
  CHECK(day["hours"].size() == 16);
  CHECK(day["hours"][0]["said_by"] == "seen");
  CHECK(judged_as(day, "2026-02-01T22:00:00Z")["wetness"] != "dry");
  CHECK(day["hours"].back()["likely"]["surface"] == "refrozen");
  CHECK(day["hours"].back()["likely"]["wetness"] == "moist");
  // The report ends at 22:00 there.
  CHECK(judged_as(day, "2026-02-02T08:00:00Z").is_null());
  CHECK(day["hours"].back()["missing"].size() >= 1);
}

TEST_CASE(
    "a route in the afternoon is judged on the snow that the forecast makes of the morning's") {
  const testing::Workplace workplace;
  const auto explained = [](const std::string& depart) {
    const Ran ran = run_command({"explain",       "routes/marrowfell",
                                 "--rig",         "Broadfoot",
                                 "--load",        "100",
                                 "--trail",       "Noon Run",
                                 "--at",          "400",
                                 "--direction",   "forward",
                                 "--snow-report", "routes/marrowfell/snow-day.toml",
                                 "--depart",      depart,
                                 "--now",         "2026-02-01T19:00:00Z",
                                 "--json",        "-"});
    CAPTURE(ran.err);
    REQUIRE(ran.status == Status::yes);
    return json::parse(ran.out)["snow"].get<std::string>();
  };
  CHECK(says(explained("08:20"), "dry"));
  CHECK(says(explained("13:00"), "wet"));
  CHECK(says(explained("22:30"), "unknown"));
}

TEST_CASE("a report without a forecast is shown as it is, and one that is not there is asked for") {
  const testing::TinySite site;
  const Ran ran = run_command({"snow", site.folder(), "--trail", "Spur", "--at", "10"});
  CAPTURE(ran.err);
  CHECK(ran.status == Status::yes);
  CHECK(says(ran.out, "none in the report"));
  CHECK(says(ran.out, "as observed"));
  const std::string before = site.text("site.toml");
  std::string without = before;
  const std::size_t named = without.find("snow = \"snow.toml\"\n");
  REQUIRE(named != std::string::npos);
  without.erase(named, std::string{"snow = \"snow.toml\"\n"}.size());
  site.write("site.toml", without);
  const Ran none = run_command({"snow", site.folder(), "--trail", "Spur", "--at", "10"});
  CHECK(none.status == Status::wrong_usage);
  CHECK(says(none.err, "what is the snow like?"));
}

}  // namespace rimehaul::app
