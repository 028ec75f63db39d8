// The map and the globe against published transverse Mercator values, and each other.
#include "ports/proj/globe.h"

#include <doctest/doctest.h>

#include <cmath>
#include <string>

#include "base/fault.h"
#include "near.h"

using rimehaul::base::BadInput;
using rimehaul::geo::GlobePoint;
using rimehaul::geo::MapFrame;
using rimehaul::geo::MapPoint;
using rimehaul::ports::proj::Globe;
using rimehaul::testing::near;
using rimehaul::units::Metres;

namespace {

MapFrame frame(const std::string& definition) {
  return {.horizontal = definition, .horizontal_name = definition, .vertical_name = ""};
}

MapPoint map(double east, double north) {
  return {Metres{east}, Metres{north}};
}

bool is_at(MapPoint found, double east, double north, double within_m) {
  return near(found.east.value(), east, within_m) && near(found.north.value(), north, within_m);
}

/// Transverse Mercator on Airy's ellipsoid, laid on WGS 84 by a shift of nothing, so that only the
/// projection is tried.
const char* const kAiryMap =
    "BOUNDCRS[SOURCECRS[PROJCRS[\"example\",BASEGEOGCRS[\"example\",DATUM[\"example\","
    "ELLIPSOID[\"Airy 1830\",6377563.396,299.32496]],CS[ellipsoidal,2],AXIS[\"latitude\",north],"
    "AXIS[\"longitude\",east],ANGLEUNIT[\"degree\",0.0174532925199433]],CONVERSION[\"example\","
    "METHOD[\"Transverse Mercator\",ID[\"EPSG\",9807]],"
    "PARAMETER[\"Latitude of natural origin\",49,ANGLEUNIT[\"degree\",0.0174532925199433]],"
    "PARAMETER[\"Longitude of natural origin\",-2,ANGLEUNIT[\"degree\",0.0174532925199433]],"
    "PARAMETER[\"Scale factor at natural origin\",0.9996013],"
    "PARAMETER[\"False easting\",400000,LENGTHUNIT[\"metre\",1]],"
    "PARAMETER[\"False northing\",-100000,LENGTHUNIT[\"metre\",1]]],"
    "CS[Cartesian,2],AXIS[\"easting\",east],AXIS[\"northing\",north],LENGTHUNIT[\"metre\",1]]],"
    "TARGETCRS[GEOGCRS[\"WGS 84\",DATUM[\"World Geodetic System 1984\","
    "ELLIPSOID[\"WGS 84\",6378137,298.257223563]],CS[ellipsoidal,2],AXIS[\"latitude\",north],"
    "AXIS[\"longitude\",east],ANGLEUNIT[\"degree\",0.0174532925199433],ID[\"EPSG\",4326]]],"
    "ABRIDGEDTRANSFORMATION[\"none\",METHOD[\"Geographic2D offsets\",ID[\"EPSG\",9619]],"
    "PARAMETER[\"Latitude offset\",0,ANGLEUNIT[\"degree\",0.0174532925199433]],"
    "PARAMETER[\"Longitude offset\",0,ANGLEUNIT[\"degree\",0.0174532925199433]]]]";

}  // namespace

TEST_CASE("UTM 32N on WGS 84: places as published series give them") {
  // Worked out apart with Krueger's series as Karney gives it (2011, J. Geodesy 85:475-485).
  const Globe globe{frame("EPSG:32632")};
  CHECK(is_at(globe.to_map({46.5, 9.0}), 500000.000, 5149603.362, 0.0006));
  CHECK(is_at(globe.to_map({46.5, 8.0}), 423268.310, 5150089.104, 0.0006));
  const GlobePoint back = globe.to_globe(map(423268.310, 5150089.104));
  CHECK(near(back.latitude_deg, 46.5, 1e-8));
  CHECK(near(back.longitude_deg, 8.0, 1e-8));
}

TEST_CASE("convergence: grid north is true north on the middle meridian, and turns off it") {
  const Globe globe{frame("EPSG:32632")};
  CHECK(near(globe.convergence_deg(globe.to_map({46.5, 9.0})), 0.0, 1e-6));
  // Krueger's series (Karney 2011): -0.725410 degrees at 46.5 N 8 E.
  CHECK(near(globe.convergence_deg(globe.to_map({46.5, 8.0})), -0.725410, 2e-6));
  CHECK(near(globe.convergence_deg(globe.to_map({46.5, 10.0})), 0.725410, 2e-6));
}

TEST_CASE("the transverse Mercator example of EPSG Guidance Note 7-2, method 9807, comes out") {
  // 50 30 N, 0 30 E gives E 577274.99, N 69740.50. The guidance note states it on its own datum, so
  // the datum is laid on WGS 84 without a shift here.
  const Globe globe{frame(kAiryMap)};
  CHECK(is_at(globe.to_map({50.5, 0.5}), 577274.99, 69740.50, 0.006));
}

TEST_CASE("out and back again comes home to a tenth of a millimetre") {
  const Globe globe{frame("EPSG:32605")};
  for (const MapPoint place : {map(500000, 5100000), map(350000.25, 4900000.5),
                               map(650000.125, 5400000.75), map(500000.001, 10.0)}) {
    const MapPoint back = globe.to_map(globe.to_globe(place));
    CHECK(is_at(back, place.east.value(), place.north.value(), 1e-4));
  }
}

TEST_CASE("a frame with a height part is used for its map alone") {
  const Globe globe{frame("EPSG:32632+5773")};
  CHECK(is_at(globe.to_map({46.5, 8.0}), 423268.310, 5150089.104, 0.0006));
}

TEST_CASE("axes that stand north first in the books are still east and north here") {
  // EPSG:2193 lists northing before easting; its origin is E 1600000, N 10000000 at 0 N 173 E.
  const Globe globe{frame("EPSG:2193")};
  CHECK(is_at(globe.to_map({0.0, 173.0}), 1600000, 10000000, 0.001));
}

TEST_CASE("no accurate way to the globe, no metres or no system at all: bad input, not a guess") {
  const std::string unknown_datum =
      "PROJCS[\"invented\",GEOGCS[\"invented\",DATUM[\"invented\",SPHEROID[\"invented\",6378200,"
      "299]],PRIMEM[\"Greenwich\",0],UNIT[\"degree\",0.0174532925199433]],"
      "PROJECTION[\"Transverse_Mercator\"],PARAMETER[\"latitude_of_origin\",0],"
      "PARAMETER[\"central_meridian\",9],PARAMETER[\"scale_factor\",1],"
      "PARAMETER[\"false_easting\",0],PARAMETER[\"false_northing\",0],UNIT[\"metre\",1]]";
  for (const std::string& definition :
       {unknown_datum, std::string{"EPSG:4326"}, std::string{"EPSG:5773"}, std::string{},
        std::string{"nonsense"}, std::string{"EPSG:99999999"}}) {
    CAPTURE(definition);
    CHECK_THROWS_AS(Globe{frame(definition)}, BadInput);
  }
}

TEST_CASE("a place that is none gives a place that is none") {
  const Globe globe{frame("EPSG:32632")};
  CHECK(std::isnan(globe.to_globe(map(NAN, 5000000)).latitude_deg));
  CHECK(std::isnan(globe.to_map({NAN, 9.0}).east.value()));
  CHECK(std::isnan(globe.convergence_deg(map(NAN, 5000000))));
}
