#include "ports/gdal/layer_file.h"

#include <cpl_conv.h>
#include <gdal.h>
#include <ogr_api.h>

#include <algorithm>
#include <array>
#include <filesystem>
#include <optional>
#include <string_view>
#include <utility>

#include "base/nearest_name.h"
#include "base/one_line.h"
#include "base/require.h"
#include "ports/gdal/layer_shape.h"
#include "ports/gdal/utf8.h"

namespace rimehaul::ports::gdal {

namespace {

/// Columns that people and programs add for themselves; nothing is missed by not reading them.
constexpr std::array<const char*, 10> kOwnColumns{
    "id", "fid", "ogc_fid", "objectid", "note", "notes", "comment", "desc", "cmt", "description"};
/// Columns that a KML file has whether or not anybody filled them.
constexpr std::array<const char*, 11> kKmlColumns{
    "timestamp",  "begin",     "end",  "altitudemode", "tessellate", "extrude",
    "visibility", "draworder", "icon", "snippet",      "styleurl"};
template <std::size_t Count>
bool is_among(const std::array<const char*, Count>& names, const std::string& name) {
  return std::ranges::any_of(names, [&name](const char* known) { return name == known; });
}

/// A Shapefile without a .cpg is read as UTF-8, not as the driver's Latin-1, which would garble
/// names without a word.
class EncodingScope {
 public:
  explicit EncodingScope(const CheckedFile& file) {
    const std::filesystem::path path{file.path};
    const bool is_shapefile = small_letters(path.extension().string()) == ".shp";
    const auto has_page = [&path](const char* ending) {
      return std::filesystem::exists(std::filesystem::path{path}.replace_extension(ending));
    };
    if (is_shapefile && !has_page(".cpg") && !has_page(".CPG")) {
      CPLSetThreadLocalConfigOption("SHAPE_ENCODING", "UTF-8");
    }
  }
  ~EncodingScope() { CPLSetThreadLocalConfigOption("SHAPE_ENCODING", nullptr); }
  EncodingScope(const EncodingScope&) = delete;
  EncodingScope& operator=(const EncodingScope&) = delete;
};

/// A Shapefile is several files of one name; without its index the library cannot open it, and
/// without its table nothing in it has a name.
void expect_shapefile_parts(const CheckedFile& file) {
  const std::filesystem::path path{file.path};
  if (small_letters(path.extension().string()) != ".shp") {
    return;
  }
  for (const std::array<const char*, 2> ending :
       {std::array{".shx", ".SHX"}, std::array{".dbf", ".DBF"}}) {
    const bool is_there = std::ranges::any_of(ending, [&path](const char* one) {
      return std::filesystem::exists(std::filesystem::path{path}.replace_extension(one));
    });
    if (!is_there) {
      throw bad_file(file.shown, {std::string{"its "} + ending.front() + " file is not beside it",
                                  "put all the files of the Shapefile there"});
    }
  }
}

std::optional<ShapeKind> kind_of(OGRwkbGeometryType type) {
  switch (wkbFlatten(type)) {
    case wkbPoint:
    case wkbMultiPoint:
      return ShapeKind::point;
    case wkbLineString:
    case wkbMultiLineString:
      return ShapeKind::line;
    case wkbPolygon:
    case wkbMultiPolygon:
      return ShapeKind::area;
    default:
      return std::nullopt;
  }
}

bool wants(const Wanted& wanted, std::optional<ShapeKind> kind) {
  return kind && std::ranges::find(wanted.kinds, *kind) != wanted.kinds.end();
}

/// Whether a layer holds, or may hold, the shapes that are wanted.
bool layer_fits(OGRLayerH layer, const Wanted& wanted) {
  const OGRwkbGeometryType type = OGR_L_GetGeomType(layer);
  if (wkbFlatten(type) != wkbUnknown) {
    return wants(wanted, kind_of(type));
  }
  bool fits = false;
  OGR_L_ResetReading(layer);
  while (const Feature feature{OGR_L_GetNextFeature(layer)}) {
    OGRGeometryH geometry = OGR_F_GetGeometryRef(feature.get());
    fits = fits || (geometry != nullptr && wants(wanted, kind_of(OGR_G_GetGeometryType(geometry))));
  }
  return fits;
}

/// Routes and tracks for lines, waypoints for points: a GPX file's layers have fixed meanings.
std::vector<LayerHandle> gpx_layers(const Source& source, const Wanted& wanted) {
  std::vector<LayerHandle> layers;
  // A file of trails and marks has lines that are trails, so marks are its waypoints alone.
  const bool takes_points = wants(wanted, ShapeKind::point);
  for (const char* name : {"waypoints", "routes", "tracks"}) {
    const bool is_points = std::string_view{name} == "waypoints";
    OGRLayerH layer = GDALDatasetGetLayerByName(source.dataset.get(), name);
    const bool fits = is_points ? takes_points : !takes_points && wants(wanted, ShapeKind::line);
    if (layer != nullptr && fits) {
      layers.push_back(layer);
    }
  }
  if (layers.empty()) {
    throw bad_file(source.shown,
                   {"a GPX file holds no areas",
                    "give the " + wanted.layer + " as GeoPackage, GeoJSON, KML or Shapefile"});
  }
  return layers;
}

}  // namespace

Source open_source(const LayerFile& file) {
  const CheckedFile checked = checked_file({file.folder, file.shown}, kLargestLayerBytes);
  start_gdal();
  expect_shapefile_parts(checked);
  const EncodingScope encoding{checked};
  Source source{open_layers(checked), "", file.shown};
  GDALDriverH driver = GDALGetDatasetDriver(source.dataset.get());
  source.driver = driver == nullptr ? "" : GDALGetDriverShortName(driver);
  return source;
}

std::string words_for_kinds(const Wanted& wanted) {
  std::vector<std::string> words;
  for (const ShapeKind kind : wanted.kinds) {
    words.emplace_back(words_for(kind));
  }
  return list_of(words);
}

std::vector<LayerHandle> layers_of(const Source& source, const Wanted& wanted) {
  if (source.is_gpx()) {
    return gpx_layers(source, wanted);
  }
  const int count = GDALDatasetGetLayerCount(source.dataset.get());
  std::vector<LayerHandle> fitting;
  for (int i = 0; i < count; ++i) {
    OGRLayerH layer = GDALDatasetGetLayer(source.dataset.get(), i);
    if (count > 1 && small_letters(OGR_L_GetName(layer)) == wanted.layer) {
      return {layer};
    }
    if (layer_fits(layer, wanted)) {
      fitting.push_back(layer);
    }
  }
  const bool is_empty = count == 1 && fitting.empty() &&
                        OGR_L_GetFeatureCount(GDALDatasetGetLayer(source.dataset.get(), 0), 1) == 0;
  if (count == 0 || is_empty) {
    return {};
  }
  if (fitting.empty()) {
    throw bad_file(source.shown, {"no feature in it is " + words_for_kinds(wanted),
                                  "give a file whose features are the " + wanted.layer});
  }
  if (fitting.size() > 1) {
    throw bad_file(source.shown, {"several of its layers could be the " + wanted.layer,
                                  "name one of its layers " + wanted.layer});
  }
  return fitting;
}

std::vector<base::Fault> column_doubts(const Source& source, OGRLayerH layer,
                                       const Wanted& wanted) {
  std::vector<base::Fault> doubts;
  if (source.is_gpx()) {
    return doubts;  // its columns are the format's own
  }
  OGRFeatureDefnH columns = OGR_L_GetLayerDefn(layer);
  for (int i = 0; i < OGR_FD_GetFieldCount(columns); ++i) {
    const std::string column = small_letters(OGR_Fld_GetNameRef(OGR_FD_GetFieldDefn(columns, i)));
    const bool is_known = std::ranges::find(wanted.columns, column) != wanted.columns.end();
    const bool is_own =
        is_among(kOwnColumns, column) || (source.has_pairs() && is_among(kKmlColumns, column));
    if (is_known || is_own) {
      continue;
    }
    const auto meant = base::nearest_name(column, wanted.columns);
    doubts.push_back(
        {.file = source.shown,
         .place = "column " + (is_utf8(column) && base::is_one_line(column)
                                   ? column
                                   : "number " + std::to_string(i + 1)),
         .problem = "it is not known and not read",
         .remedy = meant ? "did you mean " + *meant + "?" : "take it out if it is not needed",
         .weight = base::Weight::doubt});
  }
  return doubts;
}

Transformation to_map_of(const Source& source, OGRLayerH layer, const geo::MapFrame& frame) {
  OGRSpatialReferenceH said = OGR_L_GetSpatialRef(layer);
  const Reference own = horizontal_part(said);
  if (said != nullptr && !own) {
    throw bad_file(source.shown,
                   {"its coordinate system is none, or bears the code of another kind of system",
                    "store the right one with it"});
  }
  if (!own) {
    throw bad_file(source.shown,
                   {"it does not say what its coordinates mean",
                    "store its coordinate system with it (a Shapefile needs its .prj beside it)"});
  }
  const Reference map = reference_from(frame.horizontal);
  base::require(map != nullptr, "the map frame cannot be understood");
  Transformation to_map = transformation_between({own, map});
  if (!to_map) {
    throw bad_file(source.shown,
                   {"no exact operation is installed from " + name_of(own) + " to the map frame " +
                        frame.horizontal_name,
                    "store it in the map frame, or install the grid that the operation needs"});
  }
  return to_map;
}

}  // namespace rimehaul::ports::gdal
