// Whether the metres of a map are metres on the ground, and which map to take when none was named.
#pragma once

#include <optional>
#include <vector>

#include "ports/gdal/gdal_guard.h"
#include "ports/gdal/map_transform.h"

namespace rimehaul::ports::gdal {

/// Least and greatest of map metres per metre on the ellipsoid, over four directions.
struct Stretch {
  double least = 1.0;
  double most = 1.0;
};

[[nodiscard]] bool is_projected(const Reference& reference);
/// 360 degrees in the unit of a geographic system.
[[nodiscard]] double full_turn_of(const Reference& geographic);
/// Of a projected system; 1 for metres.
[[nodiscard]] double metres_per_map_unit(const Reference& reference);

/// At a place in the units of a projected system; nothing when it has no longitude and latitude.
[[nodiscard]] std::optional<Stretch> stretch_at(const Reference& map, PlainPoint place);

/// What forbids the use of a system as map frame around some places (in its own units): not
/// projected, not in metres, axes that do not count towards east and north, or metres off by more
/// than half a per cent, as on Web Mercator.
[[nodiscard]] std::optional<Complaint> trouble_with(const Reference& map,
                                                    const std::vector<PlainPoint>& places);

/// The same projection counted in metres.
[[nodiscard]] Reference in_metres(const Reference& projected);

/// The UTM zone of a place (longitude, latitude in the system's own units) on the datum of a
/// geographic system. Null beyond 84 degrees north or 80 south, where UTM ends.
[[nodiscard]] Reference utm_around(const Reference& geographic, PlainPoint place);

}  // namespace rimehaul::ports::gdal
