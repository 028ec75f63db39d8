// Lines about a site for people: what there is, how far its heights may be trusted, what to doubt.
#pragma once

#include <string>
#include <vector>

#include "app/load_site.h"
#include "ports/gdal/height_raster.h"

namespace rimehaul::app {

/// Source, date, errors that count, and what was found in the files.
[[nodiscard]] std::vector<std::string> heights_notes(const ports::toml::SiteFile& site,
                                                     const terrain::HeightTrust& trust,
                                                     const ports::gdal::HeightRasterFacts& facts);

/// "20 trails, 12.3 km, in 44 legs", "rigs: A, B", ...
[[nodiscard]] std::vector<std::string> contents_of(const LoadedSite& site);

/// Doubts that no single file shows: drivers' levels that the rules do not know, ratings that are
/// not given, heights missing under trails, a snow report that has run out.
[[nodiscard]] std::vector<base::Fault> doubts_about(const LoadedSite& site, units::Instant now);

}  // namespace rimehaul::app
