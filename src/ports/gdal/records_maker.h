// A new records.gpkg, which is seen when it is whole, or not at all.
#pragma once

#include <cstddef>
#include <string>

#include "ports/gdal/records_database.h"

namespace rimehaul::ports::gdal {

struct NewRecords {
  std::string frame;    ///< the map frame as well-known text; that of the field checks
  std::size_t version;  ///< of the schema; tests make older ones
};

/// Makes the file beside its place and gives it its name when it is on the disk. One that is there
/// by then, made by somebody else, is left as it is. What others were killed at making is cleared
/// away. Throws BadInput when it cannot be written.
void make_records(const RecordsPlace& place, const NewRecords& fresh);

}  // namespace rimehaul::ports::gdal
