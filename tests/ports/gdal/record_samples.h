// Records for tests: a site folder, and one of everything that is kept.
#pragma once

#include <sqlite3.h>

#include <memory>
#include <string>

#include "ports/gdal/layer_maker.h"
#include "ports/gdal/record_rows.h"
#include "ports/gdal/records_file.h"
#include "ports/gdal/records_maker.h"
#include "ports/openssl/digest.h"

namespace rimehaul::testing {

inline ports::gdal::RecordsPlace records_in(const std::string& folder) {
  return {.folder = folder, .patience = units::Seconds{0.2}};
}

inline ports::gdal::RecordsWriter writer() {
  return {
      .account = "desk", .digest_of = ports::openssl::digest_of, .frame = test_frame().horizontal};
}

inline day::Done done_at(std::int64_t second) {
  return {.at = units::Instant{1'770'000'000 + second}, .by = "N. Rime", .role = "planner"};
}

/// A file of that text, frozen.
inline base::Digest freeze_text(day::Writing& writing, const std::string& text) {
  const base::Digest digest = ports::openssl::digest_of(text);
  writing.freeze({.name = "rules.toml",
                  .role = "rules",
                  .digest = digest,
                  .bytes = static_cast<std::int64_t>(text.size())},
                 text);
  return digest;
}

/// The next board, made from one file, with the head of the log as it is now.
inline day::SignedBoard next_board(day::Writing& writing, const std::string& json) {
  const base::Digest input = freeze_text(writing, "input of " + json);
  return {.number = writing.next(day::Kind::day_board),
          .json = json,
          .digest = ports::openssl::digest_of(json),
          .signed_off = done_at(10),
          .valid_until = units::Instant{1'770'100'000},
          .inputs = {{.name = "rules.toml", .role = "rules", .digest = input}},
          .head = writing.head()};
}

inline day::IssuedCard next_card(day::Writing& writing, std::int64_t board) {
  const std::string json = R"({"kind":"card","board":)" + std::to_string(board) + "}";
  return {.number = writing.next(day::Kind::route_card),
          .board = board,
          .route = "Cable House to Fell Lodge",
          .json = json,
          .digest = ports::openssl::digest_of(json),
          .head = writing.head(),
          .issued = done_at(20)};
}

inline day::FieldCheck field_check(std::int64_t number) {
  return {.number = number,
          .at = {units::Metres{500'000.25}, units::Metres{5'093'800.5}},
          .heading = units::Bearing::from_degrees(271.5),
          .grade = units::Slope::from_degrees(12.3),
          .cross_slope = units::Slope::from_degrees(-3.1),
          .instrument = "clinometer 2",
          .measured = done_at(30)};
}

/// One of everything, in one piece of writing, kEntriesOfEach entries in all.
inline void keep_one_of_each(day::Writing& writing) {
  const base::Digest report = freeze_text(writing, "schema = 1");
  writing.add(day::KeptReport{.number = 1,
                              .digest = report,
                              .observer = "O. Server",
                              .observed = units::Instant{1'769'990'000},
                              .kept = done_at(0)},
              {"report", "snow report 1"});
  writing.add(
      day::KeptMark{
          .number = 1,
          .status = {.mark = "Winch", .clear = true, .until = units::Instant{1'770'050'000}},
          .said = done_at(1)},
      {"mark", "Winch"});
  writing.add(next_board(writing, R"({"kind":"board"})"), {"sign", "board 1"});
  writing.add(day::Override{.number = 1,
                            .kind = "visibility",
                            .subject = "Birk Climb",
                            .value = "150 m",
                            .reason = "poles every 10 m",
                            .expires = units::Instant{1'770'060'000},
                            .allowed = done_at(12)},
              {"override", "Birk Climb", "until noon"});
  writing.add(next_card(writing, 1), {"card", "card 1"});
  writing.add(day::Recall{.number = 1, .card = 1, .reason = "slush", .recalled = done_at(22)},
              {"recall", "card 1"});
  writing.add(
      day::OverrideEnd{
          .number = 1, .override_number = 1, .reason = "poles down", .ended = done_at(23)},
      {"end override", "override 1"});
  writing.add(field_check(1), {"field check", "Birk Climb"});
  writing.tell(done_at(40), {"note", "the day", "closed early"});
}

/// Nine entries.
inline constexpr std::int64_t kEntriesOfEach = 9;

inline void keep_one_of_each_in(const std::string& folder) {
  const auto writing = ports::gdal::write_records(records_in(folder), writer());
  keep_one_of_each(*writing);
  writing->commit();
}

/// Records of an older version of the schema: a mark and a note, two entries.
inline void make_older_records(const std::string& folder, std::size_t version) {
  ports::gdal::make_records(records_in(folder),
                            {.frame = test_frame().horizontal, .version = version});
  const ports::gdal::RecordsDatabase database{records_in(folder), ports::gdal::Opened::to_write};
  const ports::gdal::RecordRows rows{database.connection()};
  const day::KeptMark mark{
      .number = 1, .status = {.mark = "Winch", .clear = false, .until = {}}, .said = done_at(0)};
  day::LogEntry entry;
  entry.at = mark.said.at;
  entry.account = "desk";
  entry.person = mark.said.by;
  entry.act = "mark";
  entry.subject = "Winch";
  entry.about = ports::openssl::digest_of(day::canonical_text(mark));
  entry = day::chained(entry, {}, ports::openssl::digest_of);
  rows.put(entry);
  rows.put(day::Kept<day::KeptMark>{mark, 1});
  entry.act = "note";
  entry.about = {};
  rows.put(day::chained(entry, rows.head(), ports::openssl::digest_of));
}

inline std::vector<std::string> defects_in(const std::string& folder,
                                           const std::vector<day::Witness>& on_paper = {}) {
  const auto records = ports::gdal::read_records(records_in(folder));
  REQUIRE(records != nullptr);
  return day::defects_of(*records, on_paper, ports::openssl::digest_of);
}

/// Somebody at the file with another program that knows no map: what GDAL's triggers ask of a place
/// is answered as if there were none.
class Meddler {
 public:
  explicit Meddler(const std::string& folder) {
    REQUIRE(sqlite3_open((folder + "/records.gpkg").c_str(), &handle_) == SQLITE_OK);
    for (const char* asked : {"ST_IsEmpty", "ST_MinX", "ST_MaxX", "ST_MinY", "ST_MaxY"}) {
      sqlite3_create_function(
          handle_, asked, 1, SQLITE_UTF8, nullptr,
          [](sqlite3_context* context, int, sqlite3_value**) { sqlite3_result_int(context, 1); },
          nullptr, nullptr);
    }
  }
  ~Meddler() { sqlite3_close(handle_); }
  Meddler(const Meddler&) = delete;
  Meddler& operator=(const Meddler&) = delete;

  /// SQLite's result.
  [[nodiscard]] int run(const std::string& statements) const {
    return sqlite3_exec(handle_, statements.c_str(), nullptr, nullptr, nullptr);
  }
  [[nodiscard]] std::string said() const { return sqlite3_errmsg(handle_); }

 private:
  sqlite3* handle_ = nullptr;
};

inline void meddle(const std::string& folder, const std::string& statements) {
  const Meddler meddler{folder};
  const int code = meddler.run(statements);
  CAPTURE(statements);
  CAPTURE(meddler.said());
  CHECK(code == SQLITE_OK);
}

}  // namespace rimehaul::testing
