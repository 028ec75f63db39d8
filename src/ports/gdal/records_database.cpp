#include "ports/gdal/records_database.h"

#include <gdal.h>
#include <sqlite3.h>

#include <array>
#include <cstring>
#include <filesystem>
#include <fstream>

#include "ports/gdal/utf8.h"

namespace rimehaul::ports::gdal {

namespace {

namespace fs = std::filesystem;

constexpr std::uintmax_t kLargestRecordsBytes = std::uintmax_t{8} << 30U;
constexpr std::array<const char*, 2> kDriver{"GPKG", nullptr};

Complaint damaged() {
  return {"it is damaged, or no GeoPackage", "put the last backup in its place"};
}

fs::path path_of(const RecordsPlace& place) {
  return fs::path{place.folder} / place.name;
}

CheckedFile checked(const RecordsPlace& place) {
  // The folder as it stands: its parts are nobody's to name but the caller's.
  CheckedFile file = checked_file({.folder = place.folder.empty() ? "." : place.folder,
                                   .shown = place.name,
                                   .shown_folder = place.folder},
                                  kLargestRecordsBytes);
  // The header of SQLite's file format, and the application's number in it, big end first.
  std::array<char, 72> header{};
  std::ifstream{file.path, std::ios::binary}.read(header.data(), header.size());
  if (std::memcmp(header.data(), "SQLite format 3", 16) != 0) {
    throw bad_file(file.shown, damaged());
  }
  if (std::memcmp(header.data() + 68, "GPKG", 4) != 0) {
    throw bad_file(file.shown, {"it is a database of another application and no GeoPackage",
                                "put the last backup in its place"});
  }
  return file;
}

Dataset opened(const CheckedFile& file, Opened how) {
  start_gdal();
  const ErrorScope errors;
  const unsigned mode = how == Opened::to_write ? GDAL_OF_UPDATE : GDAL_OF_READONLY;
  return Dataset{
      GDALOpenEx(file.path.c_str(), GDAL_OF_VECTOR | mode, kDriver.data(), nullptr, nullptr)};
}

sqlite3* handle_in(const Dataset& dataset) {
  return dataset ? static_cast<sqlite3*>(GDALGetInternalHandle(dataset.get(), "SQLITE_HANDLE"))
                 : nullptr;
}

/// A first look at a file by itself, before anything else of it is believed. Looking with leave to
/// write undoes what a killed writer began.
int first_look(const CheckedFile& file, Opened how, units::Seconds patience) {
  sqlite3* handle = nullptr;
  int code = sqlite3_open_v2(file.path.c_str(), &handle,
                             how == Opened::to_write ? SQLITE_OPEN_READWRITE : SQLITE_OPEN_READONLY,
                             nullptr);
  if (code == SQLITE_OK) {
    sqlite3_busy_timeout(handle, static_cast<int>(patience.value() * 1000.0));
    sqlite3_extended_result_codes(handle, 1);
    code = sqlite3_exec(handle, "SELECT count(*) FROM sqlite_schema", nullptr, nullptr, nullptr);
    // A file that may not be written is opened all the same, to be read.
    if (code == SQLITE_OK && how == Opened::to_write && sqlite3_db_readonly(handle, "main") != 0) {
      code = SQLITE_READONLY;
    }
  }
  sqlite3_close(handle);
  return code;
}

void expect_sound(const CheckedFile& file, Opened how, units::Seconds patience) {
  int code = first_look(file, how, patience);
  if (code == SQLITE_READONLY_ROLLBACK || code == SQLITE_READONLY_RECOVERY ||
      code == SQLITE_READONLY_CANTINIT) {
    code = first_look(file, Opened::to_write, patience);
    if (code != SQLITE_OK && (code & 0xff) != SQLITE_BUSY) {
      throw bad_file(file.shown,
                     {"a writer was cut off, and this account may not undo what it began",
                      "read it once from an account that may write the file and its folder"});
    }
  }
  if (code != SQLITE_OK) {
    throw sql_trouble({nullptr, file.shown}, code);
  }
}

}  // namespace

std::string RecordsPlace::shown() const {
  return path_of(*this).string();
}

bool is_there(const RecordsPlace& place) {
  std::error_code trouble;
  return fs::exists(fs::symlink_status(path_of(place), trouble));
}

RecordsDatabase::RecordsDatabase(const RecordsPlace& place, Opened how) {
  // Before the file is touched at all.
  std::error_code trouble;
  const fs::path canonical = fs::weakly_canonical(path_of(place), trouble);
  alone_.emplace(OneAtATime::File{canonical.string(), place.shown()}, place.patience);
  file_ = checked(place);
  expect_sound(file_, how, place.patience);
  dataset_ = opened(file_, how);
  connection_ = {handle_in(dataset_), file_.shown};
  if (connection_.handle == nullptr) {
    throw bad_file(file_.shown, damaged());
  }
  sqlite3_busy_timeout(connection_.handle, static_cast<int>(place.patience.value() * 1000.0));
  if (how == Opened::to_write) {
    // A commit is on the disk, and so is the end of its journal, before it is told.
    run_sql(connection_,
            "PRAGMA journal_mode = DELETE; PRAGMA synchronous = EXTRA; PRAGMA foreign_keys = ON");
  }
}

MemoryCopy::MemoryCopy(const Connection& from) : connection_{nullptr, from.shown} {
  int code = sqlite3_open_v2(":memory:", &connection_.handle,
                             SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE, nullptr);
  if (code == SQLITE_OK) {
    sqlite3_backup* copy = sqlite3_backup_init(connection_.handle, "main", from.handle, "main");
    if (copy != nullptr) {
      sqlite3_backup_step(copy, -1);
      sqlite3_backup_finish(copy);
    }
    code = sqlite3_errcode(connection_.handle);
  }
  if (code != SQLITE_OK) {
    const base::BadInput trouble = sql_trouble(connection_, code);
    sqlite3_close(connection_.handle);
    throw base::BadInput{trouble};
  }
}

MemoryCopy::~MemoryCopy() {
  sqlite3_close(connection_.handle);
}

}  // namespace rimehaul::ports::gdal
