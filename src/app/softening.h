// What the softening of the snow needs to know of a site.
#pragma once

#include "app/load_site.h"
#include "snow/forecast_snow.h"

namespace rimehaul::app {

/// Where the site is under the sun, and its skyline up to 10 km around its trails, as far as its
/// heights reach. Reads all those heights once. Requires a site with a scene.
[[nodiscard]] snow::SofteningSite softening_of(const LoadedSite& site);

}  // namespace rimehaul::app
