// Open ground becomes part of the network, as far as the rig may cross it.
#pragma once

#include <span>

#include "app/load_site.h"
#include "snow/snow.h"

namespace rimehaul::app {

/// Joins to the site's network the ways over its open ground that a rig may take at an hour in any
/// of these snows. Requires a site with a scene; what referred to the network before is void.
void join_open_ground(LoadedSite& site, const rig::Rig& rig,
                      std::span<const snow::SnowAt* const> snows, units::Instant when);

}  // namespace rimehaul::app
