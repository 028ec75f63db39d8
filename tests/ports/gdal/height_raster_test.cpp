// Heights come out of rasters in metres, in place, with every hole a hole.
#include "ports/gdal/height_raster.h"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <numbers>
#include <string>

#include "near.h"
#include "raster_maker.h"

using rimehaul::geo::MapPoint;
using rimehaul::ports::gdal::HeightRasterRequest;
using rimehaul::ports::gdal::OpenedHeights;
using rimehaul::terrain::CellIndex;
using rimehaul::testing::doubt_lines;
using rimehaul::testing::fault_lines;
using rimehaul::testing::height_in;
using rimehaul::testing::near;
using rimehaul::testing::opened;
using rimehaul::testing::RasterRecipe;
using rimehaul::testing::request_for;
using rimehaul::testing::TempFolder;
using rimehaul::testing::write_raster;

namespace {

constexpr double kFoot = 0.3048;

bool is_at(MapPoint found, double east, double north, double within_m) {
  return near(found.east.value(), east, within_m) && near(found.north.value(), north, within_m);
}

}  // namespace

TEST_CASE("a metric raster is read as it is: cell centres half a cell in from the corner") {
  const TempFolder folder;
  write_raster(folder.file("a.tif"), {});
  OpenedHeights heights = opened(request_for(folder, {"a.tif"}));
  CHECK_FALSE(heights.facts.warped);
  CHECK(heights.source->size() == CellIndex{16, 12});
  CHECK(is_at(heights.source->frame().centre_of({0, 0}), 500001, 5099999, 1e-9));
  CHECK(is_at(heights.source->frame().centre_of({3, 2}), 500007, 5099995, 1e-9));
  CHECK(near(height_in(*heights.source, {3, 2}), 1000 + 0.37 * 3 - 0.21 * 2, 1e-4));
  CHECK(std::isnan(height_in(*heights.source, {16, 2})));
  CHECK(heights.facts.frame.horizontal_name == "WGS 84 / UTM zone 5N");
  CHECK(heights.facts.frame.vertical_name == "mean sea level of the test");
  CHECK(near(heights.facts.narrowest_step.value(), 2.0, 1e-9));
}

TEST_CASE("a raster of points has its centres on the points it names, not half a cell off") {
  const TempFolder folder;
  // GDAL is given corners and writes the tie point half a cell in; what it reads back must agree.
  RasterRecipe recipe;
  recipe.is_point = true;
  write_raster(folder.file("a.tif"), recipe);
  const OpenedHeights heights = opened(request_for(folder, {"a.tif"}));
  CHECK(is_at(heights.source->frame().centre_of({0, 0}), 500001, 5099999, 1e-9));
}

TEST_CASE("south-up, rotated and non-square rasters keep every cell in its place") {
  const TempFolder folder;
  RasterRecipe recipe;
  recipe.corners = {500000, 2, 0, 5100000, 0, 3};
  write_raster(folder.file("south.tif"), recipe);
  OpenedHeights south = opened(request_for(folder, {"south.tif"}));
  CHECK(is_at(south.source->frame().centre_of({2, 4}), 500005, 5100013.5, 1e-9));
  CHECK(near(height_in(*south.source, {2, 4}), 1000 + 0.74 - 0.84, 1e-4));

  // Turned by 30 degrees, cells of 2 m by 3 m: worked out by hand.
  const double cosine = std::sqrt(3.0) / 2.0;
  recipe.corners = {500000, 2 * cosine, 1.5, 5100000, 1, -3 * cosine};
  write_raster(folder.file("turned.tif"), recipe);
  const OpenedHeights turned = opened(request_for(folder, {"turned.tif"}));
  CHECK(is_at(turned.source->frame().centre_of({1, 0}), 500000 + 3 * cosine + 0.75,
              5100000 + 1.5 - 1.5 * cosine, 1e-9));
}

TEST_CASE("heights in feet become metres, whichever part of the file says so") {
  const TempFolder folder;
  RasterRecipe recipe;
  recipe.type = GDT_Float64;
  recipe.value = [](int column, int) { return 3000.0 + column; };
  recipe.unit = "ft";
  write_raster(folder.file("band.tif"), recipe);
  OpenedHeights by_band = opened(request_for(folder, {"band.tif"}));
  CHECK(near(by_band.facts.metres_per_unit, kFoot, 1e-12));
  CHECK(near(height_in(*by_band.source, {1, 0}), 3001 * kFoot, 1e-9));
  CHECK(by_band.facts.notes.size() == 1);

  // EPSG:6360 is NAVD88 height in US survey feet; 26905 is NAD83 / UTM zone 5N.
  recipe.unit = "";
  recipe.system = "EPSG:26905+6360";
  write_raster(folder.file("compound.tif"), recipe);
  HeightRasterRequest request = request_for(folder, {"compound.tif"});
  request.vertical_datum = std::nullopt;
  OpenedHeights by_system = opened(request);
  CHECK(near(height_in(*by_system.source, {1, 0}), 3001 * 1200.0 / 3937.0, 1e-9));
  CHECK(by_system.facts.frame.vertical_name == "NAVD88 height (ftUS)");

  // The older dialect of GeoTIFF, whose vertical part many readers pass over.
  recipe.options = {"GEOTIFF_VERSION=1.0"};
  write_raster(folder.file("old.tif"), recipe);
  request.files = {"old.tif"};
  OpenedHeights by_old_system = opened(request);
  CHECK(near(height_in(*by_old_system.source, {1, 0}), 3001 * 1200.0 / 3937.0, 1e-9));

  recipe.system = "EPSG:32605";
  write_raster(folder.file("silent.tif"), recipe);
  request = request_for(folder, {"silent.tif"});
  request.metres_per_unit = kFoot;
  OpenedHeights by_site = opened(request);
  CHECK(near(height_in(*by_site.source, {1, 0}), 3001 * kFoot, 1e-9));
}

TEST_CASE("a unit that nobody states, or that two state differently, stops the heights") {
  const TempFolder folder;
  RasterRecipe recipe;
  recipe.unit = "";
  write_raster(folder.file("silent.tif"), recipe);
  auto silent = open_heights(request_for(folder, {"silent.tif"}));
  CHECK(silent.data.source == nullptr);
  REQUIRE(fault_lines(silent.faults).size() == 1);
  CHECK(fault_lines(silent.faults)[0] ==
        "silent.tif: it does not say in what unit its heights are; declare heights.unit in "
        "site.toml");

  recipe.unit = "ft";
  write_raster(folder.file("feet.tif"), recipe);
  HeightRasterRequest request = request_for(folder, {"feet.tif"});
  request.metres_per_unit = 1.0;
  auto against_site = open_heights(request);
  CHECK(against_site.data.source == nullptr);
  CHECK(fault_lines(against_site.faults).size() == 1);

  recipe.system = "EPSG:32605+5773";  // EGM96 height, in metres
  write_raster(folder.file("both.tif"), recipe);
  auto against_band = open_heights(request_for(folder, {"both.tif"}));
  CHECK(against_band.data.source == nullptr);
  CHECK(fault_lines(against_band.faults).size() == 1);

  // The two feet differ by two in a million: one word for both is no conflict.
  request.metres_per_unit = 1200.0 / 3937.0;
  CHECK(open_heights(request).data.source != nullptr);
}

TEST_CASE("holes stay holes: nodata, NaN, and what no ground can be") {
  const TempFolder folder;
  RasterRecipe recipe;
  recipe.nodata = -32767;
  recipe.value = [](int column, int) {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const double values[] = {-32767, nan, -9999, 9000, 9000.5, -500, -501, 1234.5};
    return values[column % 8];
  };
  write_raster(folder.file("a.tif"), recipe);
  OpenedHeights heights = opened(request_for(folder, {"a.tif"}));
  CHECK(std::isnan(height_in(*heights.source, {0, 0})));
  CHECK(std::isnan(height_in(*heights.source, {1, 0})));
  CHECK(std::isnan(height_in(*heights.source, {2, 0})));  // -9999 that the file does not declare
  CHECK(near(height_in(*heights.source, {3, 0}), 9000, 0));
  CHECK(std::isnan(height_in(*heights.source, {4, 0})));
  CHECK(near(height_in(*heights.source, {5, 0}), -500, 0));
  CHECK(std::isnan(height_in(*heights.source, {6, 0})));
  CHECK(near(height_in(*heights.source, {7, 0}), 1234.5, 0));
}

TEST_CASE("a nodata value that a 32-bit number cannot hold still makes a hole") {
  const TempFolder folder;
  RasterRecipe recipe;
  recipe.nodata = 0.1;
  recipe.value = [](int column, int) { return column == 3 ? 0.1 : 50.25; };
  write_raster(folder.file("a.tif"), recipe);
  OpenedHeights heights = opened(request_for(folder, {"a.tif"}));
  CHECK(std::isnan(height_in(*heights.source, {3, 0})));
  CHECK(near(height_in(*heights.source, {4, 0}), 50.25, 0));
}

TEST_CASE("a mask or an alpha band makes holes, half-seen cells among them") {
  const TempFolder folder;
  write_raster(folder.file("mask.tif"), {}, [](GDALDatasetH dataset) {
    CPLSetConfigOption("GDAL_TIFF_INTERNAL_MASK", "YES");
    REQUIRE(GDALCreateDatasetMaskBand(dataset, GMF_PER_DATASET) == CE_None);
    CPLSetConfigOption("GDAL_TIFF_INTERNAL_MASK", nullptr);
    std::vector<unsigned char> mask(16 * 12, 255);
    mask[5] = 0;
    GDALRasterBandH band = GDALGetMaskBand(GDALGetRasterBand(dataset, 1));
    REQUIRE(GDALRasterIO(band, GF_Write, 0, 0, 16, 12, mask.data(), 16, 12, GDT_Byte, 0, 0) ==
            CE_None);
  });
  OpenedHeights masked = opened(request_for(folder, {"mask.tif"}));
  CHECK(std::isnan(height_in(*masked.source, {5, 0})));
  CHECK_FALSE(std::isnan(height_in(*masked.source, {6, 0})));

  RasterRecipe recipe;
  recipe.bands = 2;
  recipe.type = GDT_Byte;
  recipe.nodata = 0;  // makes GDAL forget the alpha band; we do not
  recipe.options = {"ALPHA=YES"};
  recipe.value = [](int column, int row) { return 100 + column + row; };
  write_raster(folder.file("alpha.tif"), recipe, [](GDALDatasetH dataset) {
    std::vector<unsigned char> alpha(16 * 12, 255);
    alpha[5] = 0;
    alpha[6] = 254;
    REQUIRE(GDALRasterIO(GDALGetRasterBand(dataset, 2), GF_Write, 0, 0, 16, 12, alpha.data(), 16,
                         12, GDT_Byte, 0, 0) == CE_None);
  });
  OpenedHeights alpha = opened(request_for(folder, {"alpha.tif"}));
  CHECK(std::isnan(height_in(*alpha.source, {5, 0})));
  CHECK(std::isnan(height_in(*alpha.source, {6, 0})));
  CHECK(near(height_in(*alpha.source, {7, 0}), 107, 0));
}

TEST_CASE("tiles that were never written are holes, not ground at height 0") {
  const TempFolder folder;
  RasterRecipe recipe;
  recipe.columns = 64;
  recipe.rows = 64;
  recipe.options = {"TILED=YES", "BLOCKXSIZE=16", "BLOCKYSIZE=16", "SPARSE_OK=TRUE"};
  recipe.value = nullptr;
  write_raster(folder.file("a.tif"), recipe, [](GDALDatasetH dataset) {
    std::vector<float> tile(16 * 16, 1500.25F);
    REQUIRE(GDALRasterIO(GDALGetRasterBand(dataset, 1), GF_Write, 16, 32, 16, 16, tile.data(), 16,
                         16, GDT_Float32, 0, 0) == CE_None);
  });
  OpenedHeights heights = opened(request_for(folder, {"a.tif"}));
  CHECK(near(height_in(*heights.source, {16, 32}), 1500.25, 0));
  CHECK(near(height_in(*heights.source, {31, 47}), 1500.25, 0));
  CHECK(std::isnan(height_in(*heights.source, {15, 32})));
  CHECK(std::isnan(height_in(*heights.source, {16, 31})));
  CHECK(std::isnan(height_in(*heights.source, {32, 47})));
  CHECK(std::isnan(height_in(*heights.source, {0, 0})));
}

TEST_CASE("scale and offset of the band are applied before the unit") {
  const TempFolder folder;
  RasterRecipe recipe;
  recipe.type = GDT_Int16;
  recipe.scale = 0.1;
  recipe.offset = 1000;
  recipe.unit = "ft";
  recipe.nodata = -32768;
  recipe.value = [](int column, int) { return column == 0 ? -32768 : 7 * column; };
  write_raster(folder.file("a.tif"), recipe);
  OpenedHeights heights = opened(request_for(folder, {"a.tif"}));
  CHECK(std::isnan(height_in(*heights.source, {0, 0})));
  CHECK(near(height_in(*heights.source, {3, 0}), (0.1 * 21 + 1000) * kFoot, 1e-9));
}

TEST_CASE("an ASCII grid with its .prj is read; without one it is refused") {
  const TempFolder folder;
  const std::string grid =
      "ncols 3\nnrows 2\nxllcorner 500000\nyllcorner 5100000\ncellsize 5\nNODATA_value -9999\n"
      "1500.5 1501 -9999\n1502 1503 1504\n";
  folder.write("a.asc", grid);
  HeightRasterRequest request = request_for(folder, {"a.asc"});
  request.metres_per_unit = 1.0;
  const auto bare = open_heights(request);
  CHECK(bare.data.source == nullptr);
  CHECK(fault_lines(bare.faults).size() == 1);

  folder.write("a.prj", rimehaul::testing::kUtm5Prj);
  request.map_frame = "EPSG:32605";
  OpenedHeights heights = opened(request);
  CHECK_FALSE(heights.facts.warped);  // the two names mean one system
  CHECK(is_at(heights.source->frame().centre_of({0, 0}), 500002.5, 5100007.5, 1e-9));
  CHECK(near(height_in(*heights.source, {0, 0}), 1500.5, 0));
  CHECK(std::isnan(height_in(*heights.source, {2, 0})));
  CHECK(near(height_in(*heights.source, {2, 1}), 1504, 0));
}

TEST_CASE("a map in feet is counted in metres without moving a cell") {
  const TempFolder folder;
  RasterRecipe recipe;
  recipe.system = "EPSG:2232";  // in US survey feet
  recipe.corners = {3000000, 10, 0, 1600000, 0, -10};
  write_raster(folder.file("a.tif"), recipe);
  OpenedHeights heights = opened(request_for(folder, {"a.tif"}));
  constexpr double kSurveyFoot = 1200.0 / 3937.0;
  CHECK_FALSE(heights.facts.warped);
  CHECK(near(heights.source->frame().smaller_step().value(), 10 * kSurveyFoot, 1e-9));
  CHECK(is_at(heights.source->frame().centre_of({0, 0}), 3000005 * kSurveyFoot,
              1599995 * kSurveyFoot, 1e-6));
  CHECK(near(height_in(*heights.source, {3, 2}), 1000 + 0.37 * 3 - 0.21 * 2, 1e-4));
}

TEST_CASE("heights rounded to whole metres on small cells are a doubt, with the angle they hide") {
  const TempFolder folder;
  RasterRecipe recipe;
  recipe.value = [](int column, int row) { return std::round(1000 + 0.37 * column - 1.21 * row); };
  write_raster(folder.file("whole.tif"), recipe);
  const auto whole = open_heights(request_for(folder, {"whole.tif"}));
  REQUIRE(whole.data.source != nullptr);
  REQUIRE(whole.data.facts.quantum.has_value());
  CHECK(near(whole.data.facts.quantum->value(), 1.0, 0));
  REQUIRE(doubt_lines(whole.faults).size() == 1);
  // One metre over two: atan(1/2) = 26.565 degrees, rounded up.
  CHECK(doubt_lines(whole.faults)[0].find("26.6 degrees") != std::string::npos);

  recipe.unit = "ft";
  write_raster(folder.file("feet.tif"), recipe);
  const auto feet = open_heights(request_for(folder, {"feet.tif"}));
  REQUIRE(feet.data.facts.quantum.has_value());
  CHECK(near(feet.data.facts.quantum->value(), kFoot, 1e-12));

  write_raster(folder.file("fine.tif"), {});
  CHECK_FALSE(opened(request_for(folder, {"fine.tif"})).facts.quantum.has_value());
}

TEST_CASE("more bands than one: the first counts, and check says so") {
  const TempFolder folder;
  RasterRecipe recipe;
  recipe.bands = 3;
  recipe.options = {"PHOTOMETRIC=MINISBLACK"};
  write_raster(folder.file("a.tif"), recipe);
  const auto reading = open_heights(request_for(folder, {"a.tif"}));
  REQUIRE(reading.data.source != nullptr);
  CHECK(doubt_lines(reading.faults).size() == 1);
  CHECK(near(height_in(*reading.data.source, {3, 2}), 1000 + 0.37 * 3 - 0.21 * 2, 1e-4));
}

TEST_CASE("the datum comes from the file, or from the site, or there are no heights") {
  const TempFolder folder;
  RasterRecipe recipe;
  write_raster(folder.file("silent.tif"), recipe);
  recipe.system = "EPSG:32605+5773";
  write_raster(folder.file("says.tif"), recipe);
  HeightRasterRequest request = request_for(folder, {"says.tif"});
  request.vertical_datum = std::nullopt;
  CHECK(opened(request).facts.frame.vertical_name == "EGM96 height");
  request.files = {"silent.tif"};
  const auto silent = open_heights(request);
  CHECK(silent.data.source == nullptr);
  CHECK(fault_lines(silent.faults).size() == 1);

  request.files = {"says.tif"};
  request.vertical_datum = "some other level";
  const auto differs = open_heights(request);
  CHECK(differs.data.source != nullptr);
  CHECK(doubt_lines(differs.faults).size() == 1);

  recipe.system = "EPSG:32605+3855";  // EGM2008 height
  write_raster(folder.file("other.tif"), recipe);
  request.files = {"says.tif", "other.tif"};
  CHECK(open_heights(request).data.source == nullptr);
}
