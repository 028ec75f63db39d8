#include "ports/gdal/sql.h"

#include <sqlite3.h>

#include <cmath>

#include "base/one_line.h"
#include "base/require.h"
#include "ports/gdal/gdal_guard.h"
#include "ports/gdal/point_blob.h"
#include "ports/gdal/utf8.h"

namespace rimehaul::ports::gdal {

namespace {

Complaint complaint_of(int code, const char* said) {
  switch (code & 0xff) {
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
      return {"another program is writing to it", "wait until that has ended, and try again"};
    case SQLITE_CORRUPT:
    case SQLITE_NOTADB:
      return {"it is damaged", "put the last backup in its place"};
    case SQLITE_READONLY:
    case SQLITE_PERM:
    case SQLITE_CANTOPEN:
    case SQLITE_AUTH:
      return {"it cannot be written",
              "give this account leave to write the file and the folder that it lies in"};
    case SQLITE_FULL:
    case SQLITE_IOERR:
      return {"the disk failed or is full: " + short_line(said),
              "make room or see to the disk; what was kept before is kept"};
    default:
      return {"it cannot be used: " + short_line(said), "put the last backup in its place"};
  }
}

}  // namespace

base::BadInput sql_trouble(const Connection& connection, int code) {
  const char* said =
      connection.handle != nullptr ? sqlite3_errmsg(connection.handle) : sqlite3_errstr(code);
  const int kind = code & 0xff;
  base::require(kind != SQLITE_CONSTRAINT && kind != SQLITE_MISUSE && kind != SQLITE_RANGE,
                "the records refused what was to be kept: " + short_line(said));
  return bad_file(connection.shown, complaint_of(code, said));
}

void run_sql(const Connection& connection, const std::string& statements) {
  const int code = sqlite3_exec(connection.handle, statements.c_str(), nullptr, nullptr, nullptr);
  if (code != SQLITE_OK) {
    throw sql_trouble(connection, code);
  }
}

void undo(const Connection& connection) {
  if (sqlite3_get_autocommit(connection.handle) == 0) {
    // What fails here is undone by whoever opens the file next.
    (void)sqlite3_exec(connection.handle, "ROLLBACK", nullptr, nullptr, nullptr);
  }
}

void Statement::Finalize::operator()(sqlite3_stmt* statement) const {
  sqlite3_finalize(statement);
}

Statement::Statement(const Connection& connection, const std::string& sql)
    : connection_{connection} {
  sqlite3_stmt* statement = nullptr;
  const int code = sqlite3_prepare_v2(connection.handle, sql.c_str(), static_cast<int>(sql.size()),
                                      &statement, nullptr);
  statement_.reset(statement);
  if (code != SQLITE_OK) {
    throw sql_trouble(connection, code);
  }
}

void Statement::expect_bound(int code) const {
  if (code != SQLITE_OK) {
    throw sql_trouble(connection_, code);
  }
}

Statement& Statement::with(std::string_view text) {
  expect_bound(sqlite3_bind_text64(statement_.get(), ++values_, text.data(), text.size(),
                                   SQLITE_TRANSIENT, SQLITE_UTF8));
  return *this;
}

Statement& Statement::with(std::int64_t number) {
  expect_bound(sqlite3_bind_int64(statement_.get(), ++values_, number));
  return *this;
}

Statement& Statement::with(double number) {
  expect_bound(sqlite3_bind_double(statement_.get(), ++values_, number));
  return *this;
}

Statement& Statement::with(units::Instant moment) {
  return with(std::string_view{units::text_of(moment)});
}

Statement& Statement::with(const std::optional<units::Instant>& moment) {
  if (moment) {
    return with(*moment);
  }
  expect_bound(sqlite3_bind_null(statement_.get(), ++values_));
  return *this;
}

Statement& Statement::with(const base::Digest& digest) {
  return with(std::string_view{digest.hex()});
}

Statement& Statement::with_bytes(std::string_view bytes) {
  // No bytes are not the same as nothing, which a null pointer would be.
  expect_bound(sqlite3_bind_blob64(statement_.get(), ++values_, bytes.empty() ? "" : bytes.data(),
                                   bytes.size(), SQLITE_TRANSIENT));
  return *this;
}

bool Statement::next() {
  const int code = sqlite3_step(statement_.get());
  if (code != SQLITE_ROW && code != SQLITE_DONE) {
    throw sql_trouble(connection_, code);
  }
  column_ = 0;
  row_ = 0;
  return code == SQLITE_ROW;
}

void Statement::run() {
  while (next()) {
  }
}

base::BadInput Statement::wrong(int column, const std::string& problem) const {
  const char* table = sqlite3_column_table_name(statement_.get(), column);
  const char* name = sqlite3_column_name(statement_.get(), column);
  const std::string place = (table == nullptr ? std::string{} : std::string{table} + " ") +
                            std::to_string(row_) + ", " + (name == nullptr ? "" : name);
  return base::BadInput{base::Fault{.file = connection_.shown,
                                    .place = place,
                                    .problem = problem,
                                    .remedy = "put the last backup in its place"}};
}

int Statement::column_of_type(int type, const char* wanted) {
  const int column = column_++;
  if (sqlite3_column_type(statement_.get(), column) != type) {
    throw wrong(column, std::string{"this is no "} + wanted);
  }
  return column;
}

std::int64_t Statement::whole() {
  const int column = column_of_type(SQLITE_INTEGER, "whole number");
  return sqlite3_column_int64(statement_.get(), column);
}

std::int64_t Statement::row_number() {
  constexpr std::int64_t kMost = 1'000'000'000'000;
  const int column = column_;
  const std::int64_t number = whole();
  if (number < 1 || number > kMost) {
    throw wrong(column, "this is no number from 1 to 10^12");
  }
  if (column == 0) {
    row_ = number;
  }
  return number;
}

double Statement::number() {
  const int column = column_of_type(SQLITE_FLOAT, "number");
  const double value = sqlite3_column_double(statement_.get(), column);
  if (!std::isfinite(value)) {
    throw wrong(column, "this is no finite number");
  }
  return value;
}

std::string Statement::text() {
  const int column = column_of_type(SQLITE_TEXT, "text");
  const void* letters = sqlite3_column_text(statement_.get(), column);
  const int size = sqlite3_column_bytes(statement_.get(), column);
  std::string value{static_cast<const char*>(letters), static_cast<std::size_t>(size)};
  if (!is_utf8(value)) {
    throw wrong(column, "this is no UTF-8");
  }
  return value;
}

std::string Statement::bytes() {
  const int column = column_of_type(SQLITE_BLOB, "list of bytes");
  const int size = sqlite3_column_bytes(statement_.get(), column);
  const void* first = sqlite3_column_blob(statement_.get(), column);
  return size == 0 ? std::string{}
                   : std::string{static_cast<const char*>(first), static_cast<std::size_t>(size)};
}

units::Instant Statement::moment() {
  const int column = column_;
  const auto value = units::parse_instant(text());
  if (!value) {
    throw wrong(column, "this is no moment");
  }
  return *value;
}

std::optional<units::Instant> Statement::moment_if_any() {
  if (sqlite3_column_type(statement_.get(), column_) == SQLITE_NULL) {
    ++column_;
    return std::nullopt;
  }
  return moment();
}

geo::MapPoint Statement::point() {
  const int column = column_;
  const auto value = parse_point_blob(bytes());
  if (!value) {
    throw wrong(column, "this is no point");
  }
  return *value;
}

base::Digest Statement::digest() {
  const int column = column_;
  const auto value = base::parse_digest(text());
  if (!value) {
    throw wrong(column, "this is no digest");
  }
  return *value;
}

}  // namespace rimehaul::ports::gdal
