// Writes small rasters for tests into a folder that goes away with the test.
#pragma once

#include <cpl_string.h>
#include <doctest/doctest.h>
#include <gdal.h>
#include <ogr_srs_api.h>
#include <stdlib.h>

#include <algorithm>
#include <array>
#include <filesystem>
#include <fstream>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "ports/gdal/gdal_guard.h"
#include "ports/gdal/height_raster.h"

namespace rimehaul::testing {

/// UTM zone 5N as a .prj file of the older dialect, which lies beside ASCII grids and shapefiles.
inline constexpr const char* kUtm5Prj =
    "PROJCS[\"WGS_1984_UTM_Zone_5N\",GEOGCS[\"GCS_WGS_1984\",DATUM[\"D_WGS_1984\","
    "SPHEROID[\"WGS_1984\",6378137.0,298.257223563]],PRIMEM[\"Greenwich\",0.0],UNIT["
    "\"Degree\",0.0174532925199433]],PROJECTION[\"Transverse_Mercator\"],PARAMETER["
    "\"False_Easting\",500000.0],PARAMETER[\"False_Northing\",0.0],PARAMETER[\"Central_"
    "Meridian\",-153.0],PARAMETER[\"Scale_Factor\",0.9996],PARAMETER[\"Latitude_Of_"
    "Origin\",0.0],UNIT[\"Meter\",1.0]]";

/// A new empty folder, removed at the end.
class TempFolder {
 public:
  TempFolder() {
    std::string pattern = (std::filesystem::temp_directory_path() / "rimehaul-XXXXXX").string();
    REQUIRE(mkdtemp(pattern.data()) != nullptr);
    path_ = pattern;
  }
  ~TempFolder() {
    std::error_code trouble;
    std::filesystem::remove_all(path_, trouble);
  }
  TempFolder(const TempFolder&) = delete;
  TempFolder& operator=(const TempFolder&) = delete;

  [[nodiscard]] std::string path() const { return path_.string(); }
  [[nodiscard]] std::string file(const std::string& name) const { return (path_ / name).string(); }
  void write(const std::string& name, const std::string& text) const {
    std::ofstream{path_ / name, std::ios::binary} << text;
  }
  [[nodiscard]] std::string read(const std::string& name) const {
    std::ifstream stream{path_ / name, std::ios::binary};
    return {std::istreambuf_iterator<char>{stream}, {}};
  }

 private:
  std::filesystem::path path_;
};

/// What a GeoTIFF is to hold. The value is asked for at column and row.
struct RasterRecipe {
  int columns = 16;
  int rows = 12;
  std::array<double, 6> corners{500000, 2, 0, 5100000, 0, -2};  ///< GDAL's six coefficients
  std::string system = "EPSG:32605";                            ///< "" for none
  std::string unit = "m";                                       ///< "" for none
  std::optional<double> nodata;
  GDALDataType type = GDT_Float32;
  int bands = 1;
  std::optional<double> scale;
  std::optional<double> offset;
  bool is_point = false;
  std::vector<std::string> options;  ///< of the GeoTIFF driver: "TILED=YES"
  std::function<double(int, int)> value = [](int column, int row) {
    return 1000.0 + 0.37 * column - 0.21 * row;
  };
};

using Finish = std::function<void(GDALDatasetH)>;

/// Writes a GeoTIFF; `finish` may add to the open dataset before it is closed.
inline void write_raster(const std::string& path, const RasterRecipe& recipe,
                         const Finish& finish = nullptr, const char* driver = "GTiff") {
  ports::gdal::start_gdal();
  char** options = nullptr;
  for (const std::string& option : recipe.options) {
    options = CSLAddString(options, option.c_str());
  }
  const ports::gdal::Dataset dataset{GDALCreate(GDALGetDriverByName(driver), path.c_str(),
                                                recipe.columns, recipe.rows, recipe.bands,
                                                recipe.type, options)};
  CSLDestroy(options);
  REQUIRE(dataset != nullptr);
  std::array<double, 6> corners = recipe.corners;
  if (corners != std::array<double, 6>{}) {
    GDALSetGeoTransform(dataset.get(), corners.data());
  }
  if (!recipe.system.empty()) {
    const ports::gdal::Reference system{OSRNewSpatialReference(nullptr)};
    REQUIRE(OSRSetFromUserInput(system.get(), recipe.system.c_str()) == OGRERR_NONE);
    GDALSetSpatialRef(dataset.get(), system.get());
  }
  if (recipe.is_point) {
    GDALSetMetadataItem(dataset.get(), "AREA_OR_POINT", "Point", nullptr);
  }
  GDALRasterBandH band = GDALGetRasterBand(dataset.get(), 1);
  if (!recipe.unit.empty()) {
    GDALSetRasterUnitType(band, recipe.unit.c_str());
  }
  if (recipe.nodata.has_value()) {
    GDALSetRasterNoDataValue(band, *recipe.nodata);
  }
  if (recipe.scale.has_value()) {
    GDALSetRasterScale(band, *recipe.scale);
  }
  if (recipe.offset.has_value()) {
    GDALSetRasterOffset(band, *recipe.offset);
  }
  if (recipe.value) {
    std::vector<double> row_values(static_cast<std::size_t>(recipe.columns));
    for (int row = 0; row < recipe.rows; ++row) {
      for (int column = 0; column < recipe.columns; ++column) {
        row_values[static_cast<std::size_t>(column)] = recipe.value(column, row);
      }
      REQUIRE(GDALRasterIO(band, GF_Write, 0, row, recipe.columns, 1, row_values.data(),
                           recipe.columns, 1, GDT_Float64, 0, 0) == CE_None);
    }
  }
  if (finish) {
    finish(dataset.get());
  }
}

/// A request for files that say all but the datum themselves.
inline ports::gdal::HeightRasterRequest request_for(const TempFolder& folder,
                                                    std::vector<std::string> files) {
  return {.folder = folder.path(),
          .files = std::move(files),
          .map_frame = std::nullopt,
          .vertical_datum = "mean sea level of the test",
          .metres_per_unit = std::nullopt,
          .lowest = units::Metres{-500},
          .highest = units::Metres{9000}};
}

/// One height of a source, read by way of its block; NaN at voids.
inline double height_in(terrain::BlockSource& source, terrain::CellIndex cell) {
  const terrain::HeightBlock block =
      source.read({cell.column / terrain::kBlockSide, cell.row / terrain::kBlockSide});
  return block.at(static_cast<std::size_t>(cell.row % terrain::kBlockSide * terrain::kBlockSide +
                                           cell.column % terrain::kBlockSide));
}

/// Every height of a source, row by row; each block is read once.
inline std::vector<double> all_heights(terrain::BlockSource& source) {
  constexpr std::int64_t kSide = terrain::kBlockSide;
  const terrain::CellIndex size = source.size();
  std::vector<double> heights(static_cast<std::size_t>(size.column * size.row));
  for (std::int64_t down = 0; down * kSide < size.row; ++down) {
    for (std::int64_t along = 0; along * kSide < size.column; ++along) {
      const terrain::HeightBlock block = source.read({along, down});
      for (std::int64_t row = down * kSide; row < std::min((down + 1) * kSide, size.row); ++row) {
        for (std::int64_t column = along * kSide;
             column < std::min((along + 1) * kSide, size.column); ++column) {
          heights[static_cast<std::size_t>(row * size.column + column)] =
              block.at(static_cast<std::size_t>(row % kSide * kSide + column % kSide));
        }
      }
    }
  }
  return heights;
}

/// All faults that are more than doubts, one line each.
inline std::vector<std::string> fault_lines(const std::vector<base::Fault>& faults) {
  std::vector<std::string> lines;
  for (const base::Fault& fault : faults) {
    if (fault.weight == base::Weight::fault) {
      lines.push_back(base::line_of(fault));
    }
  }
  return lines;
}

inline std::vector<std::string> doubt_lines(const std::vector<base::Fault>& faults) {
  std::vector<std::string> lines;
  for (const base::Fault& fault : faults) {
    if (fault.weight == base::Weight::doubt) {
      lines.push_back(base::line_of(fault));
    }
  }
  return lines;
}

/// The source of a request that must have no fault.
inline ports::gdal::OpenedHeights opened(const ports::gdal::HeightRasterRequest& request) {
  auto reading = ports::gdal::open_heights(request);
  for (const std::string& line : fault_lines(reading.faults)) {
    FAIL_CHECK(line);
  }
  REQUIRE(reading.data.source != nullptr);
  return std::move(reading.data);
}

}  // namespace rimehaul::testing
