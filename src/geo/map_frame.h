// The one metric map frame that the core works in, as a description: ports do the transforming.
#pragma once

#include <string>

namespace rimehaul::geo {

/// What the coordinates and heights of a site mean.
struct MapFrame {
  std::string horizontal;       ///< well-known text of the projected, metric reference system
  std::string horizontal_name;  ///< its name for people, "WGS 84 / UTM zone 5N"
  std::string vertical_name;    ///< the vertical datum for people, as read or declared
};

}  // namespace rimehaul::geo
