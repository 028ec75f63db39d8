// Outlines of zones: valid ones pass, forbidden ones are never mended by guesswork.
#include "ports/geos/zones.h"

#include <doctest/doctest.h>

#include <vector>

#include "ports/geos/noding.h"
#include "ports/geos/trail_builders.h"

using rimehaul::base::Weight;
using rimehaul::geo::contains;
using rimehaul::geo::MapPoint;
using rimehaul::ports::geos::NetworkParts;
using rimehaul::ports::geos::node_network;
using rimehaul::ports::geos::valid_zones;
using rimehaul::testing::count_of;
using rimehaul::testing::spot;
using rimehaul::trails::Zone;
using rimehaul::trails::ZoneKind;
using rimehaul::units::Metres;

namespace {

Zone zone_of(ZoneKind kind, std::vector<std::vector<MapPoint>> rings) {
  return {.name = "North Face", .kind = kind, .region = {std::move(rings)}, .speed = {}};
}

std::vector<MapPoint> square(double from, double to) {
  return {spot(from, from), spot(to, from), spot(to, to), spot(from, to), spot(from, from)};
}

/// An outline that crosses itself in the middle, like a bow tie.
std::vector<MapPoint> bow_tie() {
  return {spot(0, 0), spot(100, 100), spot(100, 0), spot(0, 100), spot(0, 0)};
}

}  // namespace

TEST_CASE("a square with a hole passes as it is") {
  const auto reading =
      valid_zones({zone_of(ZoneKind::forbidden, {square(0, 100), square(40, 60)})});
  REQUIRE(reading.data.size() == 1);
  CHECK(reading.faults.empty());
  CHECK(reading.data.front().region.rings.size() == 2);
}

TEST_CASE("a forbidden zone that crosses itself is refused and the whole site told") {
  const auto reading = valid_zones({zone_of(ZoneKind::forbidden, {bow_tie()})});
  CHECK(reading.data.empty());
  REQUIRE(reading.faults.size() == 1);
  CHECK(reading.faults.front().weight == Weight::fault);
  CHECK(count_of(reading.faults, "no trail of the site is known to keep out of it") == 1);
  CHECK(count_of(reading.faults, "Self-intersection") == 1);
}

TEST_CASE("a release area that crosses itself is mended into its two halves, with a doubt") {
  const auto reading = valid_zones({zone_of(ZoneKind::release_area, {bow_tie()})});
  REQUIRE(reading.data.size() == 2);
  REQUIRE(reading.faults.size() == 1);
  CHECK(reading.faults.front().weight == Weight::doubt);
  for (const MapPoint inside : {spot(20, 50), spot(80, 50)}) {
    const bool held =
        contains(reading.data[0].region, inside) || contains(reading.data[1].region, inside);
    CHECK(held);
  }
  for (const MapPoint outside : {spot(50, 20), spot(50, 80)}) {
    CHECK_FALSE(contains(reading.data[0].region, outside));
    CHECK_FALSE(contains(reading.data[1].region, outside));
  }
}

TEST_CASE("a zone without area is refused whatever it is") {
  const std::vector<MapPoint> flat{spot(0, 0), spot(100, 0), spot(50, 0), spot(0, 0)};
  const auto reading = valid_zones({zone_of(ZoneKind::runout, {flat})});
  CHECK(reading.data.empty());
  REQUIRE(reading.faults.size() == 1);
  CHECK(reading.faults.front().weight == Weight::fault);
}

TEST_CASE("a ring that is not closed is refused in one line") {
  const auto reading =
      valid_zones({zone_of(ZoneKind::speed_limit, {{spot(0, 0), spot(9, 0), spot(9, 9)}})});
  CHECK(reading.data.empty());
  CHECK(reading.faults.size() == 1);
}

TEST_CASE("the network carries the mended zones and their faults") {
  NetworkParts parts;
  parts.zones = {zone_of(ZoneKind::runout, {bow_tie()}), zone_of(ZoneKind::forbidden, {bow_tie()}),
                 zone_of(ZoneKind::open_ground, {square(0, 10)})};
  const auto reading = node_network(parts, Metres{2});
  CHECK(reading.data.zones.size() == 3);
  CHECK(reading.faults.size() == 2);
}
