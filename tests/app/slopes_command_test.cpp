// The verb `slopes`: its rasters beside those of GDAL's own tool, and the same however the heights
// are stored.
#include <doctest/doctest.h>
#include <gdal.h>
#include <gdal_utils.h>
#include <ogr_srs_api.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "app/desk.h"
#include "app/tiny_site.h"
#include "ports/gdal/gdal_guard.h"

namespace rimehaul::app {
namespace {

namespace fs = std::filesystem;
using ports::gdal::Dataset;
using testing::Desk;
using testing::Ran;
using testing::run_command;
using testing::text_in;
using testing::TinySite;

const std::string kRoot{RIMEHAUL_ROOT};

bool says(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

struct Raster {
  int columns = 0;
  int rows = 0;
  std::vector<float> cells;

  friend bool operator==(const Raster&, const Raster&) = default;
};

Dataset opened(const std::string& path) {
  ports::gdal::start_gdal();
  Dataset dataset{GDALOpenEx(path.c_str(), GDAL_OF_RASTER, nullptr, nullptr, nullptr)};
  REQUIRE(dataset != nullptr);
  return dataset;
}

Raster cells_of(GDALRasterBandH band) {
  Raster raster{GDALGetRasterBandXSize(band), GDALGetRasterBandYSize(band), {}};
  raster.cells.resize(static_cast<std::size_t>(raster.columns) *
                      static_cast<std::size_t>(raster.rows));
  REQUIRE(GDALRasterIO(band, GF_Read, 0, 0, raster.columns, raster.rows, raster.cells.data(),
                       raster.columns, raster.rows, GDT_Float32, 0, 0) == CE_None);
  return raster;
}

Raster cells_in(const std::string& path) {
  const Dataset dataset = opened(path);
  return cells_of(GDALGetRasterBand(dataset.get(), 1));
}

/// What GDAL's own tool finds.
Raster by_gdaldem(const std::string& heights, const char* what, const std::string& path) {
  const Dataset from = opened(heights);
  const Dataset made{GDALDEMProcessing(path.c_str(), from.get(), what, nullptr, nullptr, nullptr)};
  REQUIRE(made != nullptr);
  return cells_of(GDALGetRasterBand(made.get(), 1));
}

/// Rough ground with holes, to a millimetre.
float ground_at(int column, int row) {
  if (column % 401 == 17 && row % 307 < 3) {
    return -9999.0F;
  }
  const double wide = 120.0 * std::sin(column / 90.0) * std::cos(row / 70.0);
  const double small = static_cast<double>((column * 7919 + row * 104729) % 1009) / 500.0;
  return static_cast<float>(900.0 + wide + small);
}

struct Part {
  int column = 0;
  int row = 0;
  int columns = 0;
  int rows = 0;
};

/// A part of the ground around the tiny site, 2 m cells from its north-west corner on.
void write_heights(const std::string& path, Part part, std::vector<const char*> options) {
  ports::gdal::start_gdal();
  options.push_back(nullptr);
  const Dataset made{GDALCreate(GDALGetDriverByName("GTiff"), path.c_str(), part.columns, part.rows,
                                1, GDT_Float32, const_cast<char**>(options.data()))};
  REQUIRE(made != nullptr);
  std::array<double, 6> corners{498000.0 + 2.0 * part.column, 2, 0,
                                5101500.0 - 2.0 * part.row,   0, -2};
  GDALSetGeoTransform(made.get(), corners.data());
  const ports::gdal::Reference reference{OSRNewSpatialReference(nullptr)};
  REQUIRE(OSRImportFromEPSG(reference.get(), 32605) == OGRERR_NONE);
  GDALSetSpatialRef(made.get(), reference.get());
  GDALRasterBandH band = GDALGetRasterBand(made.get(), 1);
  GDALSetRasterNoDataValue(band, -9999);
  std::vector<float> line(static_cast<std::size_t>(part.columns));
  for (int row = 0; row < part.rows; ++row) {
    for (int column = 0; column < part.columns; ++column) {
      line[static_cast<std::size_t>(column)] = ground_at(part.column + column, part.row + row);
    }
    REQUIRE(GDALRasterIO(band, GF_Write, 0, row, part.columns, 1, line.data(), part.columns, 1,
                         GDT_Float32, 0, 0) == CE_None);
  }
}

constexpr int kAlong = 2300;
constexpr int kDown = 1400;

/// The layers of a rig on the tiny site with these heights.
std::vector<Raster> layers_with(const TinySite& site, const std::string& files) {
  const std::string kept = site.text("site.toml");
  site.change("site.toml", {"\"heights.asc\"", files});
  const Desk desk;
  const Ran ran = run_command({"slopes", site.folder(), "--into", desk.path("s"), "--plain",
                               "--rig", "solo", "--snow", "dry"});
  CAPTURE(ran.err);
  REQUIRE(ran.status == Status::yes);
  site.write("site.toml", kept);
  std::vector<Raster> layers;
  for (const char* name : {"slope", "aspect", "slope-error", "share", "directions"}) {
    layers.push_back(cells_in(desk.path(std::string{"s/"} + name + ".tif")));
  }
  return layers;
}

TEST_CASE("slope agrees with gdaldem to its own rounding, holes and edges alike") {
  const Desk desk;
  const std::string heights = kRoot + "/dem-samples/marrowfell.tif";
  const Ran ran = run_command({"slopes", kRoot + "/routes/marrowfell", "--into", desk.path("s")});
  REQUIRE(ran.status == Status::yes);
  const Raster ours = cells_in(desk.path("s/slope.tif"));
  const Raster theirs = by_gdaldem(heights, "slope", desk.path("slope.tif"));
  REQUIRE(ours.cells.size() == theirs.cells.size());
  const Raster our_aspect = cells_in(desk.path("s/aspect.tif"));
  const Raster their_aspect = by_gdaldem(heights, "aspect", desk.path("aspect.tif"));
  float slope_deg = 0.0F;
  float aspect_deg = 0.0F;
  std::size_t unlike = 0;
  std::size_t steep = 0;
  for (std::size_t i = 0; i < ours.cells.size(); ++i) {
    unlike += (ours.cells[i] == -9999.0F) == (theirs.cells[i] == -9999.0F) ? 0 : 1;
    slope_deg = std::max(slope_deg, std::abs(ours.cells[i] - theirs.cells[i]));
    // On gentle ground gdaldem's sums of whole heights in single precision tell no direction.
    if (ours.cells[i] > 5.0F) {
      ++steep;
      const float apart = std::remainder(our_aspect.cells[i] - their_aspect.cells[i], 360.0F);
      aspect_deg = std::max(aspect_deg, std::abs(apart));
    }
  }
  CHECK(unlike == 0);
  CHECK(slope_deg < 0.005F);
  CHECK(steep > 100'000);
  CHECK(aspect_deg < 0.05F);
}

TEST_CASE("strips, tiles, compression and a mosaic of files give the same layers to the bit") {
  const TinySite site;
  const Part all{0, 0, kAlong, kDown};
  write_heights(site.path("strips.tif"), all, {});
  write_heights(site.path("tiles.tif"), all, {"TILED=YES", "COMPRESS=DEFLATE", "PREDICTOR=3"});
  write_heights(site.path("big.tif"), all,
                {"TILED=YES", "BLOCKXSIZE=512", "BLOCKYSIZE=512", "COMPRESS=ZSTD", "BIGTIFF=YES"});
  std::string mosaic;
  for (const Part& part : {Part{0, 0, 1000, 700}, Part{1000, 0, 1300, 700}, Part{0, 700, 1700, 700},
                           Part{1700, 700, 600, 700}}) {
    const std::string name =
        "part-" + std::to_string(part.column) + "-" + std::to_string(part.row) + ".tif";
    write_heights(site.path(name), part, {"TILED=YES", "BLOCKXSIZE=128", "BLOCKYSIZE=128"});
    mosaic += (mosaic.empty() ? "\"" : ", \"") + name + "\"";
  }
  const std::vector<Raster> strips = layers_with(site, "\"strips.tif\"");
  REQUIRE(strips.front().columns == kAlong);
  REQUIRE(strips.front().rows == kDown);
  CHECK(std::ranges::count_if(strips.front().cells, [](float deg) { return deg > 0.0F; }) >
        3'000'000);
  const auto same = [&](const std::string& files) { return layers_with(site, files) == strips; };
  CHECK(same("\"tiles.tif\""));
  CHECK(same("\"big.tif\""));
  CHECK(same(mosaic));
}

TEST_CASE("a COG has the cells of the plain raster, and overviews that find no gentler slope") {
  const TinySite site;
  write_heights(site.path("h.tif"), {0, 0, kAlong, kDown}, {"TILED=YES"});
  site.change("site.toml", {"heights.asc", "h.tif"});
  const Desk desk;
  REQUIRE(run_command({"slopes", site.folder(), "--into", desk.path("p"), "--plain"}).status ==
          Status::yes);
  REQUIRE(run_command({"slopes", site.folder(), "--into", desk.path("c")}).status == Status::yes);
  for (const char* name : {"/slope.tif", "/aspect.tif", "/slope-error.tif"}) {
    CHECK(cells_in(desk.path("p") + name) == cells_in(desk.path("c") + name));
  }
  const Dataset cog = opened(desk.path("c/slope.tif"));
  CHECK(std::string{GDALGetMetadataItem(cog.get(), "LAYOUT", "IMAGE_STRUCTURE")} == "COG");
  GDALRasterBandH band = GDALGetRasterBand(cog.get(), 1);
  REQUIRE(GDALGetOverviewCount(band) == 3);
  const Raster fine = cells_of(band);
  const Raster coarse = cells_of(GDALGetOverview(band, 2));
  const auto at = [](const Raster& raster, int column, int row) {
    return raster.cells[static_cast<std::size_t>(row * raster.columns + column)];
  };
  std::size_t gentler = 0;
  for (int row = 0; row < fine.rows; ++row) {
    for (int column = 0; column < fine.columns; ++column) {
      const float shown = at(coarse, column / 8, row / 8);
      gentler += shown == -9999.0F || shown >= at(fine, column, row) ? 0 : 1;
    }
  }
  CHECK(gentler == 0);
}

TEST_CASE("a share within the allowed one and an open direction go together, cell by cell") {
  const Desk desk;
  const Ran ran =
      run_command({"slopes", kRoot + "/routes/marrowfell", "--into", desk.path("s"), "--plain",
                   "--rig", "Broadfoot", "--load", "100", "--snow", "moist", "--json", "-"});
  REQUIRE(ran.status == Status::yes);
  const Raster slope = cells_in(desk.path("s/slope.tif"));
  const Raster share = cells_in(desk.path("s/share.tif"));
  const Raster directions = cells_in(desk.path("s/directions.tif"));
  std::int64_t open = 0;
  std::size_t unlike = 0;
  for (std::size_t i = 0; i < share.cells.size(); ++i) {
    const bool known = slope.cells[i] != -9999.0F;
    open += directions.cells[i] > 0.0F ? 1 : 0;
    unlike += (share.cells[i] <= 70.0F) == (directions.cells[i] > 0.0F) ? 0 : 1;
    unlike += (share.cells[i] == 255.0F) == !known ? 0 : 1;
  }
  CHECK(unlike == 0);
  const nlohmann::json answer = nlohmann::json::parse(ran.out);
  CHECK(answer["judged"]["open_cells"] == open);
  CHECK(answer["rasters"].size() == 5);
  CHECK(says(answer["caution"].get<std::string>(), "A planning aid, not permission"));
}

TEST_CASE("a raster names the heights that it is of by their digest, and how it may be used") {
  const TinySite site;
  const Desk desk;
  REQUIRE(run_command({"slopes", site.folder(), "--into", desk.path("s"), "--layer", "directions",
                       "--rig", "solo", "--snow", "dry"})
              .status == Status::yes);
  CHECK_FALSE(fs::exists(desk.path("s/slope.tif")));
  const Dataset made = opened(desk.path("s/directions.tif"));
  const auto note = [&](const char* key) {
    const char* said = GDALGetMetadataItem(made.get(), key, nullptr);
    return std::string{said == nullptr ? "" : said};
  };
  CHECK(says(note("HEIGHTS"), "heights.asc sha256:"));
  CHECK(says(note("CAUTION"), "A planning aid, not permission to drive"));
  CHECK(note("RIG") == "solo");
  CHECK(note("SNOW") == "dry fresh");
  CHECK(says(note("TIFFTAG_SOFTWARE"), "rimehaul "));
}

TEST_CASE(
    "where the error of the heights is not declared nothing is open, and all shares unknown") {
  const TinySite site;
  const std::string before = site.text("site.toml");
  site.write("site.toml", before.substr(0, before.find("[[heights.error]]")));
  const Desk desk;
  const Ran ran = run_command({"slopes", site.folder(), "--into", desk.path("s"), "--plain",
                               "--rig", "solo", "--snow", "dry"});
  CAPTURE(ran.err);
  CHECK(ran.status == Status::honest_no);
  CHECK(says(ran.out, "unknown, so all is closed"));
  const Raster share = cells_in(desk.path("s/share.tif"));
  const Raster error = cells_in(desk.path("s/slope-error.tif"));
  CHECK(std::ranges::all_of(share.cells, [](float percent) { return percent == 255.0F; }));
  CHECK(std::ranges::all_of(error.cells, [](float deg) { return deg == -9999.0F; }));
}

TEST_CASE("a layer of a rig without one, and a folder that cannot be, are told; nothing is left") {
  const TinySite site;
  const Desk desk;
  const Ran layer =
      run_command({"slopes", site.folder(), "--into", desk.path("s"), "--layer", "share"});
  CHECK(layer.status == Status::wrong_usage);
  CHECK(layer.err == "the layer share is of a rig; say --rig RIG and --snow CLASS\n");
  const Ran nowhere = run_command({"slopes", site.folder(), "--into", desk.path("no/such")});
  CHECK(nowhere.status == Status::bad_input);
  CHECK(says(nowhere.err, "no/such: cannot be made: "));
  const Ran file = run_command({"slopes", site.folder(), "--into", site.path("rules.toml/x")});
  CHECK(file.status == Status::bad_input);
  CHECK(desk.is_empty());
}

TEST_CASE("heights that end too soon leave no raster and no folder") {
  const TinySite site;
  write_heights(site.path("h.tif"), {0, 0, kAlong, kDown}, {"TILED=YES"});
  fs::resize_file(site.path("h.tif"), fs::file_size(site.path("h.tif")) / 2);
  site.change("site.toml", {"heights.asc", "h.tif"});
  const Desk desk;
  const Ran ran = run_command({"slopes", site.folder(), "--into", desk.path("s")});
  CHECK(ran.status == Status::bad_input);
  CHECK(says(ran.err, "its heights cannot be read there"));
  CHECK(desk.is_empty());
}

}  // namespace
}  // namespace rimehaul::app
