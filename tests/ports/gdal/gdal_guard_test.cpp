// Nothing but regular files of the site reaches GDAL, and no driver that could follow a name.
#include "ports/gdal/gdal_guard.h"

#include <cpl_error.h>
#include <doctest/doctest.h>
#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <filesystem>
#include <set>
#include <string>

#include "near.h"
#include "ports/gdal/map_transform.h"
#include "raster_maker.h"

using rimehaul::base::BadInput;
using rimehaul::ports::gdal::are_same;
using rimehaul::ports::gdal::checked_file;
using rimehaul::ports::gdal::CheckedFile;
using rimehaul::ports::gdal::open_layers;
using rimehaul::ports::gdal::open_raster;
using rimehaul::ports::gdal::reference_from;
using rimehaul::ports::gdal::start_gdal;
using rimehaul::ports::gdal::transformation_between;
using rimehaul::testing::near;
using rimehaul::testing::TempFolder;
using rimehaul::testing::write_raster;

namespace fs = std::filesystem;

TEST_CASE("only the drivers on our list are there") {
  start_gdal();
  std::set<std::string> found;
  for (int index = 0; index < GDALGetDriverCount(); ++index) {
    found.insert(GDALGetDriverShortName(GDALGetDriver(index)));
  }
  CHECK(found == std::set<std::string>{"GTiff", "AAIGrid", "USGSDEM", "SRTMHGT", "GPKG", "GPX",
                                       "GeoJSON", "GeoJSONSeq", "KML", "LIBKML", "ESRI Shapefile",
                                       "FlatGeobuf", "COG"});
  CHECK(GDALGetDriverByName("VRT") == nullptr);
  CHECK(OSRGetPROJEnableNetwork() == 0);
}

TEST_CASE("what the library says where nobody listens reaches no terminal") {
  start_gdal();
  const TempFolder folder;
  const int terminal = dup(STDERR_FILENO);
  const int kept = open(folder.file("said").c_str(), O_WRONLY | O_CREAT, 0600);
  REQUIRE(dup2(kept, STDERR_FILENO) == STDERR_FILENO);
  CPLError(CE_Failure, CPLE_AppDefined, "a failure");
  CPLError(CE_Warning, CPLE_AppDefined, "a warning");
  dup2(terminal, STDERR_FILENO);
  close(kept);
  close(terminal);
  CPLErrorReset();
  CHECK(folder.read("said") == "");
}

TEST_CASE("a plain file in the folder, or in a folder inside it, may be opened") {
  const TempFolder folder;
  fs::create_directory(folder.file("in"));
  folder.write("in/a.txt", "abc");
  const CheckedFile file = checked_file({folder.path(), "in/a.txt"}, 3);
  CHECK(file.path == fs::canonical(folder.file("in/a.txt")).string());
  CHECK(file.shown == "in/a.txt");
  CHECK(file.bytes == 3);
  CHECK_THROWS_AS((void)checked_file({folder.path(), "in/a.txt"}, 2), BadInput);
}

TEST_CASE("names that are no files of the site are refused before GDAL sees them") {
  const TempFolder outside;
  outside.write("secret.tif", "x");
  const TempFolder folder;
  folder.write("a.tif", "x");
  fs::create_symlink(outside.file("secret.tif"), folder.file("link.tif"));
  fs::create_symlink(folder.file("a.tif"), folder.file("inner.tif"));
  fs::create_directory_symlink(outside.path(), folder.file("away"));
  fs::create_symlink("/nowhere/at/all", folder.file("broken.tif"));
  REQUIRE(mkfifo(folder.file("pipe.tif").c_str(), 0600) == 0);
  fs::create_directory(folder.file("dir.tif"));
  const std::string up = "../" + fs::path{outside.path()}.filename().string() + "/secret.tif";
  for (const std::string& name :
       {std::string{}, std::string{"link.tif"}, std::string{"inner.tif"},
        std::string{"away/secret.tif"}, std::string{"broken.tif"}, std::string{"pipe.tif"},
        std::string{"dir.tif"}, std::string{"."}, std::string{"missing.tif"}, up,
        outside.file("secret.tif"), std::string{"/vsicurl/http://127.0.0.1:9/a.tif"},
        std::string{"/vsizip/a.zip"}, std::string{"http://127.0.0.1:9/a.tif"},
        std::string{"WMS:http://127.0.0.1:9/"}, std::string{"GTIFF_DIR:1:a.tif"},
        std::string{"<VRTDataset rasterXSize=\"1\" rasterYSize=\"1\"/>"}, std::string{"a.tif\n"},
        std::string("a.tif\0.tif", 10)}) {
    CAPTURE(name);
    CHECK_THROWS_AS((void)checked_file({folder.path(), name}, 100), BadInput);
  }
  CHECK_THROWS_AS((void)checked_file({folder.file("no folder"), "a.tif"}, 100), BadInput);
}

TEST_CASE("a side-car file that is a link is refused with the file it belongs to") {
  const TempFolder outside;
  outside.write("x.prj", "secret");
  const TempFolder folder;
  folder.write("a.asc", "x");
  CHECK_NOTHROW((void)checked_file({folder.path(), "a.asc"}, 100));
  fs::create_symlink(outside.file("x.prj"), folder.file("a.prj"));
  CHECK_THROWS_AS((void)checked_file({folder.path(), "a.asc"}, 100), BadInput);
}

TEST_CASE("a virtual raster under another name is refused, whatever it points to") {
  const TempFolder folder;
  write_raster(folder.file("real.tif"), {});
  const std::string inside =
      "<VRTDataset rasterXSize=\"16\" rasterYSize=\"12\"><VRTRasterBand dataType=\"Float32\" "
      "band=\"1\"><SimpleSource><SourceFilename relativeToVRT=\"1\">real.tif</SourceFilename>"
      "<SourceBand>1</SourceBand></SimpleSource></VRTRasterBand></VRTDataset>";
  folder.write("renamed.tif", inside);
  CHECK_NOTHROW((void)open_raster(checked_file({folder.path(), "real.tif"}, 1000000)));
  CHECK_THROWS_AS((void)open_raster(checked_file({folder.path(), "renamed.tif"}, 1000000)),
                  BadInput);
  folder.write("layers.gpx",
               "<OGRVRTDataSource><OGRVRTLayer name=\"a\"><SrcDataSource>real.tif</SrcDataSource>"
               "</OGRVRTLayer></OGRVRTDataSource>");
  CHECK_THROWS_AS((void)open_layers(checked_file({folder.path(), "layers.gpx"}, 1000000)),
                  BadInput);
}

TEST_CASE("a raster is no layer file and the other way round") {
  const TempFolder folder;
  write_raster(folder.file("a.tif"), {});
  folder.write("a.geojson",
               R"({"type":"FeatureCollection","features":[{"type":"Feature","properties":{},)"
               R"("geometry":{"type":"Point","coordinates":[1,2]}}]})");
  CHECK_THROWS_AS((void)open_layers(checked_file({folder.path(), "a.tif"}, 1000000)), BadInput);
  CHECK_NOTHROW((void)open_layers(checked_file({folder.path(), "a.geojson"}, 1000000)));
  CHECK_THROWS_AS((void)open_raster(checked_file({folder.path(), "a.geojson"}, 1000000)), BadInput);
}

TEST_CASE("a reference system is a code or a text, never a file or an address") {
  const TempFolder folder;
  folder.write("EPSG.wkt", "EPSG:32605");
  CHECK(reference_from("EPSG:32605") != nullptr);
  CHECK(reference_from(folder.file("EPSG.wkt")) == nullptr);
  CHECK(reference_from("http://127.0.0.1:9/epsg") == nullptr);
  CHECK(reference_from("EPSG:99999999") == nullptr);
  CHECK(reference_from("") == nullptr);
  CHECK(reference_from("EPSG:") == nullptr);
  CHECK(reference_from("nonsense") == nullptr);
  // EPSG:4978 is geocentric: what is described is not what the code says.
  const std::string globe =
      R"(GEOGCS["a",DATUM["b",SPHEROID["c",6378137,298.257223563]],PRIMEM["Greenwich",0],)"
      R"(UNIT["degree",0.0174532925199433],AUTHORITY["EPSG",)";
  CHECK(reference_from(globe + "\"4326\"]]") != nullptr);
  CHECK(reference_from(globe + "\"4978\"]]") == nullptr);
  CHECK(reference_from(globe + "\"32605\"]]") == nullptr);
  // A code that nobody knows says nothing against the description.
  CHECK(reference_from(globe + "\"99999999\"]]") != nullptr);
  // The height part is left out: only the horizontal system counts here.
  CHECK(are_same({reference_from("EPSG:32605+5773"), reference_from("EPSG:32605")}));
}

TEST_CASE("longitude comes first: UTM 32N at 46.5 N 8 E") {
  // Karney 2011, J. Geodesy 85:475-485: Krueger's series; the figures were worked out apart with
  // it.
  const auto to_map = transformation_between(
      {rimehaul::ports::gdal::globe_reference(), reference_from("EPSG:32632")});
  REQUIRE(to_map != nullptr);
  std::vector<rimehaul::ports::gdal::PlainPoint> points{{8.0, 46.5}, {9.0, 46.5}};
  rimehaul::ports::gdal::transform(to_map, points);
  CHECK(near(points[0].x, 423268.310, 0.001));
  CHECK(near(points[0].y, 5150089.104, 0.001));
  CHECK(near(points[1].x, 500000.000, 0.001));
  CHECK(near(points[1].y, 5149603.362, 0.001));
}

TEST_CASE("a map on another datum goes to the globe with its datum shift, or not at all") {
  // EPSG:2056 at its origin, E 2600000, N 1200000: 46 57 03.9 N, 7 26 19.1 E on the global datum
  // (value from memory, to 0.1 seconds); without the shift it would lie some 150 m away.
  const auto to_globe = transformation_between(
      {reference_from("EPSG:2056"), rimehaul::ports::gdal::globe_reference()});
  REQUIRE(to_globe != nullptr);
  std::vector<rimehaul::ports::gdal::PlainPoint> points{{2600000, 1200000}};
  rimehaul::ports::gdal::transform(to_globe, points);
  CHECK(near(points[0].y, 46.951083, 2e-5));
  CHECK(near(points[0].x, 7.438637, 2e-5));
}
