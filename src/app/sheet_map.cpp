#include "app/sheet_map.h"

#include <utility>

#include "ports/proj/globe.h"

namespace rimehaul::app {

card::MapView map_with_ground(std::vector<card::MapWay> ways, const LoadedSite& site,
                              card::MapPaper paper) {
  card::MapView map = card::map_of(std::move(ways), *site.scene, paper);
  map.light_frame = card::relief_frame_of(map, site.heights_source->frame());
  map.light = terrain::hillshade(terrain::relief_of(*site.heights_source, map.light_frame));
  const geo::MapPoint middle{
      map.frame.upper_left.east + map.frame.pixel * (static_cast<double>(map.frame.columns) / 2),
      map.frame.upper_left.north - map.frame.pixel * (static_cast<double>(map.frame.rows) / 2)};
  // True bearing = map bearing + convergence, so true north lies at minus the convergence.
  map.north_off_deg = -ports::proj::Globe{site.scene->frame}.convergence_deg(middle);
  map.heights_notes = site.heights_notes;
  return map;
}

}  // namespace rimehaul::app
