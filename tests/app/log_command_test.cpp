// `log` and `backup`: who did what, whether it still stands, and a copy of it.
#include <doctest/doctest.h>
#include <sqlite3.h>

#include <algorithm>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "app/desk.h"
#include "app/tiny_site.h"
#include "ports/gdal/records_file.h"
#include "ports/openssl/digest.h"

namespace rimehaul::app {
namespace {

namespace fs = std::filesystem;
using testing::Desk;
using testing::Ran;
using testing::run_command;
using testing::TinySite;

bool says(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

/// Two notes, the second by somebody without a role; gives the head.
std::string keep_notes(const TinySite& site) {
  const auto writing = ports::gdal::write_records(
      {.folder = site.folder()},
      {.account = "desk", .digest_of = ports::openssl::digest_of, .frame = "EPSG:32605"});
  writing->tell({units::Instant{1'769'935'800}, "N. Rime", "planner"},
                {"note", "Low Way", "closed early"});
  writing->tell({units::Instant{1'769'936'400}, "O. Server", ""}, {"note", "High Way"});
  writing->commit();
  return day::text_of(writing->head());
}

void run_in_file(const TinySite& site, const std::string& statements) {
  sqlite3* handle = nullptr;
  REQUIRE(sqlite3_open(site.path("records.gpkg").c_str(), &handle) == SQLITE_OK);
  CHECK(sqlite3_exec(handle, statements.c_str(), nullptr, nullptr, nullptr) == SQLITE_OK);
  sqlite3_close(handle);
}

TEST_CASE("a site without records says so in one line; verifying nothing is no yes") {
  const TinySite site;
  const Ran listed = run_command({"log", site.folder()});
  CHECK(listed.status == Status::yes);
  CHECK(says(listed.out, "No records yet"));
  CHECK(listed.err.empty());
  CHECK(run_command({"log", site.folder(), "--verify"}).status == Status::honest_no);
  CHECK(run_command({"log", site.folder(), "--head", "0:0000000000000000"}).status ==
        Status::honest_no);
  const Ran copied = run_command({"backup", site.folder(), "--into", site.path("copy")});
  CHECK(copied.status == Status::honest_no);
  CHECK(std::ranges::count(copied.out, '\n') == 1);
  CHECK(says(copied.out, "nothing to copy"));
  CHECK_FALSE(fs::exists(site.path("copy")));
  CHECK_FALSE(fs::exists(site.path("records.gpkg")));
}

TEST_CASE("the log tells who did what in the site's local time, and its head") {
  const TinySite site;
  site.change("site.toml", {"utc_offset_minutes = 0", "utc_offset_minutes = -600"});
  const std::string head = keep_notes(site);
  const Ran ran = run_command({"log", site.folder()});
  CAPTURE(ran.out);
  CHECK(ran.status == Status::yes);
  CHECK(says(ran.out, "Local time, UTC-10:00."));
  CHECK(says(ran.out,
             "1       2026-01-31 22:50 N. Rime, planner (account desk)\n"
             "        note: Low Way; closed early\n"
             "2       2026-01-31 23:00 O. Server (account desk)\n"
             "        note: High Way\n"));
  CHECK(says(ran.out, "2 entries, head " + head));
  const Ran json = run_command({"log", site.folder(), "--json", "-"});
  const auto answer = nlohmann::json::parse(json.out);
  CHECK(answer["head"] == head);
  CHECK(answer["entries"][0]["at"] == "2026-02-01T08:50:00Z");
  CHECK(answer["entries"][1]["previous_sha256"] == answer["entries"][0]["own_sha256"]);
  CHECK_FALSE(answer.contains("holds"));
}

TEST_CASE("verifying says yes with the head, and no with every defect") {
  const TinySite site;
  const std::string head = keep_notes(site);
  const Ran sound = run_command({"log", site.folder(), "--verify", "--head", head});
  CHECK(sound.status == Status::yes);
  CHECK(says(sound.out, "It holds: 2 entries"));
  CHECK(says(sound.out, head));
  const auto json =
      nlohmann::json::parse(run_command({"log", site.folder(), "--verify", "--json", "-"}).out);
  CHECK(json["holds"] == true);
  CHECK(json["defects"].empty());
  run_in_file(site,
              "DROP TRIGGER log_unchanged; UPDATE log SET person = 'S. Else' WHERE number = 1");
  const Ran changed = run_command({"log", site.folder(), "--verify"});
  CAPTURE(changed.out);
  CHECK(changed.status == Status::honest_no);
  CHECK(says(changed.out,
             "defect: entry 1 was changed: what it says does not give the hash that it "
             "bears\n"));
  CHECK(says(changed.out, "defect: the guard log_unchanged is missing\n"));
  CHECK(says(changed.out, "2 defects: the records are not what was written"));
}

TEST_CASE("a head on paper finds a cut tail that nothing else shows") {
  const TinySite site;
  const std::string head = keep_notes(site);
  run_in_file(site,
              "DROP TRIGGER log_undeleted; DELETE FROM log WHERE number = 2; CREATE TRIGGER "
              "log_undeleted BEFORE DELETE ON log BEGIN SELECT RAISE(ABORT, 'what is kept is "
              "not taken out'); END");
  CHECK(run_command({"log", site.folder(), "--verify"}).status == Status::yes);
  const Ran cut = run_command({"log", site.folder(), "--head", head});
  CHECK(cut.status == Status::honest_no);
  CHECK(says(cut.out, "defect: the paper says " + head +
                          ", but the log ends with entry 1: its tail was cut off\n"));
}

TEST_CASE("a backup is a whole copy of what is kept, and goes over nothing") {
  const TinySite site;
  const Desk desk;
  const std::string head = keep_notes(site);
  const std::string copy = desk.path("copy.gpkg");
  const Ran ran = run_command({"backup", site.folder(), "--into", copy});
  CAPTURE(ran.err);
  CHECK(ran.status == Status::yes);
  CHECK(says(ran.out, "it holds, and its head is " + head));
  CHECK(ports::gdal::read_records({.folder = desk.path(""), .name = "copy.gpkg"})->log().size() ==
        2);
  CHECK(std::distance(fs::directory_iterator{desk.path("")}, {}) == 1);
  const Ran again = run_command({"backup", site.folder(), "--into", copy});
  CHECK(again.status == Status::bad_input);
  CHECK(again.err == copy +
                         ": there is something of that name, and no copy goes over it; name a "
                         "file that is not there yet\n");
  CHECK(run_command({"backup", site.folder(), "--into", desk.path("no/such/copy")}).status ==
        Status::bad_input);
  CHECK(run_command({"backup", site.folder(), "--into", site.path("records.gpkg")}).status ==
        Status::wrong_usage);
}

TEST_CASE("records that do not hold are not copied") {
  const TinySite site;
  const Desk desk;
  (void)keep_notes(site);
  run_in_file(site,
              "DROP TRIGGER log_unchanged; UPDATE log SET person = 'S. Else' WHERE number = 1");
  const Ran ran = run_command({"backup", site.folder(), "--into", desk.path("copy")});
  CHECK(ran.status == Status::bad_input);
  CHECK(says(ran.err, "it does not hold: entry 1 was changed"));
  CHECK(desk.is_empty());
}

TEST_CASE("no answer goes over the records, and what is no head is refused") {
  const TinySite site;
  (void)keep_notes(site);
  const std::string before = testing::text_in(site.path("records.gpkg"));
  const Ran over = run_command({"check", site.folder(), "--json", site.path("records.gpkg")});
  CHECK(over.status == Status::wrong_usage);
  CHECK(says(over.err, "which this command reads"));
  CHECK(testing::text_in(site.path("records.gpkg")) == before);
  CHECK(run_command({"log", site.folder(), "--head", "2:0123"}).status == Status::wrong_usage);
}

}  // namespace
}  // namespace rimehaul::app
