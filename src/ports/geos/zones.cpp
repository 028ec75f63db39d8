#include "ports/geos/zones.h"

#include <geos_c.h>

#include <string>
#include <utility>

#include "ports/geos/geos_handles.h"

namespace rimehaul::ports::geos {

using trails::Zone;
using trails::ZoneKind;

namespace {

std::string why_invalid(const Context& context, const GEOSGeometry* polygon) {
  char* reason = GEOSisValidReason_r(context.get(), polygon);
  std::string words = reason == nullptr ? context.failure() : reason;
  GEOSFree_r(context.get(), reason);
  return words;
}

/// The polygons in a geometry; lines and points that mending leaves over hold no ground.
std::vector<geo::Region> regions_in(const Context& context, const GEOSGeometry* geometry) {
  const int kind = GEOSGeomTypeId_r(context.get(), geometry);
  if (kind == GEOS_POLYGON) {
    return GEOSisEmpty_r(context.get(), geometry) != 0 ? std::vector<geo::Region>{}
                                                       : std::vector{region_of(context, geometry)};
  }
  if (kind != GEOS_MULTIPOLYGON && kind != GEOS_GEOMETRYCOLLECTION) {
    return {};
  }
  std::vector<geo::Region> regions;
  const int parts = GEOSGetNumGeometries_r(context.get(), geometry);
  for (int i = 0; i < parts; ++i) {
    const GEOSGeometry* part = GEOSGetGeometryN_r(context.get(), geometry, i);
    for (geo::Region& region : regions_in(context, part)) {
      regions.push_back(std::move(region));
    }
  }
  return regions;
}

base::Fault refused(const Zone& zone, const std::string& why) {
  const std::string effect =
      zone.kind == ZoneKind::forbidden
          ? "; it is forbidden ground, so no trail of the site is known to keep out of it"
          : "; nothing is known of the ground that it was drawn for";
  return {.file = zone.file,
          .place = "zone " + zone.name,
          .problem = "its outline is not valid (" + why + ")" + effect,
          .remedy = "draw its outline anew, without crossing itself"};
}

base::Fault mended(const Zone& zone, const std::string& why) {
  return {.file = zone.file,
          .place = "zone " + zone.name,
          .problem = "its outline is not valid (" + why + ") and was mended",
          .remedy = "look at it on the map and draw it anew",
          .weight = base::Weight::doubt};
}

}  // namespace

base::Reading<std::vector<Zone>> valid_zones(const std::vector<Zone>& zones) {
  const Context context;
  base::Reading<std::vector<Zone>> reading;
  for (const Zone& zone : zones) {
    const Geometry polygon = context.polygon(zone.region);
    if (!polygon) {
      reading.faults.push_back(refused(zone, context.failure()));
      continue;
    }
    if (GEOSisValid_r(context.get(), polygon.get()) == 1) {
      reading.data.push_back(zone);
      continue;
    }
    const std::string why = why_invalid(context, polygon.get());
    const Geometry made = zone.kind == ZoneKind::forbidden
                              ? context.own(nullptr)
                              : context.own(GEOSMakeValid_r(context.get(), polygon.get()));
    std::vector<geo::Region> regions =
        made ? regions_in(context, made.get()) : std::vector<geo::Region>{};
    reading.faults.push_back(regions.empty() ? refused(zone, why) : mended(zone, why));
    for (geo::Region& region : regions) {
      reading.data.push_back(zone);
      reading.data.back().region = std::move(region);
    }
  }
  return reading;
}

}  // namespace rimehaul::ports::geos
