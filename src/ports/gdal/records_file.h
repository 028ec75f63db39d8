// records.gpkg of a site: the book of day/record_book.h as a GeoPackage that any map program opens.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "day/record_book.h"
#include "ports/gdal/records_database.h"

namespace rimehaul::ports::gdal {

/// Who writes.
struct RecordsWriter {
  std::string account;  ///< of the machine
  day::DigestFunction digest_of;
  std::string frame;  ///< the site's map frame, geo::MapFrame::horizontal
};

/// The records as they stand now; nothing when the site has none. An older file is read as if it
/// were of the newest version, and left as it is. Nothing is written, so that a folder without
/// leave to write will do. While it lives, others wait to commit: read what is needed and let go.
/// Throws BadInput.
[[nodiscard]] std::unique_ptr<day::Records> read_records(const RecordsPlace& place);

/// Throws BadInput where the field checks that are kept are in another map frame than this one:
/// their coordinates mean other places then. Nothing is said where there are no records.
void expect_frame(const RecordsPlace& place, const std::string& frame);

/// Begins a piece of writing, in a file that is made or brought to the newest version where needed.
/// Waits for another writer as long as the place says. Throws BadInput, also where the field checks
/// are in another map frame or a guard against change was taken away.
[[nodiscard]] std::unique_ptr<day::Writing> write_records(const RecordsPlace& place,
                                                          const RecordsWriter& writer);

/// Copies the records, as they stand, into a file that nobody else has open; it is begun anew.
/// Throws BadInput naming `shown`, the file's name for people, or the records.
struct Backup {
  std::string path;
  std::string shown;
};
void back_up(const RecordsPlace& place, const Backup& into);

/// What SQLite finds wrong with the file itself, a line each.
[[nodiscard]] std::vector<std::string> damage_in(const RecordsPlace& place);

}  // namespace rimehaul::ports::gdal
