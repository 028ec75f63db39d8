#include "app/load_heights.h"

#include <algorithm>
#include <memory>
#include <optional>
#include <utility>

#include "app/input_files.h"
#include "app/own_facts.h"
#include "terrain/averaged_heights.h"

namespace rimehaul::app {

namespace {

using ports::toml::SiteFile;

std::optional<double> metres_per(std::optional<ports::toml::HeightUnit> unit) {
  if (!unit) {
    return std::nullopt;
  }
  switch (*unit) {
    case ports::toml::HeightUnit::metres:
      return 1.0;
    case ports::toml::HeightUnit::feet:
      return 0.3048;
    case ports::toml::HeightUnit::us_survey_feet:
      return 1200.0 / 3937.0;
  }
  return std::nullopt;
}

ports::gdal::HeightRasterRequest heights_wanted(const SiteFile& site) {
  return {.folder = heights_folder(site),
          .files = site.heights.files,
          .shown_folder = site.heights.folder,
          .map_frame = site.map_frame,
          .vertical_datum = site.heights.vertical_datum,
          .metres_per_unit = metres_per(site.heights.unit),
          .lowest = site.heights.lowest,
          .highest = site.heights.highest};
}

/// How far beside a trail the judges may look: steep ground within the widest keep-off of the
/// bulletin's levels, and some more for the rig, the line's error and whole cells.
units::Metres reach_beside_trails(const passage::Rules& rules) {
  units::Metres reach{0};
  for (const passage::BulletinStep& step : rules.bulletin) {
    reach = std::max(reach, step.keep_off);
  }
  return reach + units::Metres{100};
}

/// The narrowest gauge of all that may drive or be towed here; nothing without rigs.
std::optional<units::Metres> narrowest_gauge(const std::vector<rig::Rig>& rigs) {
  std::optional<units::Metres> narrowest;
  for (const rig::Rig& rig : rigs) {
    const units::Metres gauge =
        rig.trailer ? std::min(rig.carrier.gauge, rig.trailer->gauge) : rig.carrier.gauge;
    narrowest = std::min(narrowest.value_or(gauge), gauge);
  }
  return narrowest;
}

/// The step to which heights were rounded. Cells brought from another map lie closer together than
/// those that were rounded, and lie between them: a slope from one to the next is off no more.
units::Metres rounding_on(const ports::gdal::OpenedHeights& heights) {
  const units::Metres quantum = heights.facts.quantum.value_or(units::Metres{0});
  if (heights.source == nullptr || !heights.facts.warped) {
    return quantum;
  }
  return std::min(1.0, heights.source->frame().smaller_step() / heights.facts.narrowest_step) *
         quantum;
}

/// Over the box around a region and so far around it.
terrain::Corridor corridor_over(const geo::Region& region, units::Metres around) {
  geo::MapPoint low = region.rings.front().front();
  geo::MapPoint high = low;
  for (const geo::MapPoint& point : region.rings.front()) {
    low = {std::min(low.east, point.east), std::min(low.north, point.north)};
    high = {std::max(high.east, point.east), std::max(high.north, point.north)};
  }
  const units::Metres middle = low.north + (high.north - low.north) / 2.0;
  return {geo::Polyline{{{low.east - around, middle}, {high.east + around, middle}}},
          (high.north - low.north) / 2.0 + around};
}

}  // namespace

base::Reading<ports::gdal::OpenedHeights> open_heights_of(const SiteFile& site) {
  const ports::gdal::HeightRasterRequest request = heights_wanted(site);
  return site.heights.unit_is_unclear ? open_whatever_the_unit(request)
                                      : ports::gdal::open_heights(request);
}

terrain::HeightTrust bring_to_rig_scale(ports::gdal::OpenedHeights& heights,
                                        terrain::HeightTrust declared,
                                        const std::vector<rig::Rig>& rigs) {
  terrain::HeightTrust trust = std::move(declared);
  trust.measured_step = heights.facts.widest_step;
  trust.rounded_to = rounding_on(heights);
  const std::optional<units::Metres> gauge = narrowest_gauge(rigs);
  if (heights.source == nullptr || heights.facts.warped || !gauge) {
    return trust;
  }
  trust.mean_over = terrain::cells_across(heights.source->frame(), *gauge);
  if (trust.mean_over > 1) {
    heights.source =
        std::make_unique<terrain::AveragedHeights>(std::move(heights.source), trust.mean_over);
  }
  return trust;
}

terrain::HeightMap load_heights(terrain::BlockSource& source, const passage::Rules& rules,
                                const trails::Network& network) {
  const units::Metres reach = reach_beside_trails(rules);
  std::vector<terrain::Corridor> corridors;
  for (const trails::Trail& trail : network.trails) {
    corridors.push_back({trail.line, reach});
  }
  for (const trails::Zone& zone : network.zones) {
    if (may_be_crossed(zone)) {
      corridors.push_back(corridor_over(zone.region, reach));
    }
  }
  return terrain::HeightMap::load(source, corridors);
}

}  // namespace rimehaul::app
