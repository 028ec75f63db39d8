// A point as a GeoPackage holds it (OGC 12-128r18, 2.1.3: a header, and well-known binary).
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "geo/point.h"

namespace rimehaul::ports::gdal {

/// A reference system's number in the file.
struct ReferenceNumber {
  std::int64_t value;
};

[[nodiscard]] std::string point_blob(geo::MapPoint point, ReferenceNumber frame);

/// Nothing when the bytes are no such point as point_blob makes, or a coordinate is not finite.
[[nodiscard]] std::optional<geo::MapPoint> parse_point_blob(std::string_view blob);

}  // namespace rimehaul::ports::gdal
