// The snow of the day on the demo mountain: softens by noon, freezes by night, and routes follow
// it.
#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "app/desk.h"
#include "app/tiny_site.h"
#include "app/workplace.h"
#include "ports/gdal/records_file.h"
#include "ports/openssl/digest.h"

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

const Words kKeep{"snow",
                  "routes/marrowfell",
                  "--trail",
                  "Noon Run",
                  "--at",
                  "400",
                  "--keep",
                  "--as",
                  "N. Example",
                  "--now",
                  "2026-02-01T17:00:00Z"};

const std::string kRecords = "routes/marrowfell/records.gpkg";

std::unique_ptr<day::Records> records() {
  return ports::gdal::read_records({.folder = "routes/marrowfell"});
}

TEST_CASE("a report is kept with its file, its marks and who kept it, and is kept once") {
  const testing::Workplace workplace;
  const Ran kept = run_command(kKeep);
  CAPTURE(kept.out);
  CAPTURE(kept.err);
  REQUIRE(kept.status == Status::yes);
  CHECK(says(kept.out, "Snow of the day"));
  CHECK(says(kept.out, "\nkept as report 1\n"));
  const std::string file = testing::text_in("routes/marrowfell/snow.toml");
  auto book = records();
  REQUIRE(book != nullptr);
  const auto reports = book->reports();
  REQUIRE(reports.size() == 1);
  CHECK(reports[0].thing.digest == ports::openssl::digest_of(file));
  CHECK(reports[0].thing.observer == "N. Example (invented)");
  CHECK(reports[0].thing.kept.by == "N. Example");
  CHECK(reports[0].thing.kept.role == "driver");
  const auto frozen = book->frozen_inputs();
  REQUIRE(frozen.size() == 1);
  CHECK(frozen[0].name == "snow.toml");
  CHECK(book->content_of(frozen[0]) == file);
  const auto marks = book->marks();
  REQUIRE(marks.size() == 5);
  CHECK(marks[2].thing.status.mark == "Crag Control");
  CHECK(marks[2].thing.status.clear);
  CHECK(book->log().size() == 6);
  book.reset();
  CHECK(run_command({"log", "routes/marrowfell", "--verify"}).status == Status::yes);

  const std::string before = testing::text_in(kRecords);
  const Ran again = run_command(kKeep);
  CHECK(again.status == Status::yes);
  CHECK(says(again.out, "\nkept already as report 1, and not kept twice\n"));
  CHECK(testing::text_in(kRecords) == before);
  CHECK(says(run_command({"log", "routes/marrowfell"}).out, "keep report: report 1; by N. Exam"));
}

TEST_CASE("a report that sign kept is not kept twice, nor the other way round") {
  const testing::Workplace workplace;
  const Words sign{"sign",  "routes/marrowfell",   "--as", "P. Example", "--snow", "dry",
                   "--now", "2026-02-01T17:00:00Z"};
  REQUIRE(run_command(sign).status == Status::yes);
  const Ran kept = run_command(with(kKeep, {"--json", "-"}));
  const json day = json::parse(kept.out);
  CHECK(day["kept_as_report"] == 1);
  CHECK(day["kept_already"] == true);
  // Another report by its file, told by its name as seen from the site.
  const Ran given =
      run_command(with(kKeep, {"--snow-report", "routes/marrowfell/snow-day.toml", "--json", "-"}));
  CAPTURE(given.err);
  CHECK(json::parse(given.out)["kept_as_report"] == 2);
  CHECK(json::parse(given.out)["kept_already"] == false);
  CHECK(records()->frozen_inputs().back().name == "snow-day.toml");
  REQUIRE(run_command(sign).status == Status::yes);
  CHECK(records()->reports().size() == 2);
  CHECK(run_command({"log", "routes/marrowfell", "--verify"}).status == Status::yes);
}

TEST_CASE("nothing is kept by nobody, by a stranger, or where nobody is listed") {
  const testing::TinySite site;
  const Words snow{"snow", site.folder(), "--trail", "Spur", "--at", "10"};
  const auto refused = [&](const Words& more, const std::string& line) {
    const Ran ran = run_command(with(snow, more));
    CAPTURE(ran.err);
    CHECK(ran.status == Status::wrong_usage);
    CHECK(ran.out.empty());
    CHECK(says(ran.err, line));
  };
  refused({"--keep"}, "nobody keeps the report; say --as PERSON");
  refused({"--as", "N. Example"}, "it is not to be kept; say --keep too");
  refused({"--keep", "--as", "N. Example"}, "this site lists nobody; write people.toml");
  site.write("people.toml",
             "schema = 1\n[[person]]\nname = \"D. Example\"\nroles = [\"driver\"]\n");
  site.change("site.toml",
              {"snow = \"snow.toml\"", "snow = \"snow.toml\"\npeople = \"people.toml\""});
  refused({"--keep", "--as", "D. Exampel"}, "did you mean \"D. Example\"?");
  CHECK_FALSE(std::filesystem::exists(site.path("records.gpkg")));
  CHECK(run_command(with(snow, {"--keep", "--as", "D. Example"})).status == Status::yes);
  CHECK(std::filesystem::exists(site.path("records.gpkg")));
}

}  // namespace rimehaul::app
