// What records.gpkg is made of, version by version. A new file goes through every step as an older
// one does, so that each version before the last can be made and migrated by a test.
#pragma once

#include <string>
#include <vector>

namespace rimehaul::ports::gdal {

/// A statement that makes one thing, and how the file names it afterwards.
struct SchemaObject {
  std::string type;  ///< "table" or "trigger"
  std::string name;
  std::string sql;
};

/// From the version before to this one.
struct SchemaStep {
  std::vector<SchemaObject> objects;
  std::vector<std::string> listed;  ///< tables without geometry that map programs are shown
};

/// The layer of field checks, which GDAL makes before the first step.
inline constexpr const char* kFieldChecks = "field_checks";

/// The steps 0 -> 1 -> 2 ...; their number is the version written by this program.
[[nodiscard]] const std::vector<SchemaStep>& schema_steps();

/// Everything of all steps up to a version.
[[nodiscard]] std::vector<SchemaObject> schema_up_to(std::size_t version);

}  // namespace rimehaul::ports::gdal
