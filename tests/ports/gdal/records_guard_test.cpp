// Records that were changed, damaged, made by others or are in use: one line says so, or every
// defect is told, and never is anything believed.
#include <doctest/doctest.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <future>
#include <random>
#include <string>
#include <thread>
#include <vector>

#include "base/one_line.h"
#include "base/require.h"
#include "ports/gdal/record_samples.h"
#include "ports/gdal/records_schema.h"
#include "told.h"

using namespace rimehaul;
using rimehaul::base::BadInput;
using rimehaul::base::OurFault;
using rimehaul::ports::gdal::damage_in;
using rimehaul::ports::gdal::read_records;
using rimehaul::ports::gdal::write_records;
using rimehaul::testing::defects_in;
using rimehaul::testing::done_at;
using rimehaul::testing::keep_one_of_each_in;
using rimehaul::testing::kEntriesOfEach;
using rimehaul::testing::make_older_records;
using rimehaul::testing::meddle;
using rimehaul::testing::Meddler;
using rimehaul::testing::records_in;
using rimehaul::testing::TempFolder;
using rimehaul::testing::writer;

namespace fs = std::filesystem;

namespace {

using Lines = std::vector<std::string>;

/// What reading everything says; "" when it says nothing.
std::string read_all(const std::string& folder) {
  try {
    (void)damage_in(records_in(folder));
    (void)defects_in(folder);
  } catch (const BadInput& error) {
    return error.what();
  }
  return "";
}

std::string write_one(const std::string& folder) {
  try {
    const auto writing = write_records(records_in(folder), writer());
    writing->tell(done_at(99), {"note", "the day"});
    writing->commit();
  } catch (const BadInput& error) {
    return error.what();
  }
  return "";
}

/// Takes the guards of a table away, does something, and puts them back: what somebody would do who
/// knows the file.
void meddle_behind_guards(const std::string& folder, const std::string& table,
                          const std::string& statements) {
  std::string off;
  std::string on;
  for (const auto& object : ports::gdal::schema_up_to(2)) {
    if (object.type == "trigger" && object.name.starts_with(table + "_")) {
      off += "DROP TRIGGER " + object.name + ";";
      on += object.sql + ";";
    }
  }
  REQUIRE_FALSE(off.empty());
  meddle(folder, off + statements + ";" + on);
}

bool says(const Lines& lines, const std::string& part) {
  return std::ranges::any_of(
      lines, [&part](const std::string& line) { return line.find(part) != std::string::npos; });
}

}  // namespace

TEST_CASE("no statement changes, takes out or replaces what is kept, in any table") {
  const TempFolder folder;
  keep_one_of_each_in(folder.path());
  const Meddler meddler{folder.path()};
  const auto refused = [&meddler](const std::string& sql) {
    return meddler.run(sql) == SQLITE_CONSTRAINT;
  };
  int tables = 0;
  for (const auto& object : ports::gdal::schema_up_to(2)) {
    if (object.type == "table") {
      CAPTURE(object.name);
      const std::string key = object.name == "records_schema" ? "version" : "number";
      CHECK(refused("UPDATE " + object.name + " SET " + key + " = " + key));
      CHECK(refused("DELETE FROM " + object.name));
      CHECK(refused("INSERT OR REPLACE INTO " + object.name + " SELECT * FROM " + object.name));
      ++tables;
    }
  }
  CHECK(tables == 11);
  CHECK(refused("UPDATE field_checks SET grade_deg = 0"));
  CHECK(refused("DELETE FROM field_checks"));
  // An entry that follows nothing.
  CHECK(refused(
      "INSERT INTO log SELECT number + 1, at, account, person, role, act, subject, "
      "detail, about, previous, substr(own, 2) || '0' FROM log ORDER BY number DESC LIMIT 1"));
  CHECK(defects_in(folder.path()).empty());
}

TEST_CASE("every change made behind the guards is told") {
  struct Change {
    const char* table;
    const char* statement;
    const char* told;
  };
  const std::vector<Change> changes{
      {"log", "UPDATE log SET person = 'S. Else' WHERE number = 4", "entry 4 was changed"},
      {"log", "UPDATE log SET at = '2026-02-01T00:00:00Z' WHERE number = 1", "entry 1 was changed"},
      {"log", "DELETE FROM log WHERE number = 9", "the log ends with entry 8"},
      {"log", "DELETE FROM log WHERE number = 5", "entry 5 is missing"},
      {"log",
       "UPDATE log SET number = 100 WHERE number = 3; UPDATE log SET number = 3 WHERE number = 4; "
       "UPDATE log SET number = 4 WHERE number = 100",
       "entry 3 was moved: by its hash it follows entry 4"},
      {"day_boards", "UPDATE day_boards SET json = '{}'",
       "day board 1 was changed: its text does not give its digest"},
      {"day_boards", "UPDATE day_boards SET valid_until = '2027-02-01T00:00:00Z'",
       "day board 1 was changed: it is not what entry 3 tells of"},
      {"day_board_inputs", "DELETE FROM day_board_inputs", "day board 1 was changed"},
      {"overrides", "UPDATE overrides SET expires = '2027-02-01T00:00:00Z'",
       "override 1 was changed"},
      {"overrides", "DELETE FROM overrides", "what entry 4 tells of (Birk Climb) is missing"},
      {"override_ends", "DELETE FROM override_ends", "what entry 7 tells of"},
      {"route_cards", "UPDATE route_cards SET head_number = 7", "route card 1 was issued under"},
      {"card_recalls", "UPDATE card_recalls SET reason = 'none'", "card recall 1 was changed"},
      {"field_checks", "UPDATE field_checks SET grade_deg = 12.301", "field check 1 was changed"},
      {"mark_statuses", "UPDATE mark_statuses SET clear = 0", "mark status 1 was changed"},
      {"snow_reports", "UPDATE snow_reports SET observer = 'X'", "snow report 1 was changed"},
      {"frozen_inputs",
       "UPDATE frozen_inputs SET content = x'736368656d61203d2032' WHERE number = 1",
       "frozen input 1 (rules.toml) was changed"},
      {"frozen_inputs", "DELETE FROM frozen_inputs WHERE number = 2",
       "whose frozen input is missing"},
  };
  for (const Change& change : changes) {
    CAPTURE(change.statement);
    const TempFolder folder;
    keep_one_of_each_in(folder.path());
    const auto paper = [&folder] {
      return day::witness("the paper says", read_records(records_in(folder.path()))->head());
    }();
    meddle_behind_guards(folder.path(), change.table, change.statement);
    CHECK(says(defects_in(folder.path(), {paper}), change.told));
  }
}

TEST_CASE("a tail cut off the log and all it tells of shows against the head on paper alone") {
  const TempFolder folder;
  keep_one_of_each_in(folder.path());
  const auto paper =
      day::witness("the paper says", read_records(records_in(folder.path()))->head());
  meddle_behind_guards(folder.path(), "field_checks",
                       "DROP TRIGGER rtree_field_checks_geom_delete; "
                       "DELETE FROM field_checks");
  meddle_behind_guards(folder.path(), "log", "DELETE FROM log WHERE number >= 8");
  CHECK(defects_in(folder.path()).empty());
  CHECK(says(defects_in(folder.path(), {paper}), "its tail was cut off"));
}

TEST_CASE("a board tells of a log that was cut before it") {
  const TempFolder folder;
  keep_one_of_each_in(folder.path());
  meddle_behind_guards(folder.path(), "log", "DELETE FROM log");
  const Lines found = defects_in(folder.path());
  CHECK(says(found, "day board 1 was signed under the head 2:"));
  CHECK(says(found, "day board 1 has no entry in the log"));
}

TEST_CASE("a guard that was taken away or changed is told, and nothing is written any more") {
  for (const char* statement :
       {"DROP TRIGGER log_undeleted",
        "DROP TRIGGER overrides_unchanged; CREATE TRIGGER overrides_unchanged BEFORE UPDATE ON "
        "overrides BEGIN SELECT 1; END",
        "CREATE TRIGGER more AFTER INSERT ON log BEGIN SELECT 1; END"}) {
    CAPTURE(statement);
    const TempFolder folder;
    keep_one_of_each_in(folder.path());
    meddle(folder.path(), statement);
    CHECK(defects_in(folder.path()).size() == 1);
    CHECK(write_one(folder.path()).find("rimehaul log --verify") != std::string::npos);
    CHECK(read_records(records_in(folder.path()))->log().size() == kEntriesOfEach);
  }
}

TEST_CASE("a second writer waits for the first, and is told when that takes too long") {
  const TempFolder folder;
  keep_one_of_each_in(folder.path());
  sqlite3* other = nullptr;  // as another program would hold it
  REQUIRE(sqlite3_open(folder.file("records.gpkg").c_str(), &other) == SQLITE_OK);
  REQUIRE(sqlite3_exec(other, "BEGIN IMMEDIATE", nullptr, nullptr, nullptr) == SQLITE_OK);
  CHECK(write_one(folder.path()) == folder.file("records.gpkg") +
                                        ": another program is writing to it; wait until that has "
                                        "ended, and try again");
  CHECK(read_records(records_in(folder.path()))->log().size() == kEntriesOfEach);
  auto waits = std::async(std::launch::async, [&folder] {
    auto place = records_in(folder.path());
    place.patience = units::Seconds{60};
    const auto writing = write_records(place, writer());
    writing->tell(done_at(99), {"note", "the day"});
    writing->commit();
  });
  std::this_thread::sleep_for(std::chrono::milliseconds{300});
  REQUIRE(sqlite3_exec(other, "COMMIT", nullptr, nullptr, nullptr) == SQLITE_OK);
  waits.get();
  sqlite3_close(other);
  CHECK(read_records(records_in(folder.path()))->log().size() == kEntriesOfEach + 1);
}

TEST_CASE("two parts of one program are kept apart too") {
  const TempFolder folder;
  const auto first = write_records(records_in(folder.path()), writer());
  CHECK(write_one(folder.path()).find("another part of this program is using it") !=
        std::string::npos);
}

TEST_CASE("an older version is read as it is, and brought to the newest by the first to write") {
  const TempFolder folder;
  make_older_records(folder.path(), 1);
  const std::string before = folder.read("records.gpkg");
  CHECK(defects_in(folder.path()).empty());
  CHECK(read_records(records_in(folder.path()))->boards().empty());
  CHECK(read_records(records_in(folder.path()))->marks().size() == 1);
  CHECK(folder.read("records.gpkg") == before);
  {
    const auto writing = write_records(records_in(folder.path()), writer());
    writing->add(testing::next_board(*writing, "{}"), {"sign", "board 1"});
    writing->commit();
  }
  CHECK(read_records(records_in(folder.path()))->log().size() == 3);
  CHECK(defects_in(folder.path()).empty());
  // As if it had been made so.
  const TempFolder fresh;
  testing::keep_one_of_each_in(fresh.path());
  const auto made_of = [](const std::string& path) {
    return testing::told_by("sqlite3 '" + path +
                            "' 'SELECT type, name, sql FROM sqlite_schema ORDER BY type, name'");
  };
  CHECK(made_of(folder.file("records.gpkg")) == made_of(fresh.file("records.gpkg")));
  CHECK(made_of(fresh.file("records.gpkg")).size() > 5000);
}

TEST_CASE("a newer version is refused in one line, to read and to write") {
  const TempFolder folder;
  keep_one_of_each_in(folder.path());
  meddle(folder.path(), "INSERT INTO records_schema VALUES (3, 'records of rimehaul')");
  const std::string line = folder.file("records.gpkg") +
                           ": it is of schema 3, and this program knows 2 and older; use the newer "
                           "program that wrote it";
  CHECK(read_all(folder.path()) == line);
  CHECK(write_one(folder.path()) == line);
}

TEST_CASE("a folder without leave to write is read, and told when written to") {
  const TempFolder folder;
  keep_one_of_each_in(folder.path());
  const std::string before = folder.read("records.gpkg");
  // Root may write anywhere, so a child that is nobody looks.
  ::chmod(folder.path().c_str(), 0555);
  ::chmod(folder.file("records.gpkg").c_str(), 0444);
  const pid_t child = ::fork();
  REQUIRE(child >= 0);
  if (child == 0) {
    if (::geteuid() == 0 && ::setuid(65534) != 0) {
      ::_exit(9);
    }
    const bool read = read_records(records_in(folder.path()))->log().size() == kEntriesOfEach;
    const bool told = write_one(folder.path()).find("cannot be written") != std::string::npos;
    ::_exit((read ? 0 : 1) + (told ? 0 : 2));
  }
  int ended = 0;
  ::waitpid(child, &ended, 0);
  ::chmod(folder.path().c_str(), 0755);
  CHECK(WIFEXITED(ended));
  CHECK(WEXITSTATUS(ended) == 0);
  CHECK(folder.read("records.gpkg") == before);
}

TEST_CASE("files that are no records, or broken ones, are told in one line") {
  struct Breakage {
    const char* what;
    void (*done)(const TempFolder&);
    const char* told;
  };
  const std::vector<Breakage> breakages{
      {"empty", [](const TempFolder& f) { f.write("records.gpkg", ""); }, "damaged"},
      {"text", [](const TempFolder& f) { f.write("records.gpkg", std::string(5000, 'x')); },
       "damaged"},
      {"header alone",
       [](const TempFolder& f) { f.write("records.gpkg", f.read("records.gpkg").substr(0, 100)); },
       "damaged"},
      {"half",
       [](const TempFolder& f) {
         const std::string whole = f.read("records.gpkg");
         f.write("records.gpkg", whole.substr(0, whole.size() / 2));
       },
       "damaged"},
      {"another application",
       [](const TempFolder& f) { meddle(f.path(), "PRAGMA application_id = 7"); },
       "of another application"},
      {"a GeoPackage of somebody's",
       [](const TempFolder& f) {
         meddle(f.path(), "PRAGMA foreign_keys = OFF; DROP TABLE records_schema");
       },
       "holds no records of this program"},
      {"a table gone", [](const TempFolder& f) { meddle(f.path(), "DROP TABLE card_recalls"); },
       "its table card_recalls is not as this program makes it"},
      {"a table of field checks gone",
       [](const TempFolder& f) { meddle(f.path(), "DROP TABLE field_checks"); },
       "its table field_checks is not as this program makes it"},
      {"a table with one more column",
       [](const TempFolder& f) { meddle(f.path(), "ALTER TABLE overrides ADD COLUMN more TEXT"); },
       "its table overrides is not as this program makes it"},
      {"a folder",
       [](const TempFolder& f) {
         fs::remove(f.file("records.gpkg"));
         fs::create_directory(f.file("records.gpkg"));
       },
       "no regular file"},
      {"a link",
       [](const TempFolder& f) {
         fs::rename(f.file("records.gpkg"), f.file("other.gpkg"));
         fs::create_symlink("other.gpkg", f.file("records.gpkg"));
       },
       "is a link"},
      {"no digest where one is wanted",
       [](const TempFolder& f) {
         meddle_behind_guards(f.path(), "log",
                              "PRAGMA ignore_check_constraints = ON; UPDATE log SET about = 'zz' "
                              "WHERE number = 2");
       },
       "log 2, about: this is no digest"},
      {"no moment where one is wanted",
       [](const TempFolder& f) {
         meddle_behind_guards(f.path(), "overrides",
                              "PRAGMA ignore_check_constraints = ON; UPDATE overrides SET expires "
                              "= 'soon'");
       },
       "overrides 1, expires: this is no moment"},
      {"no point where one is wanted",
       [](const TempFolder& f) {
         meddle_behind_guards(f.path(), "field_checks",
                              "DROP TRIGGER rtree_field_checks_geom_update1; DROP TRIGGER "
                              "rtree_field_checks_geom_update2; DROP TRIGGER "
                              "rtree_field_checks_geom_update3; DROP TRIGGER "
                              "rtree_field_checks_geom_update4; UPDATE field_checks SET geom = "
                              "x'4750'");
       },
       "field_checks 1, geom: this is no point"},
      {"a number out of all range",
       [](const TempFolder& f) {
         meddle_behind_guards(f.path(), "log",
                              "PRAGMA ignore_check_constraints = ON; UPDATE log SET number = "
                              "9223372036854775807 WHERE number = 9");
       },
       "this is no number from 1 to 10^12"},
      {"letters that are no UTF-8",
       [](const TempFolder& f) {
         meddle_behind_guards(f.path(), "log",
                              "UPDATE log SET detail = CAST(x'ff' AS TEXT) WHERE number = 1");
       },
       "log 1, detail: this is no UTF-8"},
  };
  for (const Breakage& breakage : breakages) {
    CAPTURE(breakage.what);
    const TempFolder folder;
    keep_one_of_each_in(folder.path());
    breakage.done(folder);
    const std::string line = read_all(folder.path());
    CAPTURE(line);
    CHECK(line.starts_with(folder.file("records.gpkg")));
    CHECK(line.find(breakage.told) != std::string::npos);
    CHECK(line.find('\n') == std::string::npos);
  }
}

TEST_CASE("a page of zeros anywhere gives a line or a defect, and never a crash") {
  const TempFolder whole;
  keep_one_of_each_in(whole.path());
  const std::string bytes = whole.read("records.gpkg");
  constexpr std::size_t kPage = 4096;
  REQUIRE(bytes.size() > 20 * kPage);
  int found = 0;
  int pages = 0;
  for (std::size_t at = 0; at + kPage <= bytes.size(); at += kPage) {
    CAPTURE(at / kPage);
    const TempFolder folder;
    std::string broken = bytes;
    std::fill_n(broken.begin() + static_cast<std::ptrdiff_t>(at), kPage, '\0');
    folder.write("records.gpkg", broken);
    bool told = !read_all(folder.path()).empty();
    if (!told) {
      told = !damage_in(records_in(folder.path())).empty() || !defects_in(folder.path()).empty();
    }
    found += told ? 1 : 0;
    ++pages;
  }
  CHECK(found == pages);
}

TEST_CASE("bytes changed at random give a line, a defect or nothing, and never a crash") {
  constexpr unsigned kSeed = 5;
  CAPTURE(kSeed);
  std::mt19937 random{kSeed};
  const TempFolder whole;
  keep_one_of_each_in(whole.path());
  const std::string bytes = whole.read("records.gpkg");
  std::uniform_int_distribution<std::size_t> place{0, bytes.size() - 1};
  std::uniform_int_distribution<int> value{0, 255};
  for (int round = 0; round < 150; ++round) {
    CAPTURE(round);
    const TempFolder folder;
    std::string broken = bytes;
    for (int change = 0; change < 1 + round % 8; ++change) {
      broken[place(random)] = static_cast<char>(value(random));
    }
    folder.write("records.gpkg", broken);
    const std::string line = read_all(folder.path());
    CHECK_FALSE(base::has_controls(line));
  }
}

TEST_CASE("records of another map frame are not written to") {
  const TempFolder folder;
  keep_one_of_each_in(folder.path());
  auto other = writer();
  other.frame = "EPSG:32606";
  CHECK_THROWS_WITH_AS(
      (void)write_records(records_in(folder.path()), other),
      doctest::Contains("its field checks are in the map frame WGS 84 / UTM zone 5N, and the "
                        "site's is WGS 84 / UTM zone 6N"),
      BadInput);
}

TEST_CASE("a map frame is asked for before field checks are read in it") {
  const TempFolder folder;
  CHECK_NOTHROW(expect_frame(records_in(folder.path()), "EPSG:32606"));
  keep_one_of_each_in(folder.path());
  CHECK_NOTHROW(expect_frame(records_in(folder.path()), writer().frame));
  CHECK_THROWS_WITH_AS(expect_frame(records_in(folder.path()), "EPSG:32606"),
                       doctest::Contains("its field checks are in the map frame"), BadInput);
}

TEST_CASE("what makes no sense to keep is our own fault, and nothing of it is kept") {
  const TempFolder folder;
  keep_one_of_each_in(folder.path());
  const auto add_twice = [&folder] {
    const auto writing = write_records(records_in(folder.path()), writer());
    writing->add(day::Recall{.number = 2, .card = 1, .reason = "again", .recalled = done_at(50)},
                 {"recall", "card 1"});
    writing->commit();
  };
  CHECK_THROWS_AS(add_twice(), OurFault);
  const auto empty = [&folder] { write_records(records_in(folder.path()), writer())->commit(); };
  CHECK_THROWS_AS(empty(), OurFault);
  const auto nobody = [&folder] {
    write_records(records_in(folder.path()), writer())->tell({done_at(1).at, " ", ""}, {"a", "b"});
  };
  CHECK_THROWS_AS(nobody(), OurFault);
  CHECK(read_records(records_in(folder.path()))->log().size() == kEntriesOfEach);
}
