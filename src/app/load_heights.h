// The heights of a site: opened as site.toml says, at the scale of its rigs, as far as its trails
// need.
#pragma once

#include <vector>

#include "passage/rules.h"
#include "ports/gdal/height_raster.h"
#include "ports/toml/site_file.h"
#include "rig/rig.h"
#include "terrain/error.h"
#include "trails/network.h"

namespace rimehaul::app {

/// Opens the heights that site.toml names. Throws BadInput when none of them can be.
[[nodiscard]] base::Reading<ports::gdal::OpenedHeights> open_heights_of(
    const ports::toml::SiteFile& site);

/// How far the heights may be trusted with what their files showed. Cells finer than every gauge
/// are averaged up to the narrowest, and so replaced in `heights`. Those that were brought from
/// another map stay as they are: their neighbours were not measured apart.
[[nodiscard]] terrain::HeightTrust bring_to_rig_scale(ports::gdal::OpenedHeights& heights,
                                                      terrain::HeightTrust declared,
                                                      const std::vector<rig::Rig>& rigs);

/// The heights beside all trails and on open ground that may be crossed, as far as any judge may
/// look. Throws BadInput where a file is cut off.
[[nodiscard]] terrain::HeightMap load_heights(terrain::BlockSource& source,
                                              const passage::Rules& rules,
                                              const trails::Network& network);

}  // namespace rimehaul::app
