// What is kept comes back as it was, all of it or nothing, and any map program reads it.
#include "ports/gdal/records_file.h"

#include <doctest/doctest.h>
#include <algorithm>
#include <filesystem>
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

TEST_CASE("GDAL's own program lists every layer with its count, and field checks on the map") {
  const TempFolder folder;
  keep_one_of_each_in(folder.path());
  const std::string told =
      told_by("ogrinfo -ro -so -al '" + folder.file("records.gpkg") + "' 2>&1");
  CAPTURE(told);
  const auto count_of = [&told](const std::string& layer) {
    const auto at = told.find("Layer name: " + layer + "\n");
    REQUIRE(at != std::string::npos);
    const std::string label = "Feature Count: ";
    return std::stoi(told.substr(told.find(label, at) + label.size()));
  };
  CHECK(count_of("log") == kEntriesOfEach);
  CHECK(count_of("frozen_inputs") == 2);
  CHECK(count_of("records_schema") == 2);
  for (const char* layer :
       {"field_checks", "snow_reports", "mark_statuses", "day_boards", "day_board_inputs",
        "overrides", "override_ends", "route_cards", "card_recalls"}) {
    CAPTURE(layer);
    CHECK(count_of(layer) == 1);
  }
  CHECK(told.find("Geometry: Point") != std::string::npos);
  CHECK(told.find("Extent: (500000.250000, 5093800.500000) - (500000.250000, 5093800.500000)") !=
        std::string::npos);
  CHECK(told.find("ID[\"EPSG\",32605]") != std::string::npos);
  CHECK(told.find("Warning") == std::string::npos);
  CHECK(told.find("ERROR") == std::string::npos);
}

TEST_CASE("GDAL's own program finds a field check by where it is, and what was measured there") {
  const TempFolder folder;
  keep_one_of_each_in(folder.path());
  const auto within = [&folder](const std::string& box) {
    return told_by("ogrinfo -ro -al -spat " + box + " '" + folder.file("records.gpkg") +
                   "' field_checks 2>&1");
  };
  const std::string there = within("500000 5093800 500001 5093801");
  CAPTURE(there);
  CHECK(there.find("grade_deg (Real) = 12.3\n") != std::string::npos);
  CHECK(there.find("cross_slope_deg (Real) = -3.1\n") != std::string::npos);
  CHECK(there.find("heading_deg (Real) = 271.5\n") != std::string::npos);
  CHECK(there.find("POINT (500000.25 5093800.5)") != std::string::npos);
  CHECK(within("500001 5093800 500002 5093801").find("Feature Count: 0") != std::string::npos);
}

TEST_CASE("a copy is all that is kept, and what is kept after it is not in it") {
  const TempFolder folder;
  const TempFolder other;
  keep_one_of_each_in(folder.path());
  ports::gdal::back_up(records_in(folder.path()),
                       {.path = other.file("records.gpkg"), .shown = "copy"});
  const auto log_in = [](const TempFolder& where) {
    return read_records(records_in(where.path()))->log();
  };
  CHECK(log_in(other) == log_in(folder));
  CHECK(defects_in(other.path()).empty());
  CHECK(names_in(other.path()) == std::vector<std::string>{"records.gpkg"});
  {
    const auto writing = write_records(records_in(folder.path()), writer());
    writing->tell(done_at(60), {"note", "later"});
    writing->commit();
  }
  CHECK(log_in(other).size() == kEntriesOfEach);
  // And the copy goes on as records do.
  const auto writing = write_records(records_in(other.path()), writer());
  CHECK(writing->head().number == kEntriesOfEach);
}

TEST_CASE("files above the stated size are kept by digest alone, and one content once") {
  const TempFolder folder;
  const std::string heights(static_cast<std::size_t>(day::kMostFrozenBytes) + 1, 'h');
  {
    const auto writing = write_records(records_in(folder.path()), writer());
    for (int again = 0; again < 2; ++again) {
      writing->freeze({.name = "heights.tif",
                       .role = "heights",
                       .digest = ports::openssl::digest_of(heights),
                       .bytes = static_cast<std::int64_t>(heights.size())},
                      {});
      (void)testing::freeze_text(*writing, std::string{});
    }
    writing->tell(done_at(0), {"freeze", "inputs"});
    writing->commit();
  }
  const auto records = read_records(records_in(folder.path()));
  const auto frozen = records->frozen_inputs();
  REQUIRE(frozen.size() == 2);
  CHECK(frozen[0].how == day::Frozen::by_digest);
  CHECK(frozen[0].bytes == day::kMostFrozenBytes + 1);
  CHECK(frozen[1].how == day::Frozen::whole);
  CHECK(records->content_of(frozen[1]).empty());
}
