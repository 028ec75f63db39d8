// The route for a hand-held device: valid, and without invented heights.
#include "ports/gdal/gpx.h"

#include <doctest/doctest.h>
#include <ogr_api.h>

#include <cmath>
#include <cstdlib>
#include <string>
#include <utility>
#include <vector>

#include "base/require.h"
#include "near.h"
#include "ports/gdal/layer_maker.h"

using rimehaul::base::OurFault;
using rimehaul::geo::Height;
using rimehaul::ports::gdal::Feature;
using rimehaul::ports::gdal::gpx_text;
using rimehaul::ports::gdal::GpxPoint;
using rimehaul::ports::gdal::GpxRoute;
using rimehaul::ports::gdal::read_trails;
using rimehaul::testing::holds;
using rimehaul::testing::near;
using rimehaul::testing::TempFolder;
using rimehaul::testing::test_frame;

namespace {

GpxRoute some_route() {
  return {.name = "Cable House to Fell Lodge",
          .description = "Heights above mean sea level. A planning aid, not permission.",
          .waypoints = {{{46.0, -153.0}, Height{900.25}, "Cable House", "check brakes"},
                        {{46.005, -153.001}, {}, "gate", ""},
                        {{46.01, -153.0}, Height{-1.5}, "Fell Lodge", "park on the bench"}},
          .track = {{{46.0, -153.0}, Height{900.25}, "", ""},
                    {{46.0025, -153.0005}, {}, "", ""},
                    {{46.005, -153.001}, Height{std::nan("")}, "", ""},
                    {{46.01, -153.0}, Height{0.0}, "", ""}}};
}

struct Check {
  std::string schema;
  std::string file;
};

/// Whether a file is valid under a schema, by libxml2's own program.
bool is_valid(const Check& check) {
  const std::string command =
      "xmllint --noout --nonet --schema '" + check.schema + "' '" + check.file + "' 2>/dev/null";
  return std::system(command.c_str()) == 0;
}

const std::string kOurs = std::string{RIMEHAUL_ROOT} + "/tests/ports/gdal/gpx11-structure.xsd";

/// The published schema; tests/run.sh fetches it and says where. Run alone, this program skips it.
std::string published_schema() {
  const char* path = std::getenv("RIMEHAUL_GPX11_XSD");
  return path == nullptr ? "" : path;
}

/// All features of one layer of a GPX file, opened apart from the writer.
std::vector<Feature> features_in(const std::string& path, const char* layer_name) {
  rimehaul::ports::gdal::start_gdal();
  const rimehaul::ports::gdal::Dataset dataset{
      GDALOpenEx(path.c_str(), GDAL_OF_VECTOR, nullptr, nullptr, nullptr)};
  REQUIRE(dataset != nullptr);
  OGRLayerH layer = GDALDatasetGetLayerByName(dataset.get(), layer_name);
  REQUIRE(layer != nullptr);
  std::vector<Feature> features;
  while (Feature feature{OGR_L_GetNextFeature(layer)}) {
    features.push_back(std::move(feature));
  }
  return features;
}

bool has_height(const Feature& feature) {
  return OGR_F_IsFieldSetAndNotNull(feature.get(), OGR_F_GetFieldIndex(feature.get(), "ele")) != 0;
}

double height_of(const Feature& feature) {
  return OGR_F_GetFieldAsDouble(feature.get(), OGR_F_GetFieldIndex(feature.get(), "ele"));
}

std::string text_of(const Feature& feature, const char* column) {
  return OGR_F_GetFieldAsString(feature.get(), OGR_F_GetFieldIndex(feature.get(), column));
}

}  // namespace

TEST_CASE("a route file has the element structure of GPX 1.1, and a misplaced element is noticed") {
  const TempFolder folder;
  const std::string path = folder.file("route.gpx");
  folder.write("route.gpx", gpx_text(some_route()));
  CHECK(is_valid({kOurs, path}));
  // The check itself can fail: a description before the name is out of order.
  std::string text = folder.read("route.gpx");
  const std::size_t place = text.find("<rte>") + 5;
  folder.write("bad.gpx", text.insert(place, "<desc>too early</desc>"));
  CHECK_FALSE(is_valid({kOurs, folder.file("bad.gpx")}));
}

TEST_CASE("a route file is valid under the published schema of GPX 1.1" *
          doctest::skip(published_schema().empty())) {
  const TempFolder folder;
  const std::string path = folder.file("route.gpx");
  folder.write("route.gpx", gpx_text(some_route()));
  CHECK(is_valid({published_schema(), path}));
}

TEST_CASE("what was written comes back: places, names, notes, and heights only where known") {
  const TempFolder folder;
  const std::string path = folder.file("route.gpx");
  folder.write("route.gpx", gpx_text(some_route()));
  const auto track = features_in(path, "track_points");
  REQUIRE(track.size() == 4);
  CHECK(has_height(track[0]));
  CHECK(near(height_of(track[0]), 900.25, 1e-9));
  CHECK_FALSE(has_height(track[1]));
  CHECK_FALSE(has_height(track[2]));
  CHECK(has_height(track[3]));
  CHECK(height_of(track[3]) == 0.0);
  OGRGeometryH geometry = OGR_F_GetGeometryRef(track[1].get());
  CHECK(near(OGR_G_GetX(geometry, 0), -153.0005, 1e-9));
  CHECK(near(OGR_G_GetY(geometry, 0), 46.0025, 1e-9));
  for (const char* layer : {"route_points", "waypoints"}) {
    CAPTURE(layer);
    const auto points = features_in(path, layer);
    REQUIRE(points.size() == 3);
    CHECK(text_of(points[0], "name") == "Cable House");
    CHECK(text_of(points[0], "desc") == "check brakes");
    CHECK_FALSE(has_height(points[1]));
    CHECK(near(height_of(points[2]), -1.5, 1e-9));
  }
  for (const char* layer : {"routes", "tracks"}) {
    CAPTURE(layer);
    const auto whole = features_in(path, layer);
    REQUIRE(whole.size() == 1);
    CHECK(text_of(whole[0], "name") == "Cable House to Fell Lodge");
    CHECK(text_of(whole[0], "desc") == some_route().description);
  }
}

TEST_CASE("words that XML would choke on arrive as they were meant") {
  const TempFolder folder;
  GpxRoute route = some_route();
  route.name = "Ridge <A> & \"B\" → Üp";
  route.description = "first\nsecond\x01";
  route.waypoints[0].note = "a]]>b & c";
  const std::string path = folder.file("route.gpx");
  folder.write("route.gpx", gpx_text(route));
  CHECK(is_valid({kOurs, path}));
  const auto routes = features_in(path, "routes");
  REQUIRE(routes.size() == 1);
  CHECK(text_of(routes[0], "name") == route.name);
  CHECK(text_of(routes[0], "desc") == "first second ");
  CHECK(text_of(features_in(path, "route_points")[0], "desc") == "a]]>b & c");
}

TEST_CASE("a point off the globe, or unknown, is our own fault") {
  for (const double latitude : {90.001, -90.001, std::nan("")}) {
    GpxRoute route = some_route();
    route.track[1].place.latitude_deg = latitude;
    CHECK_THROWS_AS((void)gpx_text(route), OurFault);
  }
  const TempFolder folder;
  GpxRoute edge = some_route();
  edge.track[1].place = {90.0, 180.0};
  folder.write("route.gpx", gpx_text(edge));
  CHECK(is_valid({kOurs, folder.file("route.gpx")}));
}

TEST_CASE("the same route gives the same file to the last byte") {
  const std::string text = gpx_text(some_route());
  CHECK(text == gpx_text(some_route()));
  CHECK_FALSE(holds(text, "GDAL"));
}
