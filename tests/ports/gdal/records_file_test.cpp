// What is kept comes back as it was, all of it or nothing, and any map program reads it.
#include "ports/gdal/records_file.h"

#include <doctest/doctest.h>
#include <sys/stat.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <string>

#include "near.h"
#include "ports/gdal/record_samples.h"
#include "told.h"

using namespace rimehaul;
using rimehaul::base::BadInput;
using rimehaul::ports::gdal::read_records;
using rimehaul::ports::gdal::write_records;
using rimehaul::testing::defects_in;
using rimehaul::testing::done_at;
using rimehaul::testing::keep_one_of_each;
using rimehaul::testing::keep_one_of_each_in;
using rimehaul::testing::kEntriesOfEach;
using rimehaul::testing::near;
using rimehaul::testing::records_in;
using rimehaul::testing::TempFolder;
using rimehaul::testing::told_by;
using rimehaul::testing::writer;

namespace fs = std::filesystem;

namespace {

std::vector<std::string> names_in(const std::string& folder) {
  std::vector<std::string> names;
  for (const auto& entry : fs::directory_iterator{folder}) {
    names.push_back(entry.path().filename().string());
  }
  return names;
}

}  // namespace

TEST_CASE("a site without records has none, and looking does not make them") {
  const TempFolder folder;
  CHECK(read_records(records_in(folder.path())) == nullptr);
  CHECK(names_in(folder.path()).empty());
}

TEST_CASE("what is committed comes back as it was, and nothing lies beside the file") {
  const TempFolder folder;
  keep_one_of_each_in(folder.path());
  CHECK(names_in(folder.path()) == std::vector<std::string>{"records.gpkg"});
  CHECK(defects_in(folder.path()).empty());
  const auto records = read_records(records_in(folder.path()));
  REQUIRE(records != nullptr);
  const auto log = records->log();
  REQUIRE(log.size() == kEntriesOfEach);
  CHECK(log[3].act == "override");
  CHECK(log[3].detail == "until noon");
  CHECK(log[3].account == "desk");
  CHECK(log[3].person == "N. Rime");
  CHECK(log[3].role == "planner");
  CHECK(log[3].at == done_at(12).at);
  CHECK(records->head() == day::head_of(log));
  CHECK(records->reports().at(0).thing.until == std::nullopt);
  CHECK(records->marks().at(0).thing.status.clear);
  const auto board = records->boards().at(0).thing;
  CHECK(board.json == R"({"kind":"board"})");
  CHECK(board.inputs.at(0).name == "rules.toml");
  CHECK(board.head.number == 2);
  CHECK(records->overrides().at(0).thing.value == "150 m");
  CHECK(records->override_ends().at(0).thing.override_number == 1);
  CHECK(records->cards().at(0).thing.route == "Cable House to Fell Lodge");
  CHECK(records->recalls().at(0).thing.reason == "slush");
  const auto check = records->field_checks().at(0).thing;
  CHECK(near(check.at.east, units::Metres{500'000.25}, units::Metres{0}));
  CHECK(day::canonical_text(check) == day::canonical_text(rimehaul::testing::field_check(1)));
  const auto frozen = records->frozen_inputs();
  REQUIRE(frozen.size() == 2);
  CHECK(records->content_of(frozen[0]) == "schema = 1");
}

TEST_CASE("what is not committed is not there, and what was added is seen by its writer alone") {
  const TempFolder folder;
  keep_one_of_each_in(folder.path());
  {
    const auto writing = write_records(records_in(folder.path()), writer());
    CHECK(writing->head().number == kEntriesOfEach);
    writing->tell(done_at(50), {"note", "the day"});
    CHECK(writing->log().size() == kEntriesOfEach + 1);
  }
  CHECK(read_records(records_in(folder.path()))->log().size() == kEntriesOfEach);
}
