// Writes small vector files for tests, and reads the lines that a reader says of them.
#pragma once

#include <cpl_string.h>
#include <doctest/doctest.h>
#include <gdal.h>
#include <gdal_utils.h>

#include <algorithm>
#include <cstddef>
#include <string>
#include <vector>

#include "base/fault.h"
#include "ports/gdal/gdal_guard.h"
#include "ports/gdal/layers.h"
#include "ports/gdal/raster_maker.h"

namespace rimehaul::testing {

/// UTM zone 5 north, whose middle is 153 W.
inline geo::MapFrame test_frame() {
  return {.horizontal = "EPSG:32605",
          .horizontal_name = "WGS 84 / UTM zone 5N",
          .vertical_name = "mean sea level"};
}

/// A GeoJSON file of features that are given as text.
inline std::string geojson(const std::vector<std::string>& features) {
  std::string text = R"({"type": "FeatureCollection", "features": [)";
  for (std::size_t i = 0; i < features.size(); ++i) {
    text += (i == 0 ? "" : ",\n") + features[i];
  }
  return text + "]}";
}

/// `{"type": "Feature", ...}` from a geometry's type, its coordinates and the properties' inside.
struct JsonFeature {
  std::string type;
  std::string coordinates;
  std::string properties;
};
inline std::string feature(const JsonFeature& parts) {
  return R"({"type": "Feature", "geometry": {"type": ")" + parts.type + R"(", "coordinates": )" +
         parts.coordinates + R"(}, "properties": {)" + parts.properties + "}}";
}

/// A trail of two points near 46 N 153 W, with these properties.
inline std::string line_feature(const std::string& properties) {
  return feature({"LineString", "[[-153.0, 46.0], [-153.0, 46.01]]", properties});
}
inline std::string point_feature(const std::string& properties) {
  return feature({"Point", "[-153.0, 46.005]", properties});
}
inline std::string area_feature(const std::string& properties) {
  return feature({"Polygon",
                  "[[[-153.0, 46.0], [-152.99, 46.0], [-152.99, 46.01], [-153.0, 46.0]]]",
                  properties});
}

/// Turns a vector file into one of another format with the options of the ogr2ogr program.
struct Conversion {
  std::string from;
  std::string to;
};
inline void convert(const Conversion& paths, const std::vector<std::string>& options) {
  ports::gdal::start_gdal();
  char** words = nullptr;
  for (const std::string& option : options) {
    words = CSLAddString(words, option.c_str());
  }
  GDALVectorTranslateOptions* translate = GDALVectorTranslateOptionsNew(words, nullptr);
  CSLDestroy(words);
  GDALDatasetH source = GDALOpenEx(paths.from.c_str(), GDAL_OF_VECTOR, nullptr, nullptr, nullptr);
  REQUIRE(source != nullptr);
  const ports::gdal::ErrorScope quiet;
  // An existing file is added to.
  GDALDatasetH target =
      std::filesystem::exists(paths.to)
          ? GDALOpenEx(paths.to.c_str(), GDAL_OF_VECTOR | GDAL_OF_UPDATE, nullptr, nullptr, nullptr)
          : nullptr;
  GDALDatasetH made = GDALVectorTranslate(target == nullptr ? paths.to.c_str() : nullptr, target, 1,
                                          &source, translate, nullptr);
  GDALVectorTranslateOptionsFree(translate);
  GDALClose(source);
  INFO(quiet.failure());
  REQUIRE(made != nullptr);
  GDALClose(made);
}

/// All lines of a reading, for messages and for finding words in.
inline std::string lines_of(const std::vector<base::Fault>& faults) {
  std::string lines;
  for (const base::Fault& fault : faults) {
    lines += base::line_of(fault) + "\n";
  }
  return lines;
}

inline bool holds(const std::string& text, const std::string& words) {
  return text.find(words) != std::string::npos;
}

}  // namespace rimehaul::testing
