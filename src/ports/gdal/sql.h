// SQLite's own interface, as little of it as the records need. What it refuses becomes one line.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

#include "base/digest.h"
#include "base/fault.h"
#include "geo/point.h"
#include "units/clock.h"

struct sqlite3;
struct sqlite3_stmt;

namespace rimehaul::ports::gdal {

/// A connection that somebody else closes, and its file's name for people.
struct Connection {
  sqlite3* handle = nullptr;
  std::string shown;
};

/// What went wrong on a connection just now, as a line about its file: another writer, a full disk,
/// a damaged file. Throws OurFault where the file refused what we should not have asked for.
[[nodiscard]] base::BadInput sql_trouble(const Connection& connection, int code);

/// Runs statements that give no rows. Throws BadInput.
void run_sql(const Connection& connection, const std::string& statements);

/// Undoes what was begun and not committed, if anything was.
void undo(const Connection& connection);

/// One statement with its values, and its rows. Throws BadInput, for a value that is not what its
/// column may hold too: "log, row 3: ...".
class Statement {
 public:
  Statement(const Connection& connection, const std::string& sql);

  /// The values of ?1, ?2 and so on, in turn.
  Statement& with(std::string_view text);
  Statement& with(std::int64_t number);
  Statement& with(double number);
  Statement& with(units::Instant moment);
  Statement& with(const std::optional<units::Instant>& moment);
  Statement& with(const base::Digest& digest);
  Statement& with_bytes(std::string_view bytes);

  /// Goes to the next row; false: there is none.
  bool next();
  /// Goes to the end.
  void run();

  // The values of the row, column after column from the first.

  [[nodiscard]] std::int64_t whole();
  [[nodiscard]] double number();
  [[nodiscard]] std::string text();
  [[nodiscard]] std::string bytes();
  [[nodiscard]] units::Instant moment();
  [[nodiscard]] std::optional<units::Instant> moment_if_any();
  [[nodiscard]] base::Digest digest();
  [[nodiscard]] geo::MapPoint point();
  /// A whole number from 1 to 10^12: names the row in faults from then on.
  [[nodiscard]] std::int64_t row_number();

 private:
  struct Finalize {
    void operator()(sqlite3_stmt* statement) const;
  };
  void expect_bound(int code) const;
  [[nodiscard]] int column_of_type(int type, const char* wanted);
  [[nodiscard]] base::BadInput wrong(int column, const std::string& problem) const;

  const Connection& connection_;
  std::unique_ptr<sqlite3_stmt, Finalize> statement_;
  int values_ = 0;
  int column_ = 0;
  std::int64_t row_ = 0;
};

}  // namespace rimehaul::ports::gdal
