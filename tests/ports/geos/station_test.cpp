// Stations find the trail that reaches them, or say that none does.
#include <doctest/doctest.h>

#include <cstddef>
#include <vector>

#include "ports/geos/noding.h"
#include "ports/geos/trail_builders.h"

using rimehaul::geo::MapPoint;
using rimehaul::ports::geos::NetworkParts;
using rimehaul::ports::geos::node_network;
using rimehaul::testing::count_of;
using rimehaul::testing::spot;
using rimehaul::testing::station_at;
using rimehaul::testing::trail_through;
using rimehaul::trails::Network;
using rimehaul::units::Metres;

namespace {

constexpr Metres kSnap{2.0};

/// One trail 200 m east, and a station.
NetworkParts trail_and_station(MapPoint place) {
  NetworkParts parts;
  parts.trails = {trail_through("East", {spot(0, 0), spot(200, 0)})};
  parts.stations = {station_at("Hut", place)};
  return parts;
}

MapPoint place_of(const Network& network, std::size_t station) {
  const auto junction = network.junction_of(station);
  REQUIRE(junction.has_value());
  return network.junctions[static_cast<std::size_t>(*junction)].place;
}

}  // namespace

TEST_CASE("a station beside a trail cuts it at the nearest place") {
  const auto reading = node_network(trail_and_station(spot(80, 5)), kSnap);
  CHECK(place_of(reading.data, 0) == spot(80, 0));
  CHECK(reading.data.legs.size() == 4);
}

TEST_CASE("a station three tolerances off is reached, a hair farther it is not, and says so") {
  CHECK(node_network(trail_and_station(spot(80, 6.0)), kSnap).data.junction_of(0).has_value());
  const auto reading = node_network(trail_and_station(spot(80, 6.001)), kSnap);
  CHECK_FALSE(reading.data.junction_of(0).has_value());
  CHECK(count_of(reading.faults,
                 "station Hut: no trail reaches the station; the nearest is East, "
                 "6.1 m away, and 6.0 m is the most") == 1);
  CHECK(reading.data.legs.size() == 2);
}

TEST_CASE("a station near the end of a trail takes the end and the end is not dangling") {
  const auto reading = node_network(trail_and_station(spot(198.5, 4)), kSnap);
  CHECK(place_of(reading.data, 0) == spot(200, 0));
  CHECK(reading.data.legs.size() == 2);
  CHECK(count_of(reading.faults, "its end meets no trail") == 0);
  CHECK(count_of(reading.faults, "its start meets no trail") == 1);
}

TEST_CASE("a station beside a crossing takes the crossing") {
  NetworkParts parts = trail_and_station(spot(101, 1));
  parts.trails.push_back(trail_through("North", {spot(100, -100), spot(100, 100)}));
  const Network network = node_network(parts, kSnap).data;
  CHECK(place_of(network, 0) == spot(100, 0));
  CHECK(network.legs.size() == 8);
}

TEST_CASE("two stations near one end: the nearer takes it, the other has its own place") {
  NetworkParts parts = trail_and_station(spot(1.5, 0.5));
  parts.stations.push_back(station_at("Lift", spot(0, 1)));
  const Network network = node_network(parts, kSnap).data;
  CHECK(place_of(network, 1) == spot(0, 0));
  CHECK(place_of(network, 0) == spot(1.5, 0));
}

TEST_CASE("two stations at one place cannot both have it, and it is said which has not") {
  NetworkParts parts = trail_and_station(spot(0, 0));
  parts.stations.push_back(station_at("Fuel", spot(-1, 0)));
  const auto reading = node_network(parts, kSnap);
  CHECK(reading.data.junction_of(0).has_value());
  CHECK_FALSE(reading.data.junction_of(1).has_value());
  CHECK(count_of(reading.faults,
                 "station Fuel: it joins its trail at the same place as station "
                 "Hut") == 1);
}

TEST_CASE("a station without any trail says so") {
  NetworkParts parts;
  parts.stations = {station_at("Hut", spot(0, 0))};
  const auto reading = node_network(parts, kSnap);
  CHECK(count_of(reading.faults, "no trail reaches the station; draw a trail") == 1);
}

TEST_CASE("loose ends are told with what is near them, short legs with where they are") {
  NetworkParts parts = trail_and_station(spot(0, 0));
  parts.stations.push_back(station_at("Lift", spot(200, 0)));
  CHECK(node_network(parts, kSnap).faults.empty());
  parts.stations.push_back(station_at("Near", spot(181, 0)));
  const auto short_leg = node_network(parts, kSnap);
  CHECK(count_of(short_leg.faults,
                 "between 181.0 m and 200.0 m it is cut into a leg of 19.0 m only") == 1);
  parts.stations.back() = station_at("Far", spot(180, 0));
  CHECK(node_network(parts, kSnap).faults.empty());
}
