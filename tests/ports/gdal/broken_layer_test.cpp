// Broken vector files, each with the one clear line that a planner gets for it.
#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <functional>
#include <string>
#include <vector>

#include "ports/gdal/layer_maker.h"
#include "ports/gdal/layers.h"

using rimehaul::base::BadInput;
using rimehaul::base::Fault;
using rimehaul::base::line_of;
using rimehaul::ports::gdal::LayerFile;
using rimehaul::ports::gdal::read_marks;
using rimehaul::ports::gdal::read_stations;
using rimehaul::ports::gdal::read_trails;
using rimehaul::ports::gdal::read_zones;
using rimehaul::testing::area_feature;
using rimehaul::testing::convert;
using rimehaul::testing::feature;
using rimehaul::testing::geojson;
using rimehaul::testing::holds;
using rimehaul::testing::line_feature;
using rimehaul::testing::lines_of;
using rimehaul::testing::point_feature;
using rimehaul::testing::TempFolder;
using rimehaul::testing::test_frame;

namespace {

/// All that is said of a file, whether it could be read or not, and how many things were kept.
struct Heard {
  std::string lines;
  std::size_t kept = 0;
};

using Reader = std::function<Heard(const LayerFile&)>;

template <class Read>
Reader reader(Read read) {
  return [read](const LayerFile& file) {
    try {
      const auto reading = read(file);
      return Heard{lines_of(reading.faults), reading.data.size()};
    } catch (const BadInput& bad) {
      return Heard{line_of(bad.fault()) + "\n", 0};
    }
  };
}

const Reader kTrails =
    reader([](const LayerFile& file) { return read_trails(file, test_frame()); });
const Reader kStations =
    reader([](const LayerFile& file) { return read_stations(file, test_frame()); });
const Reader kZones = reader([](const LayerFile& file) { return read_zones(file, test_frame()); });
const Reader kMarks = reader([](const LayerFile& file) {
  const TempFolder folder;
  folder.write("t.geojson", geojson({line_feature(R"("name": "North Bowl")")}));
  const auto trails = read_trails({folder.path(), "t.geojson"}, test_frame());
  return read_marks(file, test_frame(), trails.data);
});

/// One broken file: its name, what is in it, and the line wanted, of which `lines` times are found.
struct Broken {
  std::string what;
  std::string name;
  std::string text;
  Reader read;
  std::string line;
  std::size_t kept = 0;
};

std::string trail_said(const std::string& said) {
  return geojson({line_feature(R"("name": "T", )" + said)});
}
std::string line_through(const std::string& coordinates) {
  return geojson({feature({"LineString", coordinates, R"("name": "T")"})});
}
std::string mark_said(const std::string& said) {
  return geojson({point_feature(said)});
}
std::string gpx(const std::string& inside) {
  return R"(<gpx version="1.1" creator="h" xmlns="http://www.topografix.com/GPX/1/1">)" + inside +
         "</gpx>";
}

std::vector<Broken> broken_files() {
  const std::string named = R"("name": "T")";
  return {
      {"no file", "none.geojson", "", kTrails, "none.geojson: there is no such file; "},
      {"an empty file", "t.geojson", "", kTrails, "t.geojson: this is no vector file"},
      {"no vector file", "t.geojson", "hello", kTrails, "t.geojson: this is no vector file"},
      {"half a file", "t.geojson", geojson({line_feature(named)}).substr(0, 90), kTrails,
       "t.geojson: this is no vector file"},
      {"a file that names another", "t.vrt",
       R"(<OGRVRTDataSource><OGRVRTLayer name="t"><SrcDataSource>/etc/passwd</SrcDataSource>)"
       R"(</OGRVRTLayer></OGRVRTDataSource>)",
       kTrails, "t.vrt: this is no vector file"},
      {"nothing in it", "t.geojson", geojson({}), kTrails, "t.geojson: it holds no trails; "},
      {"points for trails", "t.geojson", geojson({point_feature(named)}), kTrails,
       "t.geojson: no feature in it is a line; give a file whose features are the trails"},
      {"lines for stations", "s.geojson", geojson({line_feature(named)}), kStations,
       "s.geojson: no feature in it is a point; "},
      {"one point among trails", "t.geojson",
       geojson({line_feature(named), point_feature(R"("name": "P")")}), kTrails,
       "t.geojson: trail P: it is a point where a line is wanted; ", 1},
      {"no geometry", "t.geojson",
       geojson({line_feature(named),
                R"({"type": "Feature", "geometry": null, "properties": {"name": "N"}})"}),
       kTrails, "t.geojson: trail N: it has no geometry; ", 1},
      {"an empty line", "t.geojson",
       geojson({line_feature(named), feature({"LineString", "[]", R"("name": "E")"})}), kTrails,
       "t.geojson: trail E: it has no geometry; ", 1},
      {"one point twice", "t.geojson", line_through("[[-153, 46], [-153, 46]]"), kTrails,
       "t.geojson: trail T: it has fewer than two different points; "},
      {"a coordinate that is no number", "t.geojson", line_through("[[-153, 46], [NaN, 46.1]]"),
       kTrails, "t.geojson: trail T: it has a coordinate that is no number; draw it anew"},
      {"metres where degrees belong", "t.geojson",
       line_through("[[500000, 5100000], [500100, 5100000]]"), kTrails,
       "t.geojson: trail T: it cannot be brought into the map frame; check its coordinates, their "
       "order"},
      {"latitude first", "t.geojson", line_through("[[46, -153], [46.01, -153]]"), kTrails,
       "t.geojson: trail T: it cannot be brought into the map frame; "},
      {"parts with a gap", "t.geojson",
       geojson({feature({"MultiLineString",
                         "[[[-153, 46], [-153, 46.01]], [[-153, 46.02], [-153, 46.03]]]", named})}),
       kTrails, "t.geojson: trail T: its part 2 does not begin where part 1 ends; "},
      {"a heap of geometries", "t.geojson",
       geojson({line_feature(R"("name": "U")"),
                R"({"type": "Feature", "properties": {"name": "T"}, "geometry":
                    {"type": "GeometryCollection", "geometries":
                     [{"type": "Point", "coordinates": [-153, 46]}]}})"}),
       kTrails, "t.geojson: trail T: its geometry is a GEOMETRYCOLLECTION, which is not read; ", 1},
      {"no name", "t.geojson", geojson({line_feature(R"("lanes": 1)")}), kTrails,
       "t.geojson: trail number 0: it has no name; "},
      {"a name twice", "t.geojson", geojson({line_feature(named), line_feature(named)}), kTrails,
       "t.geojson: trail T: the name is used twice in this file; ", 1},
      {"an unknown direction", "t.geojson", trail_said(R"("direction": "foward")"), kTrails,
       "t.geojson: trail T: direction is \"foward\", which is not known; did you mean forward?", 1},
      {"a direction far from any", "t.geojson", trail_said(R"("direction": "uphill only")"),
       kTrails, "which is not known; give forward, backward or both", 1},
      {"a width of nothing", "t.geojson", trail_said(R"("width_m": 0)"), kTrails,
       "t.geojson: trail T: width_m is \"0\" and counts as not given; give a number above 0", 1},
      {"half a lane", "t.geojson", trail_said(R"("lanes": 0.5)"), kTrails,
       "lanes is \"0.5\" and counts as not given; give a whole number of 1 or more", 1},
      {"an error below nothing", "t.geojson", trail_said(R"("error_m": -1)"), kTrails,
       "error_m is \"-1\" and counts as not given; give a number of 0 or more", 1},
      {"hours that end before they begin", "t.geojson",
       trail_said(R"("open_from": "18:00", "open_to": "06:00")"), kTrails,
       "t.geojson: trail T: open_from is later than open_to", 1},
      {"an hour that is none", "t.geojson", trail_said(R"("open_from": "25:00")"), kTrails,
       "open_from is \"25:00\" and counts as not given; give a time of day HH:MM", 1},
      {"a column misspelt", "t.geojson", trail_said(R"("widht_m": 4)"), kTrails,
       "t.geojson: column widht_m: it is not known and not read; did you mean width_m?", 1},
      {"a column of no use", "t.geojson", trail_said(R"("surveyor_xyz": "me")"), kTrails,
       "column surveyor_xyz: it is not known and not read; take it out", 1},
      {"a station of no kind", "s.geojson", geojson({point_feature(named)}), kStations,
       "s.geojson: station T: it does not say its kind; "},
      {"a station of unknown kind", "s.geojson",
       geojson({point_feature(R"("name": "T", "kind": "work_shop")")}), kStations,
       "s.geojson: station T: kind is \"work_shop\", which is not known; did you mean workshop?"},
      {"several points in one station", "s.geojson",
       geojson({feature(
           {"MultiPoint", "[[-153, 46], [-153, 46.1]]", R"("name": "T", "kind": "hut")"})}),
       kStations, "s.geojson: station T: it has several points; "},
      {"turning room below nothing", "s.geojson",
       geojson({point_feature(R"("name": "T", "kind": "hut", "turning_m": -3)")}), kStations,
       "turning_m is \"-3\" and counts as not given; ", 1},
      {"a speed of nothing", "z.geojson",
       geojson({area_feature(R"("name": "Z", "kind": "speed_limit", "speed_kmh": 0)")}), kZones,
       "z.geojson: zone Z: speed_kmh is \"0\" and counts as not given; ", 1},
      {"a speed limit without speed", "z.geojson",
       geojson({area_feature(R"("name": "Z", "kind": "speed_limit")")}), kZones,
       "z.geojson: zone Z: it is closed, because it does not say speed_kmh; ", 1},
      {"an area of two corners", "z.geojson",
       geojson({feature({"Polygon", "[[[-153, 46], [-153, 46.1], [-153, 46]]]",
                         R"("name": "Z", "kind": "runout")"})}),
       kZones, "z.geojson: zone Z: one of its outlines has fewer than three corners; "},
      {"areas in GPX", "z.gpx", gpx(""), kZones, "z.gpx: a GPX file holds no areas; "},
      {"a mark on no trail", "m.geojson", mark_said(R"("name": "M", "kind": "gate")"), kMarks,
       "m.geojson: mark M: it does not say on which trail it lies; "},
      {"a mark on an unknown trail", "m.geojson",
       mark_said(R"("name": "M", "kind": "gate", "trail": "North Bowel")"), kMarks,
       "m.geojson: mark M: there is no trail North Bowel to lie on; did you mean North Bowl?"},
      {"a mark far from its trail", "m.geojson",
       geojson({feature({"Point", "[-153.01, 46.005]",
                         R"("name": "M", "kind": "gate", "trail": "North Bowl")"})}),
       kMarks, "away from its trail North Bowl; "},
      {"a stretch that leaves its trail for another place on it", "m.geojson",
       geojson({feature({"LineString", "[[-153, 46.001], [-153.0003, 46.002]]",
                         R"("name": "M", "kind": "bench", "trail": "North Bowl",
                            "surveyed": "yesterday")"})}),
       kMarks, "m.geojson: mark M: surveyed is \"yesterday\" and counts as not given; ", 1},
      {"a pair said twice", "t.gpx",
       gpx(R"(<rte><name>T</name><desc>lanes=1; lanes=2</desc><rtept lat="46" lon="-153"/>)"
           R"(<rtept lat="46.1" lon="-153"/></rte>)"),
       kTrails, "t.gpx: trail T: lanes is \"1 and 2\" and counts as not given; ", 1},
      {"a key misspelt", "t.gpx",
       gpx(R"(<rte><name>T</name><desc>groomd=yes</desc><rtept lat="46" lon="-153"/>)"
           R"(<rtept lat="46.1" lon="-153"/></rte>)"),
       kTrails, "t.gpx: trail T: groomd is not known and not read; did you mean groomed?", 1},
      {"a track with a gap", "t.gpx",
       gpx(R"(<trk><name>T</name><trkseg><trkpt lat="46" lon="-153"/><trkpt lat="46.1" lon="-153"/>)"
           R"(</trkseg><trkseg><trkpt lat="46.2" lon="-153"/><trkpt lat="46.3" lon="-153"/>)"
           R"(</trkseg></trk>)"),
       kTrails, "t.gpx: trail T: its part 2 does not begin where part 1 ends; "},
      {"GPX cut short", "t.gpx",
       gpx(R"(<rte><name>T</name><rtept lat="46" lon="-153"/>)").substr(0, 110), kTrails,
       "t.gpx: this is no vector file of a known kind or it is damaged; "},
  };
}

}  // namespace

TEST_CASE("each broken file gets its one clear line, and only what is whole is kept") {
  for (const Broken& broken : broken_files()) {
    CAPTURE(broken.what);
    const TempFolder folder;
    if (broken.name != "none.geojson") {
      folder.write(broken.name, broken.text);
    }
    const Heard heard = broken.read({folder.path(), broken.name});
    INFO(heard.lines);
    CHECK(holds(heard.lines, broken.line));
    CHECK(heard.kept == broken.kept);
  }
  CHECK(broken_files().size() >= 25);
}

TEST_CASE("a Shapefile without its .prj does not say what its coordinates mean") {
  const TempFolder folder;
  folder.write("t.geojson", geojson({line_feature(R"("name": "T")")}));
  convert({folder.file("t.geojson"), folder.file("t.shp")}, {"-f", "ESRI Shapefile"});
  CHECK(kTrails({folder.path(), "t.shp"}).kept == 1);
  std::filesystem::remove(folder.file("t.prj"));
  const Heard heard = kTrails({folder.path(), "t.shp"});
  CHECK(heard.kept == 0);
  CHECK(holds(heard.lines,
              "t.shp: it does not say what its coordinates mean; store its coordinate "
              "system with it (a Shapefile needs its .prj beside it)"));
}

TEST_CASE("a datum without a known tie to the map frame is refused, not guessed") {
  const TempFolder folder;
  folder.write("t.geojson", geojson({line_feature(R"("name": "T")")}));
  convert({folder.file("t.geojson"), folder.file("t.shp")}, {"-f", "ESRI Shapefile"});
  folder.write("t.prj", R"(GEOGCS["Old survey",DATUM["Nobody_knows",SPHEROID["Old",6377000,300]],)"
                        R"(PRIMEM["Greenwich",0],UNIT["Degree",0.0174532925199433]])");
  const Heard heard = kTrails({folder.path(), "t.shp"});
  CHECK(heard.kept == 0);
  CHECK(holds(heard.lines,
              "t.shp: no exact operation is installed from Old survey to the map "
              "frame WGS 84 / UTM zone 5N; "));
}

TEST_CASE("several layers that could be meant are refused with the name to give") {
  const TempFolder folder;
  folder.write("t.geojson", geojson({line_feature(R"("name": "T")")}));
  convert({folder.file("t.geojson"), folder.file("s.gpkg")}, {"-f", "GPKG", "-nln", "summer"});
  convert({folder.file("t.geojson"), folder.file("s.gpkg")}, {"-nln", "winter"});
  const Heard heard = kTrails({folder.path(), "s.gpkg"});
  CHECK(heard.kept == 0);
  CHECK(holds(heard.lines,
              "s.gpkg: several of its layers could be the trails; name one of its "
              "layers trails"));
}

TEST_CASE("a link, a name outside the folder and a name of another kind are refused") {
  const TempFolder folder;
  const TempFolder other;
  other.write("t.geojson", geojson({line_feature(R"("name": "T")")}));
  std::filesystem::create_symlink(other.file("t.geojson"), folder.file("t.geojson"));
  CHECK(kTrails({folder.path(), "t.geojson"}).kept == 0);
  CHECK(kTrails({folder.path(),
                 "../" + std::filesystem::path{other.path()}.filename().string() + "/t.geojson"})
            .kept == 0);
  CHECK(kTrails({folder.path(), "/vsicurl/http://127.0.0.1/t.geojson"}).kept == 0);
  CHECK(kTrails({other.path(), "t.geojson"}).kept == 1);
}

TEST_CASE("a Shapefile that is not UTF-8 and does not say so has its garbled name told") {
  const TempFolder folder;
  folder.write("t.geojson", geojson({line_feature(R"("name": "Gräben")")}));
  convert({folder.file("t.geojson"), folder.file("t.shp")},
          {"-f", "ESRI Shapefile", "-lco", "ENCODING=ISO-8859-1"});
  std::filesystem::remove(folder.file("t.cpg"));
  const Heard heard = kTrails({folder.path(), "t.shp"});
  CHECK(heard.kept == 0);
  CHECK(holds(heard.lines, "name is not UTF-8; "));
}

TEST_CASE(
    "a file that that breaks off after its first trails is told of once, and nothing of it is "
    "kept") {
  const TempFolder folder;
  std::string inside;
  for (int i = 0; i < 400; ++i) {
    const std::string name = "<rte><name>T" + std::to_string(i) + "</name>";
    inside += name + R"(<rtept lat="46" lon="-153"/><rtept lat="46.1" lon="-153"/></rte>)";
  }
  folder.write("t.gpx", gpx(inside + "<rte><name>U</rte>"));
  const Heard heard = kTrails({folder.path(), "t.gpx"});
  INFO(heard.lines.substr(0, 500));
  CHECK(heard.kept == 0);
  CHECK(std::ranges::count(heard.lines, '\n') == 1);
  CHECK(holds(heard.lines, "t.gpx: it cannot be read to its end ("));
}

TEST_CASE("everything wrong in one file is told in one pass") {
  const TempFolder folder;
  folder.write("t.geojson",
               geojson({line_feature(R"("name": "A", "lanes": 0, "width_m": -1, "widht_m": 2)"),
                        line_feature(R"("name": "A")"), line_feature(R"("lanes": 1)"),
                        feature({"LineString", "[[46, -153], [46, -153.1]]", R"("name": "B")"})}));
  const Heard heard = kTrails({folder.path(), "t.geojson"});
  INFO(heard.lines);
  for (const char* words : {"lanes is \"0\"", "width_m is \"-1\"", "did you mean width_m",
                            "used twice", "it has no name", "trail B: it cannot be brought"}) {
    CAPTURE(words);
    CHECK(holds(heard.lines, words));
  }
}
