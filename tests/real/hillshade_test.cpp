// The pale hillshade under every map, against that of gdaldem on the demo's heights.
#include <doctest/doctest.h>
#include <gdal.h>

#include <cmath>
#include <filesystem>
#include <string>
#include <vector>

#include "ports/gdal/gdal_guard.h"
#include "ports/gdal/height_raster.h"
#include "real/real_sites.h"
#include "terrain/relief.h"

namespace rimehaul {

namespace {

using testing::run_program;
using units::Metres;

/// gdaldem writes 1 + 254 x light as a whole grey, and 0 where it knows nothing: it may be half a
/// grey off. Its own sums are in single precision, hence the hair beyond that.
constexpr double kGreys = 254.0;
constexpr double kTolerance = 0.5 / kGreys + 1e-4;

struct Greys {
  int columns = 0;
  int rows = 0;
  std::vector<double> values;
};

Greys greys_in(const std::string& path) {
  ports::gdal::start_gdal();
  const ports::gdal::Dataset dataset{GDALOpen(path.c_str(), GA_ReadOnly)};
  REQUIRE(dataset != nullptr);
  Greys greys{GDALGetRasterXSize(dataset.get()), GDALGetRasterYSize(dataset.get()), {}};
  greys.values.resize(static_cast<std::size_t>(greys.columns) *
                      static_cast<std::size_t>(greys.rows));
  REQUIRE(GDALRasterIO(GDALGetRasterBand(dataset.get(), 1), GF_Read, 0, 0, greys.columns,
                       greys.rows, greys.values.data(), greys.columns, greys.rows, GDT_Float64, 0,
                       0) == CE_None);
  return greys;
}

std::unique_ptr<terrain::BlockSource> demo_heights() {
  auto reading = ports::gdal::open_heights({.folder = RIMEHAUL_ROOT "/dem-samples",
                                            .files = {"marrowfell.tif"},
                                            .map_frame = "EPSG:32605",
                                            .vertical_datum = "invented",
                                            .metres_per_unit = 1.0,
                                            .lowest = Metres{-500},
                                            .highest = Metres{9000}});
  REQUIRE(reading.data.source != nullptr);
  return std::move(reading.data.source);
}

/// Light and grey pixel by pixel.
struct Comparison {
  std::size_t both = 0;
  std::size_t ours_alone = 0;
  std::size_t theirs_alone = 0;
  double largest = 0.0;
};

Comparison compare(const std::vector<double>& light, const Greys& greys) {
  REQUIRE(light.size() == greys.values.size());
  Comparison found;
  for (std::size_t i = 0; i < light.size(); ++i) {
    const bool ours = !std::isnan(light[i]);
    const bool theirs = greys.values[i] != 0.0;
    found.ours_alone += ours && !theirs ? 1 : 0;
    found.theirs_alone += theirs && !ours ? 1 : 0;
    if (ours && theirs) {
      ++found.both;
      found.largest = std::max(found.largest, std::abs(light[i] - (greys.values[i] - 1) / kGreys));
    }
  }
  return found;
}

/// Our light on the whole raster in pixels of so many cells a side, and gdaldem's of a raster.
Comparison compared(int cells, const std::string& heights) {
  const std::string shade =
      (std::filesystem::temp_directory_path() / "rimehaul-hillshade-test.tif").string();
  run_program("gdaldem hillshade -q -alg Horn -az 315 -alt 45 '" + heights + "' '" + shade + "'");
  const Greys greys = greys_in(shade);
  std::filesystem::remove(shade);
  const auto source = demo_heights();
  const terrain::GridFrame grid = source->frame();
  const Metres cell = grid.larger_step();
  const geo::MapPoint first = grid.centre_of({0, 0});
  const terrain::ReliefFrame frame{{first.east - cell * 0.5, first.north + cell * 0.5},
                                   cell * static_cast<double>(cells),
                                   greys.columns,
                                   greys.rows};
  return compare(terrain::hillshade(terrain::relief_of(*source, frame)), greys);
}

}  // namespace

TEST_CASE("light on the demo's own cells is gdaldem's to half a grey, holes alike") {
  const Comparison found = compared(1, RIMEHAUL_ROOT "/dem-samples/marrowfell.tif");
  CHECK(found.both > 100'000);
  CHECK(found.ours_alone == 0);
  CHECK(found.theirs_alone == 0);
  CHECK(found.largest <= kTolerance);
}

TEST_CASE("light on means of four by four cells is gdaldem's on gdalwarp's means") {
  const std::string means =
      (std::filesystem::temp_directory_path() / "rimehaul-means-test.tif").string();
  run_program(
      "gdalwarp -q -overwrite -r average -ot Float64 -tr 20 20 "
      "'" RIMEHAUL_ROOT "/dem-samples/marrowfell.tif' '" +
      means + "'");
  const Comparison found = compared(4, means);
  std::filesystem::remove(means);
  CHECK(found.both > 5'000);
  CHECK(found.ours_alone == 0);
  // gdalwarp averages what is left beside a hole; we leave such a pixel open.
  CHECK(found.theirs_alone * 100 < found.both);
  CHECK(found.largest <= kTolerance);
}

}  // namespace rimehaul
