#include "ports/gdal/gpx.h"

#include <cpl_minixml.h>
#include <cpl_string.h>
#include <cpl_vsi.h>
#include <gdal.h>
#include <ogr_api.h>
#include <ogr_srs_api.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <memory>
#include <optional>
#include <utility>

#include "base/require.h"
#include "ports/gdal/gdal_guard.h"
#include "ports/gdal/map_transform.h"
#include "ports/gdal/utf8.h"

namespace rimehaul::ports::gdal {

namespace {

struct FreeGeometry {
  void operator()(void* geometry) const { OGR_G_DestroyGeometry(geometry); }
};
using Geometry = std::unique_ptr<void, FreeGeometry>;

struct FreeXml {
  void operator()(CPLXMLNode* node) const { CPLDestroyXMLNode(node); }
};
using Xml = std::unique_ptr<CPLXMLNode, FreeXml>;

/// A file in memory of one writer's own, gone at the end.
class MemoryFile {
 public:
  explicit MemoryFile(const void* owner)
      : name_{"/vsimem/rimehaul-" + std::to_string(reinterpret_cast<std::uintptr_t>(owner)) +
              ".gpx"} {}
  ~MemoryFile() { VSIUnlink(name_.c_str()); }
  MemoryFile(const MemoryFile&) = delete;
  MemoryFile& operator=(const MemoryFile&) = delete;
  [[nodiscard]] const std::string& name() const { return name_; }

 private:
  std::string name_;
};

Geometry geometry_of(const GpxPoint& point) {
  Geometry geometry{OGR_G_CreateGeometry(wkbPoint)};
  // GPX 1.1 has the date line at -180 alone.
  const double longitude = point.place.longitude_deg;
  OGR_G_SetPoint_2D(geometry.get(), 0, longitude == 180.0 ? -180.0 : longitude,
                    point.place.latitude_deg);
  return geometry;
}

/// Heights go into the driver's own column: it would not write them from the geometry, and a column
/// that is not set is left out, never written as 0.
bool set_height(OGRFeatureH feature, const GpxPoint& point) {
  const int index = OGR_F_GetFieldIndex(feature, "ele");
  if (point.height && std::isfinite(point.height->above_datum_m()) && index >= 0) {
    OGR_F_SetFieldDouble(feature, index, point.height->above_datum_m());
  }
  return index >= 0;
}

/// Which fields a layer's features carry beside their point.
struct LayerPlan {
  const char* name;
  const char* number_of_parent;  ///< the driver's field that ties points to one route or track
  const char* name_of_parent;
};
constexpr LayerPlan kWaypoints{"waypoints", nullptr, nullptr};
constexpr LayerPlan kRoutePoints{"route_points", "route_fid", "route_name"};
constexpr LayerPlan kTrackPoints{"track_points", "track_fid", "track_name"};

bool set_text(OGRFeatureH feature, const char* field, const std::string& text) {
  const int index = OGR_F_GetFieldIndex(feature, field);
  if (!text.empty() && index >= 0) {
    OGR_F_SetFieldString(feature, index, printable(text).c_str());
  }
  return index >= 0;
}

bool write_point(OGRLayerH layer, const LayerPlan& plan, const GpxPoint& point,
                 const std::string& parent) {
  const Feature feature{OGR_F_Create(OGR_L_GetLayerDefn(layer))};
  bool known = set_text(feature.get(), "name", point.name);
  known = set_text(feature.get(), "desc", point.note) && known;
  known = set_height(feature.get(), point) && known;
  if (plan.number_of_parent != nullptr) {
    OGR_F_SetFieldInteger(feature.get(), OGR_F_GetFieldIndex(feature.get(), plan.number_of_parent),
                          0);
    known = set_text(feature.get(), plan.name_of_parent, parent) && known;
    if (const int part = OGR_F_GetFieldIndex(feature.get(), "track_seg_id"); part >= 0) {
      OGR_F_SetFieldInteger(feature.get(), part, 0);
    }
  }
  const Geometry geometry = geometry_of(point);
  return known && OGR_F_SetGeometry(feature.get(), geometry.get()) == OGRERR_NONE &&
         OGR_L_CreateFeature(layer, feature.get()) == OGRERR_NONE;
}

/// The driver's own fields do not include the parent's name, which is added.
OGRLayerH make_layer(GDALDatasetH dataset, const LayerPlan& plan) {
  const Reference globe = globe_reference();
  OGRLayerH layer = GDALDatasetCreateLayer(dataset, plan.name, globe.get(), wkbPoint, nullptr);
  if (layer == nullptr || plan.name_of_parent == nullptr) {
    return layer;
  }
  OGRFieldDefnH field = OGR_Fld_Create(plan.name_of_parent, OFTString);
  const bool is_new = OGR_FD_GetFieldIndex(OGR_L_GetLayerDefn(layer), plan.name_of_parent) < 0;
  const bool added = !is_new || OGR_L_CreateField(layer, field, 0) == OGRERR_NONE;
  OGR_Fld_Destroy(field);
  return added ? layer : nullptr;
}

bool write_points(GDALDatasetH dataset, const LayerPlan& plan, const std::vector<GpxPoint>& points,
                  const std::string& parent) {
  if (points.empty()) {
    return true;
  }
  OGRLayerH layer = make_layer(dataset, plan);
  return layer != nullptr && std::ranges::all_of(points, [&](const GpxPoint& point) {
           return write_point(layer, plan, point, parent);
         });
}

/// Waypoints, then the route, then the track: the order that GPX 1.1 asks for.
bool write_by_driver(const std::string& path, const GpxRoute& route) {
  GDALDriverH driver = GDALGetDriverByName("GPX");
  base::require(driver != nullptr, "the GPX driver is missing");
  const Dataset dataset{GDALCreate(driver, path.c_str(), 0, 0, 0, GDT_Unknown, nullptr)};
  return dataset && write_points(dataset.get(), kWaypoints, route.waypoints, "") &&
         write_points(dataset.get(), kRoutePoints, route.waypoints, route.name) &&
         write_points(dataset.get(), kTrackPoints, route.track, route.name);
}

/// The driver writes no description of a route or track made of points, so it is put in after the
/// name, where GPX 1.1 has it.
void describe(CPLXMLNode* parent, const std::string& words) {
  CPLXMLNode* name = CPLGetXMLNode(parent, "name");
  CPLXMLNode* description = CPLCreateXMLNode(nullptr, CXT_Element, "desc");
  CPLCreateXMLNode(description, CXT_Text, printable(words).c_str());
  if (name != nullptr) {
    description->psNext = name->psNext;
    name->psNext = description;
  } else {
    description->psNext = parent->psChild;
    parent->psChild = description;
  }
}

/// The finished text, read back from what the driver wrote, so that half a file is never passed on.
std::optional<std::string> finished_text(const std::string& path, const GpxRoute& route) {
  const Xml tree{CPLParseXMLFile(path.c_str())};
  CPLXMLNode* root = tree ? CPLGetXMLNode(tree.get(), "=gpx") : nullptr;
  if (root == nullptr) {
    return std::nullopt;
  }
  CPLSetXMLValue(root, "#creator", "Rimehaul");
  for (const char* name : {"rte", "trk"}) {
    CPLXMLNode* parent = CPLGetXMLNode(root, name);
    if (parent != nullptr && !route.description.empty()) {
      describe(parent, route.description);
    }
  }
  const Text text{CPLSerializeXMLTree(tree.get())};
  return text ? std::optional<std::string>{text.get()} : std::nullopt;
}

bool is_on_globe(const GpxPoint& point) {
  return std::abs(point.place.latitude_deg) <= 90.0 && std::abs(point.place.longitude_deg) <= 180.0;
}

}  // namespace

std::string gpx_text(const GpxRoute& route) {
  base::require(std::ranges::all_of(route.waypoints, is_on_globe) &&
                    std::ranges::all_of(route.track, is_on_globe),
                "a point of a route does not lie on the globe");
  start_gdal();
  std::optional<std::string> text;
  std::string why;
  {
    const ErrorScope errors;
    const MemoryFile draft{&route};
    if (write_by_driver(draft.name(), route) && errors.failure().empty()) {
      text = finished_text(draft.name(), route);
    }
    why = errors.failure();
  }
  base::require(text.has_value(), "the GPX driver wrote no route in memory: " + why);
  return *text;
}

}  // namespace rimehaul::ports::gdal
