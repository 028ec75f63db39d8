// Rasters that people may well hand over by mistake, or on purpose: each is refused with one clear
// line that says what to do.
#include <doctest/doctest.h>
#include <sys/stat.h>

#include <cmath>
#include <filesystem>
#include <functional>
#include <limits>
#include <string>
#include <vector>

#include "raster_maker.h"

using rimehaul::ports::gdal::HeightRasterRequest;
using rimehaul::testing::fault_lines;
using rimehaul::testing::RasterRecipe;
using rimehaul::testing::request_for;
using rimehaul::testing::TempFolder;
using rimehaul::testing::write_raster;

namespace {

namespace fs = std::filesystem;

/// How the folder is prepared, what else is asked for, and what the one line must say.
struct BrokenRaster {
  std::string name;
  std::function<void(const TempFolder&)> make;
  std::string line;
  std::string file = "a.tif";
  std::function<void(HeightRasterRequest&)> ask = [](HeightRasterRequest&) {};
};

using Change = std::function<void(RasterRecipe&)>;

/// A good raster with one thing changed.
std::function<void(const TempFolder&)> raster(const Change& change,
                                              const rimehaul::testing::Finish& finish = nullptr) {
  return [change, finish](const TempFolder& folder) {
    RasterRecipe recipe;
    change(recipe);
    write_raster(folder.file("a.tif"), recipe, finish);
  };
}

std::function<void(const TempFolder&)> text(const std::string& name, const std::string& content) {
  return [name, content](const TempFolder& folder) { folder.write(name, content); };
}

std::function<void(const TempFolder&)> system_of(const std::string& system) {
  return raster([system](RasterRecipe& recipe) { recipe.system = system; });
}

std::function<void(const TempFolder&)> cut_to(double share) {
  return [share](const TempFolder& folder) {
    RasterRecipe recipe;
    recipe.columns = 300;
    recipe.rows = 300;
    write_raster(folder.file("a.tif"), recipe);
    const std::string whole = folder.read("a.tif");
    folder.write(
        "a.tif",
        whole.substr(0, static_cast<std::size_t>(share * static_cast<double>(whole.size()))));
  };
}

void degrees(RasterRecipe& recipe) {
  recipe.system = "EPSG:4326";
  recipe.corners = {-153.003, 0.0001, 0, 46.003, 0, -0.0001};
}

std::function<void(HeightRasterRequest&)> in_frame(const std::string& frame) {
  return [frame](HeightRasterRequest& request) { request.map_frame = frame; };
}

void in_metres(HeightRasterRequest& request) {
  request.metres_per_unit = 1.0;
}

const std::string kGridHead =
    "xllcorner 500000\nyllcorner 5100000\ncellsize 5\nNODATA_value -9999\n";

std::function<void(const TempFolder&)> grid(const std::string& size, const std::string& cells) {
  return [size, cells](const TempFolder& folder) {
    folder.write("a.asc", size + kGridHead + cells);
    folder.write("a.prj", rimehaul::testing::kUtm5Prj);
  };
}

std::vector<BrokenRaster> files_that_are_none() {
  return {
      {"nothing there", [](const TempFolder&) {},
       "a.tif: there is no such file; check its name in site.toml"},
      {"empty", text("a.tif", ""),
       "a.tif: this is no raster of a known kind or it is damaged; give GeoTIFF, GeoPackage, ASCII "
       "grid, USGS DEM or SRTM HGT"},
      {"a letter home", text("a.tif", "Dear all,\n"), "no raster of a known kind"},
      {"a packed archive", text("a.tif", std::string("PK\x03\x04") + std::string(200, 'x')),
       "no raster of a known kind"},
      {"a virtual raster renamed",
       text("a.tif",
            "<VRTDataset rasterXSize=\"2\" rasterYSize=\"2\"><VRTRasterBand dataType=\"Float32\" "
            "band=\"1\"><SimpleSource><SourceFilename>/vsicurl/http://127.0.0.1:9/x.tif"
            "</SourceFilename></SimpleSource></VRTRasterBand></VRTDataset>"),
       "no raster of a known kind"},
      {"a map service renamed",
       text("a.tif",
            "<GDAL_WMS><Service name=\"TMS\"><ServerUrl>http://127.0.0.1:9/${z}"
            "</ServerUrl></Service></GDAL_WMS>"),
       "no raster of a known kind"},
      {"a virtual raster as name", [](const TempFolder&) {}, "no file name within the site folder",
       "<VRTDataset rasterXSize=\"2\" rasterYSize=\"2\"/>"},
      {"an address", [](const TempFolder&) {}, "no file name within the site folder",
       "http://127.0.0.1:9/a.tif"},
      {"a virtual file system", [](const TempFolder&) {}, "no file name within the site folder",
       "/vsicurl/http://127.0.0.1:9/a.tif"},
      {"a path from the root", [](const TempFolder&) {}, "no file name within the site folder",
       "/etc/hostname"},
      {"a path out of the folder", [](const TempFolder& folder) { folder.write("b.tif", "x"); },
       "lies outside the site folder", "../../etc/hostname"},
      {"a link",
       [](const TempFolder& folder) { fs::create_symlink("/etc/hostname", folder.file("a.tif")); },
       "a.tif: the file is a link; copy the file itself into the site folder"},
      {"a folder", [](const TempFolder& folder) { fs::create_directory(folder.file("a.tif")); },
       "this is no regular file"},
      {"a pipe",
       [](const TempFolder& folder) { REQUIRE(mkfifo(folder.file("a.tif").c_str(), 0600) == 0); },
       "this is no regular file"},
      {"trails instead of heights", text("a.tif", R"({"type":"FeatureCollection","features":[]})"),
       "no raster of a known kind"},
  };
}

std::vector<BrokenRaster> damaged_files() {
  return {
      {"cut off in its header", cut_to(0.0003), "no raster of a known kind"},
      {"cut off in its heights", cut_to(0.6), "its heights cannot be read there; the file is cut"},
      {"an ASCII grid of impossible size", grid("ncols 2000000000\nnrows 2000000000\n", "1 2\n"),
       "a.asc", "a.asc", in_metres},
      {"an ASCII grid that stops early", grid("ncols 60\nnrows 60\n", "1500 1501 1502\n"),
       "it promises 60 x 60 cells, more than it can hold; it is cut off", "a.asc", in_metres},
      {"an ASCII grid with words for heights",
       grid("ncols 2\nnrows 2\n", "high low\nhigh higher than ever\n"), "a.asc", "a.asc",
       in_metres},
      {"one strip too large to read", raster([](RasterRecipe& recipe) {
         recipe.columns = 10000;
         recipe.rows = 10000;
         recipe.options = {"BLOCKYSIZE=10000", "SPARSE_OK=TRUE", "COMPRESS=DEFLATE"};
         recipe.value = nullptr;
       }),
       "its blocks are too large to read; write it in tiles of 256 x 256 cells"},
      {"one row of cells", raster([](RasterRecipe& recipe) { recipe.rows = 1; }),
       "it has only 16 x 1 cells"},
  };
}

std::vector<BrokenRaster> rasters_of_other_things() {
  const auto colours = [](RasterRecipe& recipe) {
    recipe.type = GDT_Byte;
    recipe.value = [](int column, int) { return column; };
  };
  return {
      {"numbers with imaginary parts",
       raster([](RasterRecipe& recipe) { recipe.type = GDT_CFloat32; }),
       "its numbers are of the kind CFloat32, which heights cannot be"},
      {"numbers of 64 bits", raster([](RasterRecipe& recipe) { recipe.type = GDT_Int64; }),
       "its numbers are of the kind Int64"},
      {"a table of colours",
       raster(colours,
              [](GDALDatasetH dataset) {
                GDALColorTableH table = GDALCreateColorTable(GPI_RGB);
                const GDALColorEntry white{255, 255, 255, 255};
                GDALSetColorEntry(table, 0, &white);
                GDALSetRasterColorTable(GDALGetRasterBand(dataset, 1), table);
                GDALDestroyColorTable(table);
              }),
       "it holds colours, not heights"},
      {"a photograph", raster([colours](RasterRecipe& recipe) {
         colours(recipe);
         recipe.bands = 3;
         recipe.options = {"PHOTOMETRIC=RGB"};
       }),
       "it holds colours, not heights"},
      {"a scale of nothing", raster([](RasterRecipe& recipe) { recipe.scale = 0.0; }),
       "the scale or offset of its band is no usable number"},
      {"an offset without end", raster([](RasterRecipe& recipe) {
         recipe.offset = std::numeric_limits<double>::infinity();
       }),
       "the scale or offset of its band is no usable number"},
      {"a GeoPackage that cannot tell missing tiles",
       [](const TempFolder& folder) {
         RasterRecipe recipe;
         recipe.type = GDT_Int16;
         recipe.value = nullptr;
         write_raster(folder.file("a.gpkg"), recipe, nullptr, "GPKG");
       },
       "it has no nodata value, so missing tiles would read as heights of 0", "a.gpkg"},
      {"a mask in a file of its own",
       [](const TempFolder& folder) {
         write_raster(folder.file("a.tif"), {});
         folder.write("a.tif.msk", "x");
       },
       "its mask is a file of its own, which is not read"},
  };
}

std::vector<BrokenRaster> rasters_out_of_place() {
  const std::string local = "LOCAL_CS[\"workshop floor\",UNIT[\"metre\",1]]";
  return {
      {"no reference system", system_of(""), "it does not name its reference system"},
      {"no place on the map", raster([](RasterRecipe& recipe) { recipe.corners = {}; }),
       "it does not say where it lies on the map"},
      {"control points only",
       raster([](RasterRecipe& recipe) { recipe.corners = {}; },
              [](GDALDatasetH dataset) {
                std::array<GDAL_GCP, 4> points{};
                GDALInitGCPs(4, points.data());
                for (int index = 0; index < 4; ++index) {
                  GDAL_GCP& point = points[static_cast<std::size_t>(index)];
                  point.dfGCPPixel = index % 2 * 16;
                  point.dfGCPLine = index / 2 * 12.0 + index;
                  point.dfGCPX = 500000 + index % 2 * 100;
                  point.dfGCPY = 5100000 - index / 2 * 100;
                }
                const rimehaul::ports::gdal::Reference system{OSRNewSpatialReference(nullptr)};
                OSRImportFromEPSG(system.get(), 32605);
                REQUIRE(GDALSetGCPs2(dataset, 4, points.data(), system.get()) == CE_None);
                GDALDeinitGCPs(4, points.data());
              }),
       "it lies on the map by control points only"},
      {"cells without height",
       raster([](RasterRecipe& recipe) { recipe.corners = {500000, 2, 0, 5100000, 2, 0}; }),
       "its cells have no size, no area or no place"},
      {"a place that is no number",
       raster([](RasterRecipe& recipe) { recipe.corners = {NAN, 2, 0, 5100000, 0, -2}; }),
       "its cells have no size, no area or no place"},
      {"a workshop floor", system_of(local), "no metric map can be chosen for heights in workshop"},
      {"the middle of the Earth", system_of("EPSG:4978"), "no metric map can be chosen"},
      {"Web Mercator", raster([](RasterRecipe& recipe) {
         recipe.system = "EPSG:3857";
         recipe.corners = {-17031000, 5, 0, 5780000, 0, -5};
       }),
       "the metres of the map frame WGS 84 / Pseudo-Mercator are off by"},
      {"a UTM zone five zones away", raster([](RasterRecipe& recipe) {
         recipe.system = "EPSG:32605";
         recipe.corners = {2500000, 5, 0, 5100000, 0, -5};
       }),
       "the metres of the map frame WGS 84 / UTM zone 5N are off by"},
      {"a map that counts towards west and south", raster([](RasterRecipe& recipe) {
         recipe.system = "EPSG:2053";
         recipe.corners = {50000, 5, 0, 3200000, 0, -5};
       }),
       "does not count towards east and north"},
      {"degrees near the pole", raster([](RasterRecipe& recipe) {
         degrees(recipe);
         recipe.corners[3] = 85;
       }),
       "no metric map can be chosen for heights in WGS 84"},
      {"half the globe", raster([](RasterRecipe& recipe) {
         recipe.system = "EPSG:4326";
         recipe.corners = {-180, 15, 0, 60, 0, -5};
       }),
       "map_frame"},
      {"a datum that nobody knows", raster([](RasterRecipe& recipe) {
         degrees(recipe);
         recipe.system =
             "GEOGCS[\"invented\",DATUM[\"invented\",SPHEROID[\"invented\",6378200,299]],"
             "PRIMEM[\"Greenwich\",0],UNIT[\"degree\",0.0174532925199433]]";
       }),
       "no accurate transformation brings the heights from invented", "a.tif",
       in_frame("EPSG:32605")},
      {"a map frame that is none", raster([](RasterRecipe&) {}),
       "site.toml: map_frame: the reference system \"EPSG:99999999\" is not known; give a code "
       "such as \"EPSG:32605\"",
       "a.tif", in_frame("EPSG:99999999")},
      {"a map frame in a file", raster([](RasterRecipe&) {}), "is not known", "a.tif",
       in_frame("/etc/hostname")},
      {"a map frame in degrees", raster([](RasterRecipe&) {}),
       "the map frame is not a projected reference system", "a.tif", in_frame("EPSG:4326")},
      {"a map frame in feet", raster([](RasterRecipe&) {}), "does not count in metres", "a.tif",
       in_frame("EPSG:2232")},
      {"Web Mercator as map frame", raster([](RasterRecipe&) {}),
       "the metres of the map frame WGS 84 / Pseudo-Mercator are off by 44.3 %", "a.tif",
       in_frame("EPSG:3857")},
  };
}

std::vector<BrokenRaster> heights_without_meaning() {
  return {
      {"no unit", raster([](RasterRecipe& recipe) { recipe.unit = ""; }),
       "it does not say in what unit its heights are; declare heights.unit in site.toml"},
      {"an unheard-of unit", raster([](RasterRecipe& recipe) { recipe.unit = "fathom"; }),
       "its heights are in \"fathom\", which is unknown"},
      {"band against reference system", raster([](RasterRecipe& recipe) {
         recipe.unit = "ft";
         recipe.system = "EPSG:32605+5773";
       }),
       "its reference system says heights in metres, its band says feet", "a.tif",
       [](HeightRasterRequest& request) { request.vertical_datum = "EGM96 height"; }},
      {"site against file", raster([](RasterRecipe& recipe) { recipe.unit = "ft"; }),
       "it says heights in feet, site.toml says metres", "a.tif",
       [](HeightRasterRequest& request) { request.metres_per_unit = 1.0; }},
      {"a unit of nothing", raster([](RasterRecipe&) {}), "the unit of the heights is no length",
       "a.tif", [](HeightRasterRequest& request) { request.metres_per_unit = NAN; }},
      {"no datum", raster([](RasterRecipe&) {}),
       "it does not say from what level its heights count", "a.tif",
       [](HeightRasterRequest& request) { request.vertical_datum = std::nullopt; }},
      {"depths", system_of("EPSG:32605+5831"), "its vertical system counts depths, not heights"},
      {"no plausible height at all", raster([](RasterRecipe&) {}),
       "the plausible range of heights is empty", "a.tif",
       [](HeightRasterRequest& request) { request.highest = request.lowest; }},
      {"no file named", [](const TempFolder&) {}, "no file of heights is named", "",
       [](HeightRasterRequest& request) { request.files.clear(); }},
  };
}

void check_all(const std::vector<BrokenRaster>& table) {
  for (const BrokenRaster& broken : table) {
    CAPTURE(broken.name);
    const TempFolder folder;
    broken.make(folder);
    HeightRasterRequest request = request_for(folder, {broken.file});
    broken.ask(request);
    const auto reading = open_heights(request);
    CHECK(reading.data.source == nullptr);
    const std::vector<std::string> lines = fault_lines(reading.faults);
    for (const std::string& line : lines) {
      INFO(line);
      CHECK(lines.size() == 1);
    }
    REQUIRE(lines.size() == 1);
    INFO(lines[0]);
    CHECK(lines[0].find(broken.line) != std::string::npos);
    CHECK(lines[0].find('\n') == std::string::npos);
    CHECK(lines[0].find("; ") != std::string::npos);  // it says what to do
  }
}

}  // namespace

TEST_CASE("what is no file of heights is refused with one line") {
  check_all(files_that_are_none());
}

TEST_CASE("a damaged file is refused with one line") {
  check_all(damaged_files());
}

TEST_CASE("a raster that holds something else is refused with one line") {
  check_all(rasters_of_other_things());
}

TEST_CASE("a raster that is not where it could be driven is refused with one line") {
  check_all(rasters_out_of_place());
}

TEST_CASE("heights that could mean two things are refused with one line") {
  check_all(heights_without_meaning());
}

TEST_CASE("several broken files are all told of in one pass") {
  const TempFolder folder;
  RasterRecipe silent;
  silent.unit = "";
  write_raster(folder.file("silent.tif"), silent);
  folder.write("text.tif", "no raster");
  write_raster(folder.file("good.tif"), {});
  const auto reading =
      open_heights(request_for(folder, {"silent.tif", "text.tif", "missing.tif", "good.tif"}));
  CHECK(reading.data.source == nullptr);
  CHECK(fault_lines(reading.faults).size() == 3);
  // The map is known all the same, so that the layers can be looked at in the same pass.
  CHECK(reading.data.facts.frame.horizontal_name == "WGS 84 / UTM zone 5N");
}

TEST_CASE("a file that is cut off after it was opened stops the read with its place in the file") {
  const TempFolder folder;
  RasterRecipe recipe;
  recipe.columns = 16;
  recipe.rows = 4000;
  recipe.options = {"COMPRESS=DEFLATE", "BLOCKYSIZE=16"};
  write_raster(folder.file("a.tif"), recipe);
  auto heights = rimehaul::testing::opened(request_for(folder, {"a.tif"}));
  fs::resize_file(folder.file("a.tif"), fs::file_size(folder.file("a.tif")) / 2);
  bool was_told = false;
  for (std::int64_t block = 0; block < 4000 / rimehaul::terrain::kBlockSide; ++block) {
    try {
      (void)heights.source->read({0, block});
    } catch (const rimehaul::base::BadInput& bad) {
      was_told = bad.fault().file == "a.tif" && bad.fault().place.find("rows ") == 0;
    }
  }
  CHECK(was_told);
}
