// The map of a sheet with the ground under it and true north on it.
#pragma once

#include <vector>

#include "app/load_site.h"
#include "card/map_view.h"

namespace rimehaul::app {

/// A map of some ways of a usable site, its hillshade read from the site's heights, its north by
/// the map's convergence in its middle. Throws BadInput when the heights cannot be read.
[[nodiscard]] card::MapView map_with_ground(std::vector<card::MapWay> ways, const LoadedSite& site,
                                            card::MapPaper paper);

}  // namespace rimehaul::app
