#include "app/softening.h"

#include <algorithm>
#include <optional>

#include "ports/proj/globe.h"

namespace rimehaul::app {

namespace {

/// The corners of the box around all trails.
geo::Segment box_of(const trails::Network& network) {
  std::optional<geo::Segment> box;
  for (const trails::Trail& trail : network.trails) {
    for (const geo::MapPoint& point : trail.line.points()) {
      if (!box) {
        box = geo::Segment{point, point};
      }
      box->from = {std::min(box->from.east, point.east), std::min(box->from.north, point.north)};
      box->to = {std::max(box->to.east, point.east), std::max(box->to.north, point.north)};
    }
  }
  return box.value_or(geo::Segment{});
}

}  // namespace

snow::SofteningSite softening_of(const LoadedSite& site) {
  constexpr units::Metres kSkyline{10'000};
  const geo::Segment box = box_of(site.scene->network);
  const geo::Segment around{{box.from.east - kSkyline, box.from.north - kSkyline},
                            {box.to.east + kSkyline, box.to.north + kSkyline}};
  const geo::MapPoint middle = between(box, 0.5);
  const ports::proj::Globe globe{site.scene->frame};
  snow::SofteningSite softening;
  softening.sun = {.at = globe.to_globe(middle), .convergence_deg = globe.convergence_deg(middle)};
  softening.horizons = std::make_shared<const terrain::Horizons>(
      *site.heights_source, terrain::horizon_frame(*site.heights_source, around));
  if (site.softening) {
    softening.melt = site.softening->melt;
    softening.off = site.softening->off;
  }
  return softening;
}

}  // namespace rimehaul::app
