// All that a judgement may look at: one immutable scene of a site.
#pragma once

#include "geo/map_frame.h"
#include "passage/rules.h"
#include "terrain/error.h"
#include "terrain/height_map.h"
#include "trails/network.h"

namespace rimehaul::passage {

struct Scene {
  std::string site_name;
  geo::MapFrame frame;
  terrain::HeightMap heights;
  terrain::HeightTrust trust;
  trails::Network network;
  Rules rules;
};

/// k sigma plus the sub-cell term that this rig needs on these heights; nothing when the error was
/// not declared, or when cells are wider than `gauge` and no sub-cell term was given.
[[nodiscard]] std::optional<units::Slope> slope_tolerance(const Scene& scene, units::Metres gauge);

}  // namespace rimehaul::passage
