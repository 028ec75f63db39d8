// Trails, stations, zones and marks from vector files, brought into the map frame once.
#pragma once

#include <string>
#include <vector>

#include "base/fault.h"
#include "geo/map_frame.h"
#include "trails/features.h"
#include "trails/trail.h"

namespace rimehaul::ports::gdal {

/// One vector file of a site. `shown` is its name for people.
struct LayerFile {
  std::string folder;  ///< no file may lie outside it or be a link
  std::string shown;   ///< relative to the folder
};

// Each reads one file, transforms with ballpark operations forbidden and axis order made explicit,
// leaves out what has a fault and lists all faults; throws BadInput when nothing can be read.

[[nodiscard]] base::Reading<std::vector<trails::Trail>> read_trails(const LayerFile& file,
                                                                    const geo::MapFrame& frame);
[[nodiscard]] base::Reading<std::vector<trails::Station>> read_stations(const LayerFile& file,
                                                                        const geo::MapFrame& frame);
[[nodiscard]] base::Reading<std::vector<trails::Zone>> read_zones(const LayerFile& file,
                                                                  const geo::MapFrame& frame);
/// Marks name their trail; points and lines are projected on it. That a trail is not there is no
/// fault where some were left out.
[[nodiscard]] base::Reading<std::vector<trails::Mark>> read_marks(
    const LayerFile& file, const geo::MapFrame& frame, const std::vector<trails::Trail>& trails,
    trails::TrailList trail_list = trails::TrailList::whole);

}  // namespace rimehaul::ports::gdal
