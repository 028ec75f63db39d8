#include "ports/gdal/layer_names.h"

#include <cpl_string.h>
#include <ogr_api.h>

#include <utility>

#include "ports/gdal/layer_file.h"

namespace rimehaul::ports::gdal {

namespace {

std::vector<std::string> names_in(const LayerFile& file, const Wanted& wanted) {
  const Source source = open_source(file);
  const ErrorScope errors;
  std::vector<std::string> names;
  for (LayerHandle layer : layers_of(source, wanted)) {
    OGR_L_ResetReading(layer);
    while (const Feature feature{OGR_L_GetNextFeature(layer)}) {
      const int column = OGR_F_GetFieldIndex(feature.get(), "name");
      if (column < 0) {
        continue;
      }
      std::string name = trimmed(OGR_F_GetFieldAsString(feature.get(), column));
      if (!name.empty() && CPLIsUTF8(name.c_str(), static_cast<int>(name.size())) != 0) {
        names.push_back(std::move(name));
      }
    }
  }
  return names;
}

}  // namespace

std::vector<std::string> trail_names(const LayerFile& file) {
  return names_in(file, {"trails", "trail", {ShapeKind::line}, {"name"}});
}

std::vector<std::string> station_names(const LayerFile& file) {
  return names_in(file, {"stations", "station", {ShapeKind::point}, {"name"}});
}

}  // namespace rimehaul::ports::gdal
