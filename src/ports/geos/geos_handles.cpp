#include "ports/geos/geos_handles.h"

#include <geos_c.h>

#include <algorithm>
#include <utility>

#include "base/require.h"

namespace rimehaul::ports::geos {

namespace {

using units::Metres;

void keep_failure(const char* message, void* kept) {
  *static_cast<std::string*>(kept) = message == nullptr ? "" : message;
}

Geometry ring_of(const Context& context, const std::vector<geo::MapPoint>& points) {
  GEOSCoordSequence* sequence =
      GEOSCoordSeq_create_r(context.get(), static_cast<unsigned>(points.size()), 2);
  base::require(sequence != nullptr, "GEOS gave no room for a ring");
  for (unsigned i = 0; i < points.size(); ++i) {
    GEOSCoordSeq_setXY_r(context.get(), sequence, i, points[i].east.value(),
                         points[i].north.value());
  }
  return context.own(GEOSGeom_createLinearRing_r(context.get(), sequence));
}

std::vector<geo::MapPoint> points_of(const Context& context, const GEOSGeometry* ring) {
  const GEOSCoordSequence* sequence = GEOSGeom_getCoordSeq_r(context.get(), ring);
  unsigned count = 0;
  GEOSCoordSeq_getSize_r(context.get(), sequence, &count);
  std::vector<geo::MapPoint> points(count);
  for (unsigned i = 0; i < count; ++i) {
    double east = 0.0;
    double north = 0.0;
    GEOSCoordSeq_getXY_r(context.get(), sequence, i, &east, &north);
    points[i] = {Metres{east}, Metres{north}};
  }
  return points;
}

}  // namespace

void FinishContext::operator()(GEOSContextHandle_HS* context) const {
  GEOS_finish_r(context);
}
void DestroyGeometry::operator()(GEOSGeom_t* geometry) const {
  GEOSGeom_destroy_r(context, geometry);
}
void DestroyTree::operator()(GEOSSTRtree_t* tree) const {
  GEOSSTRtree_destroy_r(context, tree);
}

Context::Context() : failure_{std::make_unique<std::string>()}, context_{GEOS_init_r()} {
  base::require(context_ != nullptr, "GEOS gave no context");
  GEOSContext_setErrorMessageHandler_r(get(), keep_failure, failure_.get());
}

Geometry Context::rectangle(const Box& box) const {
  const auto [west, east] = std::minmax({box.corner.east, box.other_corner.east});
  const auto [south, north] = std::minmax({box.corner.north, box.other_corner.north});
  Geometry made =
      own(GEOSGeom_createRectangle_r(get(), (west - box.wider).value(), (south - box.wider).value(),
                                     (east + box.wider).value(), (north + box.wider).value()));
  base::require(made != nullptr, "GEOS could not make a rectangle");
  return made;
}

Geometry Context::polygon(const geo::Region& region) const {
  if (region.rings.empty()) {
    return own(nullptr);
  }
  Geometry shell = ring_of(*this, region.rings.front());
  std::vector<Geometry> holes;
  for (std::size_t i = 1; i < region.rings.size(); ++i) {
    holes.push_back(ring_of(*this, region.rings[i]));
  }
  if (!shell || std::ranges::any_of(holes, [](const Geometry& hole) { return !hole; })) {
    return own(nullptr);
  }
  std::vector<GEOSGeometry*> raw;
  raw.reserve(holes.size());
  for (Geometry& hole : holes) {
    raw.push_back(hole.release());
  }
  return own(GEOSGeom_createPolygon_r(get(), shell.release(), raw.data(),
                                      static_cast<unsigned>(raw.size())));
}

geo::Region region_of(const Context& context, const GEOSGeometry* polygon) {
  geo::Region region;
  region.rings.push_back(points_of(context, GEOSGetExteriorRing_r(context.get(), polygon)));
  const int holes = GEOSGetNumInteriorRings_r(context.get(), polygon);
  for (int i = 0; i < holes; ++i) {
    region.rings.push_back(points_of(context, GEOSGetInteriorRingN_r(context.get(), polygon, i)));
  }
  return region;
}

}  // namespace rimehaul::ports::geos
