// records.gpkg opened: GDAL's dataset and SQLite's connection in one.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "ports/gdal/gdal_guard.h"
#include "ports/gdal/one_at_a_time.h"
#include "ports/gdal/sql.h"
#include "units/quantities.h"

namespace rimehaul::ports::gdal {

/// Where records lie, and how long to wait for somebody else who writes or reads them.
struct RecordsPlace {
  std::string folder;
  std::string name = "records.gpkg";
  units::Seconds patience{5.0};

  [[nodiscard]] std::string shown() const;
};

enum class Opened { to_read, to_write };

/// An open file, and nobody else's in this program while it lives.
class RecordsDatabase {
 public:
  /// Opens a file that is there. Throws BadInput when it is no GeoPackage, damaged, or busy. What a
  /// killed writer left half done is undone, which needs leave to write.
  RecordsDatabase(const RecordsPlace& place, Opened how);
  RecordsDatabase(const RecordsDatabase&) = delete;
  RecordsDatabase& operator=(const RecordsDatabase&) = delete;

  [[nodiscard]] const Connection& connection() const { return connection_; }
  /// A GDALDatasetH.
  [[nodiscard]] void* dataset() const { return dataset_.get(); }

 private:
  CheckedFile file_;
  std::optional<OneAtATime> alone_;
  Dataset dataset_;
  Connection connection_;
};

/// A copy in memory that lives and is changed on its own.
class MemoryCopy {
 public:
  explicit MemoryCopy(const Connection& from);
  ~MemoryCopy();
  MemoryCopy(const MemoryCopy&) = delete;
  MemoryCopy& operator=(const MemoryCopy&) = delete;

  [[nodiscard]] const Connection& connection() const { return connection_; }

 private:
  Connection connection_;
};

/// Whether there is anything of the name.
[[nodiscard]] bool is_there(const RecordsPlace& place);

/// The version of the schema, 1 or more. Throws BadInput where the file holds none of ours, or a
/// newer one than this program knows.
[[nodiscard]] std::size_t version_of(const Connection& connection);

/// Brings an older file, or the bare one that GDAL makes (version 0), to a version, in one piece.
struct Versions {
  std::size_t from;
  std::size_t to;
};
void migrate(const Connection& connection, Versions versions);

/// Throws BadInput unless every table is as this program makes it.
void expect_tables(const Connection& connection);

/// Triggers that are not as this program makes them, a line each.
[[nodiscard]] std::vector<std::string> guards_broken(const Connection& connection);

}  // namespace rimehaul::ports::gdal
