// Trails, stations and zones from every kind of file that people keep them in.
#include "ports/gdal/layers.h"

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "near.h"
#include "ports/gdal/layer_maker.h"

using rimehaul::base::Reading;
using rimehaul::base::Weight;
using rimehaul::geo::MapFrame;
using rimehaul::geo::MapPoint;
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
using rimehaul::testing::near;
using rimehaul::testing::point_feature;
using rimehaul::testing::TempFolder;
using rimehaul::testing::test_frame;
using rimehaul::trails::AllowedDirection;
using rimehaul::trails::StationKind;
using rimehaul::trails::Trail;
using rimehaul::trails::ZoneKind;
using rimehaul::units::Metres;

namespace {

const char* const kAllSaid =
    R"("name": "Ridge Üp", "direction": "Backward", "width_m": 4.5, "lanes": 1, "groomed": true,
       "skiers": "no", "open_from": "06:30", "open_to": "24:00", "error_m": 1.5, "sight_m": 40,
       "marker_m": 25)";

void check_all_said(const Reading<std::vector<Trail>>& reading) {
  INFO(lines_of(reading.faults));
  REQUIRE(reading.data.size() == 1);
  CHECK(reading.faults.empty());
  const Trail& trail = reading.data.front();
  CHECK(trail.name == "Ridge Üp");
  CHECK(trail.direction == AllowedDirection::backward);
  CHECK(trail.width == Metres{4.5});
  CHECK(trail.lanes == 1);
  CHECK(trail.groomed == true);
  CHECK(trail.shared_with_skiers == false);
  REQUIRE(trail.hours.has_value());
  CHECK(trail.hours->from.minutes == 390);
  CHECK(trail.hours->to.minutes == 1440);
  CHECK(trail.line_error == Metres{1.5});
  CHECK(trail.sight == Metres{40});
  CHECK(trail.marker_spacing == Metres{25});
  CHECK(trail.missing().empty());
  const auto points = trail.line.points();
  REQUIRE(points.size() == 2);
  CHECK(near(points[0].east, Metres{500'000}, Metres{0.001}));
  CHECK(near(points[1].east, Metres{500'000}, Metres{0.001}));
  CHECK(near(trail.line.length(), Metres{1111.0}, Metres{1.0}));
}

/// Length of the meridian from the equator, Snyder (1987) Map Projections: A Working Manual, USGS
/// Professional Paper 1395, equation 3-21, for the WGS 84 ellipsoid; good to well under 1 mm here.
double meridian_m(double latitude_deg) {
  constexpr double kAxis = 6'378'137.0;
  constexpr double kFlattening = 1 / 298.257223563;
  const double e2 = kFlattening * (2 - kFlattening);
  const double e4 = e2 * e2;
  const double e6 = e4 * e2;
  const double phi = latitude_deg * std::numbers::pi / 180;
  return kAxis * ((1 - e2 / 4 - 3 * e4 / 64 - 5 * e6 / 256) * phi -
                  (3 * e2 / 8 + 3 * e4 / 32 + 45 * e6 / 1024) * std::sin(2 * phi) +
                  (15 * e4 / 256 + 45 * e6 / 1024) * std::sin(4 * phi) -
                  (35 * e6 / 3072) * std::sin(6 * phi));
}

}  // namespace

TEST_CASE("a trail of which everything was said is read from GeoJSON whole") {
  const TempFolder folder;
  folder.write("t.geojson", geojson({line_feature(kAllSaid)}));
  const auto reading = read_trails({folder.path(), "t.geojson"}, test_frame());
  check_all_said(reading);
  CHECK(reading.data.front().file == "t.geojson");
}

TEST_CASE("the same trail is read alike from GeoPackage, Shapefile, FlatGeobuf and KML") {
  const TempFolder folder;
  folder.write("t.geojson", geojson({line_feature(kAllSaid)}));
  const std::string source = folder.file("t.geojson");
  convert({source, folder.file("t.gpkg")}, {"-f", "GPKG", "-t_srs", "EPSG:32605"});
  convert({source, folder.file("t.shp")}, {"-f", "ESRI Shapefile", "-t_srs", "EPSG:32605", "-lco",
                                           "ENCODING=UTF-8", "-fieldTypeToString", "Time"});
  convert({source, folder.file("t.fgb")}, {"-f", "FlatGeobuf", "-fieldTypeToString", "Time"});
  convert({source, folder.file("t.kml")}, {"-f", "LIBKML", "-fieldTypeToString", "Time"});
  for (const char* name : {"t.gpkg", "t.shp", "t.fgb", "t.kml"}) {
    CAPTURE(name);
    check_all_said(read_trails({folder.path(), name}, test_frame()));
  }
}

TEST_CASE("coordinates in the map frame pass unchanged, degrees come where the ellipsoid says") {
  const TempFolder folder;
  folder.write("t.geojson", geojson({line_feature(kAllSaid)}));
  const auto reading = read_trails({folder.path(), "t.geojson"}, test_frame());
  REQUIRE(reading.data.size() == 1);
  const auto points = reading.data.front().line.points();
  // On the middle meridian of its zone a UTM northing is 0.9996 of the meridian's length.
  CHECK(near(points[0].north, Metres{0.9996 * meridian_m(46.00)}, Metres{0.001}));
  CHECK(near(points[1].north, Metres{0.9996 * meridian_m(46.01)}, Metres{0.001}));
  convert({folder.file("t.geojson"), folder.file("t.gpkg")},
          {"-f", "GPKG", "-t_srs", "EPSG:32605"});
  const auto same = read_trails({folder.path(), "t.gpkg"}, test_frame());
  REQUIRE(same.data.size() == 1);
  CHECK(near(same.data.front().line.points()[1].north, points[1].north, Metres{1e-6}));
}

TEST_CASE(
    "GPX: routes and tracks are trails, their words are pairs, their elevations are not read") {
  const TempFolder folder;
  folder.write("t.gpx", R"(<?xml version="1.0"?>
<gpx version="1.1" creator="hand" xmlns="http://www.topografix.com/GPX/1/1">
<wpt lat="46.0" lon="-153.0"><name>Hut</name><desc>kind=hut; turning_m=8</desc></wpt>
<rte><name>Route A</name><desc>Steep at first; width_m=4; direction=both</desc>
 <rtept lat="46.0" lon="-153.0"><ele>900</ele></rtept><rtept lat="46.01" lon="-153.0"/></rte>
<trk><name>Track B</name><cmt>lanes=2;groomed=yes</cmt>
 <trkseg><trkpt lat="46.0" lon="-153.01"/><trkpt lat="46.01" lon="-153.01"><ele>0</ele></trkpt></trkseg>
 <trkseg><trkpt lat="46.01" lon="-153.01"/><trkpt lat="46.02" lon="-153.01"/></trkseg></trk>
</gpx>)");
  const auto reading = read_trails({folder.path(), "t.gpx"}, test_frame());
  INFO(lines_of(reading.faults));
  REQUIRE(reading.data.size() == 2);
  CHECK(reading.data[0].name == "Route A");
  CHECK(reading.data[0].width == Metres{4});
  CHECK(reading.data[0].direction == AllowedDirection::both);
  CHECK(reading.data[1].name == "Track B");
  CHECK(reading.data[1].lanes == 2);
  CHECK(reading.data[1].groomed == true);
  CHECK(reading.data[1].line.points().size() == 3);
  // Both are closed for what they do not say, and that is all there is to say of them.
  CHECK(reading.faults.size() == 2);
  CHECK(holds(lines_of(reading.faults),
              "t.gpx: trail Route A: it is closed, because it does not say lanes, groomed"));
  const auto stations = read_stations({folder.path(), "t.gpx"}, test_frame());
  REQUIRE(stations.data.size() == 1);
  CHECK(stations.data.front().name == "Hut");
  CHECK(stations.data.front().kind == StationKind::hut);
  CHECK(stations.data.front().turning_radius == Metres{8});
  CHECK(near(stations.data.front().place.east, Metres{500'000}, Metres{0.001}));
}

TEST_CASE("KML by hand: pairs in the description, folders named after their layer") {
  const TempFolder folder;
  folder.write("s.kml", R"(<?xml version="1.0" encoding="UTF-8"?>
<kml xmlns="http://www.opengis.net/kml/2.2"><Document>
<Folder><name>Stations</name>
 <Placemark><name>Hut</name><description>kind=refuge; turning_m=0</description>
  <Point><coordinates>-153.0,46.0,0</coordinates></Point></Placemark></Folder>
<Folder><name>Trails</name>
 <Placemark><name>North</name><description>width_m=5</description>
  <LineString><coordinates>-153.0,46.0,0 -153.0,46.01,0</coordinates></LineString></Placemark></Folder>
</Document></kml>)");
  const auto trails = read_trails({folder.path(), "s.kml"}, test_frame());
  INFO(lines_of(trails.faults));
  REQUIRE(trails.data.size() == 1);
  CHECK(trails.data.front().width == Metres{5});
  CHECK(trails.faults.size() == 1);
  const auto stations = read_stations({folder.path(), "s.kml"}, test_frame());
  INFO(lines_of(stations.faults));
  REQUIRE(stations.data.size() == 1);
  CHECK(stations.data.front().kind == StationKind::refuge);
  CHECK(stations.data.front().turning_radius == Metres{0});
  CHECK(stations.faults.empty());
}

TEST_CASE("one GeoPackage may hold all layers: the one named as wanted is taken") {
  const TempFolder folder;
  folder.write("t.geojson", geojson({line_feature(R"("name": "Real")")}));
  folder.write("o.geojson", geojson({line_feature(R"("name": "Old")")}));
  folder.write("s.geojson", geojson({point_feature(R"("name": "Hut", "kind": "hut")")}));
  const std::string site = folder.file("site.gpkg");
  convert({folder.file("o.geojson"), site}, {"-f", "GPKG", "-nln", "last_year"});
  convert({folder.file("s.geojson"), site}, {"-nln", "whatever"});
  CHECK(read_trails({folder.path(), "site.gpkg"}, test_frame()).data.front().name == "Old");
  convert({folder.file("t.geojson"), site}, {"-nln", "Trails"});
  CHECK(read_trails({folder.path(), "site.gpkg"}, test_frame()).data.front().name == "Real");
  CHECK(read_stations({folder.path(), "site.gpkg"}, test_frame()).data.front().name == "Hut");
}

TEST_CASE("a Shapefile without a code page is UTF-8, one with a code page is what it says") {
  const TempFolder folder;
  folder.write("t.geojson", geojson({line_feature(R"("name": "Gräben")")}));
  convert({folder.file("t.geojson"), folder.file("t.shp")},
          {"-f", "ESRI Shapefile", "-lco", "ENCODING=UTF-8"});
  std::filesystem::remove(folder.file("t.cpg"));
  CHECK(read_trails({folder.path(), "t.shp"}, test_frame()).data.front().name == "Gräben");
  convert({folder.file("t.geojson"), folder.file("l.shp")},
          {"-f", "ESRI Shapefile", "-lco", "ENCODING=ISO-8859-1"});
  REQUIRE(std::filesystem::exists(folder.file("l.cpg")));
  CHECK(read_trails({folder.path(), "l.shp"}, test_frame()).data.front().name == "Gräben");
}

TEST_CASE("stations: every kind is known, turning room is its radius, 0 or unknown") {
  const TempFolder folder;
  std::vector<std::string> features;
  for (const char* kind : {"lift_station", "hut", "workshop", "fuel", "lodging", "refuge"}) {
    features.push_back(point_feature(std::string{R"("name": ")"} + kind + R"(", "kind": ")" + kind +
                                     R"(", "turning_m": 7)"));
  }
  features.push_back(point_feature(R"("name": "Bare", "kind": "Hut")"));
  folder.write("s.geojson", geojson(features));
  const auto reading = read_stations({folder.path(), "s.geojson"}, test_frame());
  INFO(lines_of(reading.faults));
  REQUIRE(reading.data.size() == 7);
  for (int i = 0; i < 6; ++i) {
    CHECK(reading.data[static_cast<std::size_t>(i)].kind == static_cast<StationKind>(i));
    CHECK(reading.data[static_cast<std::size_t>(i)].turning_radius == Metres{7});
  }
  CHECK_FALSE(reading.data[6].turning_radius.has_value());
}

TEST_CASE("zones: kinds, holes, several polygons of one name, and 36 km/h is 10 m/s") {
  const TempFolder folder;
  const std::string hole =
      "[[[-153.0, 46.0], [-152.9, 46.0], [-152.9, 46.1], [-153.0, 46.1], [-153.0, 46.0]],"
      "[[-152.96, 46.04], [-152.94, 46.04], [-152.94, 46.06], [-152.96, 46.04]]]";
  folder.write("z.geojson",
               geojson({area_feature(R"("name": "Slow", "kind": "speed_limit", "speed_kmh": 36)"),
                        feature({"Polygon", hole, R"("name": "Holed", "kind": "open_ground")"}),
                        feature({"MultiPolygon",
                                 "[" + hole +
                                     ", [[[-153.2, 46.0], [-153.1, 46.0], "
                                     "[-153.1, 46.1], [-153.2, 46.0]]]]",
                                 R"("name": "Two", "kind": "runout")"}),
                        area_feature(R"("name": "Face", "kind": "release_area")")}));
  const auto reading = read_zones({folder.path(), "z.geojson"}, test_frame());
  INFO(lines_of(reading.faults));
  REQUIRE(reading.data.size() == 5);
  REQUIRE(reading.faults.size() == 1);  // of the open ground: nobody said how it is crossed
  CHECK(reading.faults[0].weight == rimehaul::base::Weight::doubt);
  CHECK(reading.faults[0].problem ==
        "no way over it is looked for, because it does not say width_m, lanes, skiers, open_from, "
        "open_to, error_m or visibility_m");
  REQUIRE(reading.data[0].speed.has_value());
  CHECK(near(reading.data[0].speed->value(), 10.0, 1e-12));
  CHECK(reading.data[1].region.rings.size() == 2);
  CHECK(reading.data[2].name == "Two");
  CHECK(reading.data[2].region.rings.size() == 2);
  CHECK(reading.data[3].name == "Two");
  CHECK(reading.data[3].region.rings.size() == 1);
  CHECK(reading.data[4].kind == ZoneKind::release_area);
}

TEST_CASE("open ground says how it is crossed in the words of a trail; other zones are not asked") {
  const TempFolder folder;
  const std::string said =
      R"("width_m": 8, "lanes": 1, "skiers": "yes", "open_from": "07:00", "open_to": "15:00",)"
      R"("error_m": 3, "sight_m": 40, "wind_kmh": 36, "visibility_m": 300)";
  folder.write("z.geojson",
               geojson({area_feature(R"("name": "Moor", "kind": "open_ground", )" + said),
                        area_feature(R"("name": "Face", "kind": "forbidden", )" + said)}));
  const auto reading = read_zones({folder.path(), "z.geojson"}, test_frame());
  INFO(lines_of(reading.faults));
  CHECK(reading.faults.empty());
  REQUIRE(reading.data.size() == 2);
  const rimehaul::trails::OpenGround& moor = reading.data[0].crossing;
  CHECK(moor.missing().empty());
  CHECK(moor.width == Metres{8});
  CHECK(moor.lanes == 1);
  CHECK(moor.shared_with_skiers == true);
  CHECK(moor.hours == rimehaul::trails::OpenHours{{7 * 60}, {15 * 60}});
  CHECK(moor.line_error == Metres{3});
  CHECK(moor.sight == Metres{40});
  REQUIRE(moor.most_wind.has_value());
  CHECK(near(moor.most_wind->value(), 10.0, 1e-12));
  CHECK(moor.least_visibility == Metres{300});
  CHECK(reading.data[1].crossing.missing().size() == 7);
}

TEST_CASE("a zone whose kind cannot be read counts as forbidden, and its name may stand twice") {
  const TempFolder folder;
  folder.write("z.geojson",
               geojson({area_feature(R"("name": "A", "kind": "forbiden")"),
                        area_feature(R"("name": "A", "kind": "runout")"),
                        area_feature(R"("name": "B")"), area_feature(R"("kind": "runout")")}));
  const auto reading = read_zones({folder.path(), "z.geojson"}, test_frame());
  const std::string lines = lines_of(reading.faults);
  INFO(lines);
  REQUIRE(reading.data.size() == 4);
  CHECK(reading.data[0].kind == ZoneKind::forbidden);
  CHECK(reading.data[2].kind == ZoneKind::forbidden);
  CHECK(reading.data[3].name == "zone number 3");
  CHECK(holds(lines, "did you mean forbidden?"));
  CHECK(holds(lines, "zone B: it does not say its kind, and counts as forbidden; "));
  CHECK(holds(lines, "the name is used twice"));
  CHECK(holds(lines, "it has no name"));
}

TEST_CASE("numbers at their limits: a width of 0 is refused, a line error of 0 is not") {
  const TempFolder folder;
  const auto trail_with = [&folder](const std::string& said) {
    folder.write("t.geojson", geojson({line_feature(R"("name": "T", )" + said)}));
    return read_trails({folder.path(), "t.geojson"}, test_frame()).data.front();
  };
  CHECK_FALSE(trail_with(R"("width_m": 0)").width.has_value());
  CHECK(trail_with(R"("width_m": 0.01)").width == Metres{0.01});
  CHECK_FALSE(trail_with(R"("lanes": 0)").lanes.has_value());
  CHECK(trail_with(R"("lanes": 1)").lanes == 1);
  CHECK_FALSE(trail_with(R"("lanes": 1.5)").lanes.has_value());
  CHECK(trail_with(R"("error_m": 0)").line_error == Metres{0});
  CHECK_FALSE(trail_with(R"("error_m": -0.01)").line_error.has_value());
  CHECK_FALSE(trail_with(R"("error_m": "nan")").line_error.has_value());
  CHECK_FALSE(trail_with(R"("error_m": "inf")").line_error.has_value());
  CHECK_FALSE(trail_with(R"("error_m": "2,5")").line_error.has_value());
  CHECK(trail_with(R"("error_m": " 2.5 ")").line_error == Metres{2.5});
  CHECK_FALSE(trail_with(R"("error_m": null)").line_error.has_value());
  CHECK(trail_with(R"("open_from": "07:00", "open_to": "07:00")").hours.has_value());
  CHECK_FALSE(trail_with(R"("open_from": "07:01", "open_to": "07:00")").hours.has_value());
  CHECK_FALSE(trail_with(R"("open_from": "07:00")").hours.has_value());
}

TEST_CASE("yes and no may be Boolean, numbers or words") {
  const TempFolder folder;
  const auto groomed = [&folder](const std::string& said) {
    folder.write("t.geojson", geojson({line_feature(R"("name": "T", "groomed": )" + said)}));
    return read_trails({folder.path(), "t.geojson"}, test_frame()).data.front().groomed;
  };
  for (const char* yes : {"true", "1", R"("yes")", R"("YES")", R"("true")"}) {
    CAPTURE(yes);
    CHECK(groomed(yes) == true);
  }
  for (const char* no : {"false", "0", R"("no")", R"("No")"}) {
    CAPTURE(no);
    CHECK(groomed(no) == false);
  }
  CHECK_FALSE(groomed(R"("mostly")").has_value());
  CHECK_FALSE(groomed("2").has_value());
}
