// Heights that cannot be used, in one way each.
#include <sys/stat.h>

#include <cmath>
#include <filesystem>

#include "app/broken_input.h"
#include "ports/gdal/raster_maker.h"

namespace rimehaul::testing {

namespace {

namespace fs = std::filesystem;

/// The site names another file for its heights.
void name_heights(const TinySite& site, const std::string& file) {
  site.change("site.toml", {"[\"heights.asc\"]", "[\"" + file + "\"]"});
}

Break heights_named(const std::string& file) {
  return [file](const TinySite& site) { name_heights(site, file); };
}

Break heights_of(const std::string& file, const std::string& bytes) {
  return [file, bytes](const TinySite& site) {
    name_heights(site, file);
    site.write(file, bytes);
  };
}

/// A good GeoTIFF with one thing changed.
Break tiff(const std::function<void(RasterRecipe&)>& change) {
  return [change](const TinySite& site) {
    RasterRecipe recipe;
    change(recipe);
    name_heights(site, "heights.tif");
    write_raster(site.path("heights.tif"), recipe);
  };
}

Break tiff_in(const std::string& system) {
  return tiff([system](RasterRecipe& recipe) { recipe.system = system; });
}

/// A GeoTIFF of which a share of the bytes is left.
Break tiff_cut_to(double share) {
  return [share](const TinySite& site) {
    RasterRecipe recipe;
    recipe.columns = 300;
    recipe.rows = 300;
    name_heights(site, "heights.tif");
    write_raster(site.path("heights.tif"), recipe);
    const auto size = static_cast<double>(fs::file_size(site.path("heights.tif")));
    fs::resize_file(site.path("heights.tif"), static_cast<std::uintmax_t>(share * size));
  };
}

Break grid(const std::string& head, const std::string& cells) {
  return written("heights.asc",
                 head + "xllcorner 499000\nyllcorner 5099000\ncellsize 10\n" + cells);
}

std::vector<BrokenFile> files_that_are_none() {
  return {
      {"no file",
       removed("heights.asc"),
       {"heights.asc", "", "there is no such file", "check its name in site.toml"}},
      {"an empty file", written("heights.asc", ""), {"heights.asc", "", kNoRaster, kGiveRaster}},
      {"a letter",
       written("heights.asc", "Dear all,\n"),
       {"heights.asc", "", kNoRaster, kGiveRaster}},
      {"an archive",
       written("heights.asc", std::string("PK\x03\x04") + std::string(99, 'x')),
       {"heights.asc", "", kNoRaster, kGiveRaster}},
      {"another raster's recipe",
       heights_of("heights.tif", R"(<VRTDataset rasterXSize="2" rasterYSize="2"/>)"),
       {"heights.tif", "", kNoRaster, kGiveRaster}},
      {"a picture",
       heights_of("heights.png", "\x89PNG\r\n\x1a\n"),
       {"heights.png", "", kNoRaster, kGiveRaster}},
      {"trails", heights_named("trails.geojson"), {"trails.geojson", "", kNoRaster, kGiveRaster}},
      {"the site file itself",
       heights_named("site.toml"),
       {"site.toml", "", kNoRaster, kGiveRaster}},
      {"an address",
       heights_named("http://127.0.0.1:9/heights.tif"),
       {"http://127.0.0.1:9/heights.tif", "", "this is no file name within the site folder",
        "name a file by its path from the site folder"}},
      {"a file in an archive",
       heights_named("/vsizip/heights.zip/heights.tif"),
       {"site.toml", "line N (heights.files)",
        "\"/vsizip/heights.zip/heights.tif\" leads out of the site folder", kLeadsOut}},
      {"a driver's own name",
       heights_named("GTIFF_DIR:1:heights.tif"),
       {"GTIFF_DIR:1:heights.tif", "", "there is no such file", "check its name in site.toml"}},
      {"cut off in its head", tiff_cut_to(0.0003), {"heights.tif", "", kNoRaster, kGiveRaster}},
      {"cut off in its heights",
       tiff_cut_to(0.6),
       {"heights.tif", "rows 252 to 299",
        "its heights cannot be read there; the file is cut off or damaged",
        "copy or make the file again"}},
      {"a grid that stops early",
       grid("ncols 60\nnrows 60\n", "1500 1501 1502\n"),
       {"heights.asc", "", "it promises 60 x 60 cells, more than it can hold; it is cut off",
        "copy or make the file again"}},
      {"a grid of words",
       grid("ncols 2\nnrows 2\n", "high low\nhigh higher\n"),
       {"heights.asc", "", kNoRaster, kGiveRaster}},
      {"a grid of 2 000 000 000 columns",
       grid("ncols 2000000000\nnrows 2000000000\n", "1 2\n"),
       {"heights.asc", "", kNoRaster, kGiveRaster}},
      {"a grid of less than nothing",
       grid("ncols -2\nnrows -2\n", "1 2\n3 4\n"),
       {"heights.asc", "", kNoRaster, kGiveRaster}},
  };
}

std::vector<BrokenFile> rasters_of_other_things() {
  return {
      {"no reference system",
       removed("heights.prj"),
       {"heights.asc", "", "it does not name its reference system",
        "add it (gdal_edit -a_srs, or a .prj file beside an ASCII grid)"}},
      {"a reference system that is none",
       written("heights.prj", "UTM, zone five"),
       {"heights.asc", "", "it does not name its reference system",
        "add it (gdal_edit -a_srs, or a .prj file beside an ASCII grid)"}},
      {"a reference system that bears the code of another kind",
       written("heights.prj", R"(GEOGCS["a",DATUM["b",SPHEROID["c",6378137,298.257223563]],)"
                              R"(PRIMEM["Greenwich",0],UNIT["degree",0.0174532925199433],)"
                              R"(AUTHORITY["EPSG","4978"]])"),
       {"heights.asc", "",
        "its reference system is none, or bears the code of another kind of system",
        "write the right one into it (gdal_edit -a_srs)"}},
      {"no place",
       tiff([](RasterRecipe& recipe) { recipe.corners = {}; }),
       {"heights.tif", "", "it does not say where it lies on the map",
        "write it again with its corners and cell size (gdalwarp or gdal_edit)"}},
      {"a place that is no number",
       tiff([](RasterRecipe& recipe) { recipe.corners = {NAN, 2, 0, 5100000, 0, -2}; }),
       {"heights.tif", "", "its cells have no size, no area or no place",
        "write it again with its corners and cell size (gdalwarp or gdal_edit)"}},
      {"cells of no size",
       tiff([](RasterRecipe& recipe) { recipe.corners = {500000, 0, 0, 5100000, 0, 0}; }),
       {"heights.tif", "", "its cells have no size, no area or no place",
        "write it again with its corners and cell size (gdalwarp or gdal_edit)"}},
      {"cells of a hair's breadth",
       tiff([](RasterRecipe& recipe) { recipe.corners = {500000, 0.001, 0, 5100000, 0, -0.001}; }),
       {"site.toml", "heights.files", "the cells are narrower than 0.05 m",
        "check the cell size, or bring the heights to wider cells"}},
      {"one row",
       tiff([](RasterRecipe& recipe) { recipe.rows = 1; }),
       {"heights.tif", "", "it has only 16 x 1 cells", "give at least 2 x 2 cells"}},
      {"numbers with imaginary parts",
       tiff([](RasterRecipe& recipe) { recipe.type = GDT_CFloat32; }),
       {"heights.tif", "", "its numbers are of the kind CFloat32, which heights cannot be",
        "write them as Float32"}},
      {"a photograph",
       tiff([](RasterRecipe& recipe) {
         recipe.type = GDT_Byte;
         recipe.bands = 3;
         recipe.options = {"PHOTOMETRIC=RGB"};
         recipe.value = [](int column, int) { return column; };
       }),
       {"heights.tif", "", "it holds colours, not heights", "give the raster of heights itself"}},
      {"a scale of nothing",
       tiff([](RasterRecipe& recipe) { recipe.scale = 0.0; }),
       {"heights.tif", "", "the scale or offset of its band is no usable number",
        "write the heights out without scale and offset"}},
      {"fathoms",
       tiff([](RasterRecipe& recipe) { recipe.unit = "fathom"; }),
       {"heights.tif", "", "its heights are in \"fathom\", which is unknown",
        "give heights in metres, feet or US survey feet"}},
      {"a unit that colours the screen",
       tiff([](RasterRecipe& recipe) { recipe.unit = "\x1b[31m\xe4"; }),
       {"heights.tif", "", "its heights are in \"[31m?\", which is unknown",
        "give heights in metres, feet or US survey feet"}},
      {"feet in the file, metres in the site",
       tiff([](RasterRecipe& recipe) { recipe.unit = "ft"; }),
       {"heights.tif", "", "it says heights in feet, site.toml says metres",
        "find out which is true and correct the other"}},
      {"depths",
       tiff_in("EPSG:32605+5831"),
       {"heights.tif", "", "its vertical system counts depths, not heights",
        "give heights that count upwards"}},
      {"a workshop floor",
       [](const TinySite& site) {
         tiff_in("LOCAL_CS[\"workshop floor\",UNIT[\"metre\",1]]")(site);
         site.change("site.toml", {"map_frame = \"EPSG:32605\"\n", ""});
       },
       {"site.toml", "map_frame", "no metric map can be chosen for heights in workshop floor",
        "set map_frame to a projected system in metres made for the area"}},
      {"a datum that nobody knows",
       tiff_in("GEOGCS[\"invented\",DATUM[\"invented\",SPHEROID[\"invented\",6378200,299]],PRIMEM["
               "\"Greenwich\",0],UNIT[\"degree\",0.0174532925199433]]"),
       {"site.toml", "map_frame",
        "no accurate transformation brings the heights from invented into WGS 84 / UTM zone 5N",
        "declare a map_frame on the datum of the heights, or install the transformation grid it "
        "needs"}},
      {"a mask beside the file",
       [](const TinySite& site) {
         tiff([](RasterRecipe&) {})(site);
         site.write("heights.tif.msk", "x");
       },
       {"heights.tif", "", "its mask is a file of its own, which is not read",
        "put the mask into the file, or use a nodata value"}},
      {"tiles on two lattices",
       [](const TinySite& site) {
         tiff([](RasterRecipe&) {})(site);
         RasterRecipe shifted;
         shifted.corners[0] += 0.7;
         write_raster(site.path("east.tif"), shifted);
         site.change("site.toml", {"[\"heights.tif\"]", "[\"heights.tif\", \"east.tif\"]"});
       },
       {"east.tif", "", "its cells do not fall on those of heights.tif",
        "bring all heights to one lattice first (gdalwarp -tr -tap)"}},
      {"the folder of heights is not there",
       changed("site.toml", {"[heights]", "[heights]\nfolder = \"survey\""}),
       {"FOLDER/survey", "", "there is no such folder that can be read",
        "check its name in site.toml, and its permissions"}},
  };
}

}  // namespace

std::vector<BrokenFile> broken_rasters() {
  std::vector<BrokenFile> all = files_that_are_none();
  for (BrokenFile& broken : rasters_of_other_things()) {
    all.push_back(std::move(broken));
  }
  return all;
}

}  // namespace rimehaul::testing
