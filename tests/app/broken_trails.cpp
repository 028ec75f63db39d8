// Trails that cannot be used, in one way each and from files of each kind.
#include <filesystem>

#include "app/broken_input.h"
#include "ports/gdal/layer_maker.h"

namespace rimehaul::testing {

namespace {

Break trails(const std::string& from, const std::string& to) {
  return changed("trails.geojson", {from, to});
}

/// The site's trails come from another file.
Break trails_in(const std::string& file, const std::string& bytes) {
  return [file, bytes](const TinySite& site) {
    site.change("site.toml", {"[\"trails.geojson\"]", "[\"" + file + "\"]"});
    site.write(file, bytes);
  };
}

/// The site's trails as a Shapefile, of which something is then taken.
Break shapefile(const std::function<void(const TinySite&)>& change) {
  return [change](const TinySite& site) {
    convert({site.path("trails.geojson"), site.path("t.shp")}, {"-f", "ESRI Shapefile"});
    site.change("site.toml", {"[\"trails.geojson\"]", "[\"t.shp\"]"});
    change(site);
  };
}

std::string gpx(const std::string& inside) {
  return R"(<gpx version="1.1" creator="h" xmlns="http://www.topografix.com/GPX/1/1">)" + inside +
         "</gpx>";
}

}  // namespace

std::vector<BrokenFile> broken_trails() {
  const std::string spur = "[500000,5100080],[500000,5100300]";
  return {
      {"no file",
       removed("trails.geojson"),
       {"trails.geojson", "", "there is no such file", "check its name in site.toml"}},
      {"an empty file",
       written("trails.geojson", ""),
       {"trails.geojson", "", kNoLayer, kGiveLayer}},
      {"half a file",
       written("trails.geojson", R"({"type":"FeatureCollection","features":[{"ty)"),
       {"trails.geojson", "", kNoLayer, kGiveLayer}},
      {"points",
       changed("site.toml", {"[\"trails.geojson\"]", "[\"stations.geojson\"]"}),
       {"stations.geojson", "", "no feature in it is a line",
        "give a file whose features are the trails"}},
      {"a name twice",
       trails("\"Spur\"", "\"Low Way\""),
       {"trails.geojson", "trail Low Way", "the name is used twice in this file",
        "give each its own name"}},
      {"no name",
       trails("\"name\":\"Spur\",", ""),
       {"trails.geojson", "trail number 2", "it has no name", "fill in the column name"}},
      {"a name of two lines",
       trails("\"Spur\"", R"("Spur\n3 trails, all well")"),
       {"trails.geojson", "trail number 2",
        "name is longer than 200 bytes or holds control characters",
        "write one short line of text"}},
      {"a name that clears the screen",
       trails("\"Spur\"", R"("\u001b[2JSpur")"),
       {"trails.geojson", "trail number 2",
        "name is longer than 200 bytes or holds control characters",
        "write one short line of text"}},
      {"a name that turns the writing",
       trails("\"Spur\"", R"("\u202erupS")"),
       {"trails.geojson", "trail number 2",
        "name is longer than 200 bytes or holds control characters",
        "write one short line of text"}},
      {"a name of 1000 letters",
       trails("\"Spur\"", "\"" + std::string(1000, 'S') + "\""),
       {"trails.geojson", "trail number 2",
        "name is longer than 200 bytes or holds control characters",
        "write one short line of text"}},
      {"a name in Latin-1",
       trails("\"Spur\"",
              "\"Gr\xe4"
              "ben\""),
       {"trails.geojson", "trail number 2", "name is not UTF-8",
        "store the file as UTF-8, or give a Shapefile its .cpg"}},
      {"an unknown direction",
       trails("\"both\"", "\"bothways\""),
       {"trails.geojson", "trail Low Way", "direction is \"bothways\", which is not known",
        "give forward, backward or both"}},
      {"a width of nothing",
       trails("\"width_m\":6", "\"width_m\":0"),
       {"trails.geojson", "trail Low Way", "width_m is \"0\" and counts as not given",
        "give a number above 0"}},
      {"a width in words",
       trails("\"width_m\":6", "\"width_m\":\"six\""),
       {"trails.geojson", "trail Low Way", "width_m is \"six\" and counts as not given",
        "give a number above 0"}},
      {"half a lane",
       trails("\"lanes\":2", "\"lanes\":0.5"),
       {"trails.geojson", "trail Low Way", "lanes is \"0.5\" and counts as not given",
        "give a whole number of 1 or more"}},
      {"perhaps groomed",
       trails("\"groomed\":\"yes\"", "\"groomed\":\"perhaps\""),
       {"trails.geojson", "trail Low Way", "groomed is \"perhaps\" and counts as not given",
        "give yes or no"}},
      {"25 o'clock",
       trails("\"24:00\"", "\"25:00\""),
       {"trails.geojson", "trail Low Way", "open_to is \"25:00\" and counts as not given",
        "give a time of day HH:MM, 00:00 to 24:00"}},
      {"hours that end before they begin",
       trails("\"00:00\",\"open_to\":\"24:00\"", "\"18:00\",\"open_to\":\"06:00\""),
       {"trails.geojson", "trail Low Way",
        "open_from is later than open_to, and its hours count as not given",
        "give hours of one day, 00:00 to 24:00"}},
      {"an error below nothing",
       trails("\"error_m\":1", "\"error_m\":-1"),
       {"trails.geojson", "trail Low Way", "error_m is \"-1\" and counts as not given",
        "give a number of 0 or more"}},
      {"one point twice",
       trails(spur, "[500000,5100080],[500000,5100080]"),
       {"trails.geojson", "trail Spur", "it has fewer than two different points",
        "draw it anew or take it out"}},
      {"no line at all",
       trails("[" + spur + "]", "[]"),
       {"trails.geojson", "trail Spur", "it has no geometry", "draw it or take it out"}},
      {"a coordinate without end",
       trails(spur, "[500000,5100080],[1e999,5100300]"),
       {"trails.geojson", "trail Spur", "it has a coordinate that is no number", "draw it anew"}},
      {"a point among trails",
       trails("\"LineString\",\"coordinates\":[" + spur + "]",
              "\"Point\",\"coordinates\":[500000,5100080]"),
       {"trails.geojson", "trail Spur", "it is a point where a line is wanted",
        "draw it so, or take it out of this file"}},
      {"two parts with a gap",
       trails("\"LineString\",\"coordinates\":[" + spur + "]",
              "\"MultiLineString\",\"coordinates\":[[[500000,5100080],[500000,5100100]],[[500000,"
              "5100200],[500000,5100300]]]"),
       {"trails.geojson", "trail Spur", "its part 2 does not begin where part 1 ends",
        "draw it as one line, or as several features each with its own name"}},
      {"metres where degrees belong",
       trails_in("t.geojson",
                 geojson({feature(
                     {"LineString", "[[500000, 5100000], [500100, 5100000]]", R"("name": "T")"})})),
       {"t.geojson", "trail T", "it cannot be brought into the map frame",
        "check its coordinates, their order and the file's coordinate system"}},
      {"a line of 209 km",
       trails(spur, "[500000,5100080],[500000,5309080]"),
       {"trails.geojson", "trail Spur", "it is longer than 200 km",
        "check its coordinates, or draw it as several trails"}},
      {"a line to the moon",
       trails(spur, "[500000,5100080],[500000,390000000]"),
       {"trails.geojson", "trail Spur", "it cannot be brought into the map frame",
        "check its coordinates, their order and the file's coordinate system"}},
      {"a line beyond all space",
       trails(spur, "[500000,5100080],[1e300,5100300]"),
       {"trails.geojson", "trail Spur", "it cannot be brought into the map frame",
        "check its coordinates, their order and the file's coordinate system"}},
      {"a line drawn over another",
       trails(spur, "[499700,5099800],[500000,5099830],[500300,5099800]"),
       {"trails.geojson", "trail Spur", "at 0.0 m it runs over Low Way, there at 0.0 m",
        "cut one of the two where they meet, so that each stretch is drawn once"}},
      {"a tale of a file elsewhere",
       trails_in("t.vrt", "<OGRVRTDataSource/>"),
       {"t.vrt", "", kNoLayer, kGiveLayer}},
      {"GPX cut short",
       trails_in("t.gpx", gpx("<rte><name>T</name>").substr(0, 95)),
       {"t.gpx", "", kNoLayer, kGiveLayer}},
      {"a GPX pair said twice",
       trails_in(
           "t.gpx",
           gpx(R"(<rte><name>T</name><desc>lanes=1; lanes=2</desc><rtept lat="46.05" lon="-153"/><rtept lat="46.06" lon="-153"/></rte>)")),
       {"t.gpx", "trail T", "lanes is \"1 and 2\" and counts as not given",
        "give a whole number of 1 or more"}},
      {"KML of nothing",
       trails_in("t.kml", R"(<kml xmlns="http://www.opengis.net/kml/2.2"><Doc)"),
       {"t.kml", "", kNoLayer, kGiveLayer}},
      {"a table for a GeoPackage",
       trails_in("t.gpkg", "SQLite format 3"),
       {"t.gpkg", "", kNoLayer, kGiveLayer}},
      {"a Shapefile without .prj",
       shapefile([](const TinySite& site) { site.remove("t.prj"); }),
       {"t.shp", "", "it does not say what its coordinates mean",
        "store its coordinate system with it (a Shapefile needs its .prj beside it)"}},
      {"a Shapefile whose .prj bears the code of another kind of system",
       shapefile([](const TinySite& site) {
         site.write("t.prj", R"(GEOGCS["a",DATUM["b",SPHEROID["c",6378137,298.257223563]],)"
                             R"(PRIMEM["Greenwich",0],UNIT["degree",0.0174532925199433],)"
                             R"(AUTHORITY["EPSG","4978"]])");
       }),
       {"t.shp", "", "its coordinate system is none, or bears the code of another kind of system",
        "store the right one with it"}},
      {"a Shapefile without .shx",
       shapefile([](const TinySite& site) { site.remove("t.shx"); }),
       {"t.shp", "", "its .shx file is not beside it", "put all the files of the Shapefile there"}},
      {"a Shapefile without .dbf",
       shapefile([](const TinySite& site) { site.remove("t.dbf"); }),
       {"t.shp", "", "its .dbf file is not beside it", "put all the files of the Shapefile there"}},
      {"a Shapefile cut off",
       shapefile(
           [](const TinySite& site) { std::filesystem::resize_file(site.path("t.shp"), 150); }),
       {"t.shp", "",
        "it cannot be read to its end (Error in fread() reading object of size 104 at offset 100 "
        "from .shp file)",
        "mend the file or write it anew"}},
      {"an invented datum",
       shapefile([](const TinySite& site) {
         site.write(
             "t.prj",
             R"(GEOGCS["Old survey",DATUM["Nobody_knows",SPHEROID["Old",6377000,300]],PRIMEM["Greenwich",0],UNIT["Degree",0.0174532925199433]])");
       }),
       {"t.shp", "",
        "no exact operation is installed from Old survey to the map frame WGS 84 / UTM zone 5N",
        "store it in the map frame, or install the grid that the operation needs"}},
      {"two layers that could be meant",
       [](const TinySite& site) {
         const Conversion both{site.path("trails.geojson"), site.path("t.gpkg")};
         convert(both, {"-f", "GPKG", "-nln", "summer"});
         convert(both, {"-nln", "winter"});
         site.change("site.toml", {"[\"trails.geojson\"]", "[\"t.gpkg\"]"});
       },
       {"t.gpkg", "", "several of its layers could be the trails",
        "name one of its layers trails"}},
  };
}

}  // namespace rimehaul::testing
