// Where trails meet, where they only seem to, and what is moved to make them meet.
#include "ports/geos/noding.h"

#include <doctest/doctest.h>

#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

#include "near.h"
#include "ports/geos/trail_builders.h"

using rimehaul::base::Fault;
using rimehaul::base::Weight;
using rimehaul::geo::MapPoint;
using rimehaul::geo::Span;
using rimehaul::ports::geos::NetworkParts;
using rimehaul::ports::geos::node_network;
using rimehaul::testing::count_of;
using rimehaul::testing::mark_on;
using rimehaul::testing::near;
using rimehaul::testing::spot;
using rimehaul::testing::station_at;
using rimehaul::testing::trail_through;
using rimehaul::trails::MarkKind;
using rimehaul::trails::Network;
using rimehaul::trails::Way;
using rimehaul::units::Metres;

namespace {

constexpr Metres kSnap{2.0};

/// Two trails that cross at (0, 0), each 200 m long.
NetworkParts cross() {
  NetworkParts parts;
  parts.trails = {trail_through("East", {spot(-100, 0), spot(100, 0)}),
                  trail_through("North", {spot(0, -100), spot(0, 100)})};
  return parts;
}

/// A trail along the east axis and one from the north whose end stays `gap` away from it.
NetworkParts tee(double gap) {
  NetworkParts parts;
  parts.trails = {trail_through("East", {spot(-100, 0), spot(100, 0)}),
                  trail_through("North", {spot(30, gap), spot(30, 100)})};
  return parts;
}

}  // namespace

TEST_CASE("two trails that cross share one junction and become four stretches") {
  const auto reading = node_network(cross(), kSnap);
  const Network& network = reading.data;
  CHECK(network.legs.size() == 8);
  CHECK(network.junctions.size() == 5);
  CHECK(network.legs[0].to == network.legs[4].to);
  CHECK(network.junctions[static_cast<std::size_t>(network.legs[0].to)].place == spot(0, 0));
}

TEST_CASE("a grid of trails has a junction at each crossing, as counted by hand") {
  NetworkParts parts;
  for (int i = 0; i < 6; ++i) {
    const std::string number = std::to_string(i);
    parts.trails.push_back(
        trail_through("row " + number, {spot(-50, 100.0 * i), spot(450, 100.0 * i + 7)}));
  }
  for (int i = 0; i < 5; ++i) {
    const std::string number = std::to_string(i);
    parts.trails.push_back(
        trail_through("column " + number, {spot(100.0 * i, -50), spot(100.0 * i + 3, 600)}));
  }
  const Network network = node_network(parts, kSnap).data;
  // 6 x 5 crossings and 22 loose ends; each row is cut into 6 pieces, each column into 7.
  CHECK(network.junctions.size() == 30 + 22);
  CHECK(network.legs.size() == 2 * (6 * 6 + 5 * 7));
}

TEST_CASE("an end just within the tolerance is moved onto the trail, one just beyond is left") {
  const auto joined = node_network(tee(1.999), kSnap);
  REQUIRE(joined.data.legs.size() == 6);
  CHECK(joined.data.junctions.size() == 4);
  CHECK(joined.data.trails[1].line.points().front() == spot(30, 0));
  CHECK(near(joined.data.trails[1].line.length(), Metres{100}, Metres{1e-9}));

  const auto at_limit = node_network(tee(2.0), kSnap);
  CHECK(at_limit.data.legs.size() == 6);

  const auto left = node_network(tee(2.001), kSnap);
  CHECK(left.data.legs.size() == 4);
  CHECK(left.data.trails[1].line.points().front() == spot(30, 2.001));
  CHECK(count_of(left.faults, "its start meets no trail and no station; East is 2.1 m away") == 1);
}

TEST_CASE("an end drawn a little past the trail it joins is cut back to it") {
  const auto reading = node_network(tee(-1.5), kSnap);
  CHECK(reading.data.legs.size() == 6);
  CHECK(reading.data.trails[1].line.points().front() == spot(30, 0));
  CHECK(near(reading.data.trails[1].line.length(), Metres{100}, Metres{1e-9}));
  // Past it by more than the tolerance it is a crossing with a loose end.
  const auto crossing = node_network(tee(-2.5), kSnap);
  CHECK(crossing.data.legs.size() == 8);
  CHECK(count_of(crossing.faults, "cut into a leg of 2.5 m only") == 1);
}

TEST_CASE("a trail that ends exactly on another makes a junction and nothing moves") {
  NetworkParts parts;
  parts.trails = {trail_through("East", {spot(-100, 0), spot(100, 30)}),
                  trail_through("North", {spot(10, 16.5), spot(0, 100)})};
  const Network network = node_network(parts, kSnap).data;
  CHECK(network.legs.size() == 6);
  CHECK(network.trails[1].line.points().front() == spot(10, 16.5));
}

TEST_CASE("ends near each other meet in one place") {
  NetworkParts parts;
  parts.trails = {trail_through("A", {spot(-100, 0), spot(0, 0)}),
                  trail_through("B", {spot(1, 0.5), spot(100, 0)}),
                  trail_through("C", {spot(0, -1.5), spot(0, -100)})};
  const auto reading = node_network(parts, kSnap);
  CHECK(reading.data.junctions.size() == 4);
  const MapPoint meeting = reading.data.trails[0].line.points().back();
  CHECK(reading.data.trails[1].line.points().front() == meeting);
  CHECK(reading.data.trails[2].line.points().front() == meeting);
  CHECK(count_of(reading.faults, "was moved") == 0);
}

TEST_CASE("ends that reach each other only over a third say how far they were moved") {
  NetworkParts parts;
  parts.trails = {trail_through("A", {spot(-100, 0), spot(0, 0)}),
                  trail_through("B", {spot(1.9, 0), spot(100, 0)}),
                  trail_through("C", {spot(3.8, 0), spot(0, -100)}),
                  trail_through("D", {spot(5.7, 0), spot(50, -100)})};
  const auto reading = node_network(parts, kSnap);
  CHECK(reading.data.junctions.size() == 5);
  CHECK(count_of(reading.faults, "its end was moved by 3.8 m") == 1);
}

TEST_CASE("two trails that end near each other beside a third all join it") {
  NetworkParts parts;
  parts.trails = {trail_through("Through", {spot(-100, 0), spot(100, 0)}),
                  trail_through("Up", {spot(0, 1.8), spot(0, 100)}),
                  trail_through("Side", {spot(1, 2.6), spot(50, 100)})};
  const Network network = node_network(parts, kSnap).data;
  CHECK(network.junctions.size() == 5);
  CHECK(network.legs.size() == 8);
  CHECK(network.trails[1].line.points().front() == spot(0, 0));
  CHECK(network.trails[2].line.points().front() == spot(0, 0));
}

TEST_CASE("an end near a crossing of two trails joins the crossing") {
  NetworkParts parts = cross();
  parts.trails.push_back(trail_through("Third", {spot(0.8, 0.6), spot(80, 90)}));
  const Network network = node_network(parts, kSnap).data;
  CHECK(network.trails[2].line.points().front() == spot(0, 0));
  CHECK(network.junctions.size() == 6);
  CHECK(network.legs.size() == 10);
}

TEST_CASE("a trail that crosses itself has a junction there") {
  NetworkParts parts;
  parts.trails = {trail_through(
      "Loop", {spot(0, 0), spot(200, 0), spot(200, 100), spot(100, 100), spot(100, -100)})};
  const Network network = node_network(parts, kSnap).data;
  CHECK(network.junctions.size() == 3);
  CHECK(network.legs.size() == 6);
}

TEST_CASE("a trail that ends at its own start is a loop of one leg") {
  NetworkParts parts;
  parts.trails = {trail_through("Ring", {spot(0, 0), spot(200, 0), spot(200, 100), spot(0, 0)})};
  const auto reading = node_network(parts, kSnap);
  CHECK(reading.data.junctions.size() == 1);
  CHECK(reading.data.legs.size() == 2);
  CHECK(reading.faults.empty());
}

TEST_CASE("a crossing at a bridge is no junction, and says so") {
  NetworkParts parts = cross();
  parts.marks = {mark_on("East", MarkKind::bridge, {Metres{90}, Metres{110}})};
  const auto reading = node_network(parts, kSnap);
  CHECK(reading.data.legs.size() == 4);
  CHECK(reading.data.junctions.size() == 4);
  CHECK(count_of(reading.faults, "it meets North at a bridge") == 1);
  // The same bridge elsewhere leaves the crossing alone; within the tolerance of it, it does not.
  parts.marks = {mark_on("East", MarkKind::bridge, {Metres{102.5}, Metres{120}})};
  CHECK(node_network(parts, kSnap).data.legs.size() == 8);
  parts.marks = {mark_on("East", MarkKind::bridge, {Metres{101.5}, Metres{120}})};
  CHECK(node_network(parts, kSnap).data.legs.size() == 4);
  // A gate there is no bridge.
  parts.marks = {mark_on("East", MarkKind::gate, {Metres{90}, Metres{110}})};
  CHECK(node_network(parts, kSnap).data.legs.size() == 8);
}

TEST_CASE("an end that hangs on a bridge joins nothing, one at the bridge's head does") {
  NetworkParts parts = tee(0.5);
  parts.marks = {mark_on("East", MarkKind::bridge, {Metres{120}, Metres{140}})};
  const auto hanging = node_network(parts, kSnap);
  CHECK(hanging.data.legs.size() == 4);
  CHECK(count_of(hanging.faults, "it ends at the bridge of East") == 1);
  parts.marks = {mark_on("East", MarkKind::bridge, {Metres{130}, Metres{140}})};
  CHECK(node_network(parts, kSnap).data.legs.size() == 6);
}

TEST_CASE("a one-way trail is cut like any other and keeps its word") {
  NetworkParts parts = cross();
  parts.trails[0].direction = rimehaul::trails::AllowedDirection::forward;
  const Network network = node_network(parts, kSnap).data;
  CHECK(network.legs.size() == 8);
  CHECK(network.trails[0].direction == rimehaul::trails::AllowedDirection::forward);
}

TEST_CASE("trails that run over each other are both refused, for it cannot be told which is true") {
  NetworkParts parts = cross();
  parts.trails.push_back(trail_through("Over", {spot(20, 0), spot(60, 0), spot(60, 100)}));
  const auto reading = node_network(parts, kSnap);
  REQUIRE(reading.data.trails.size() == 1);
  CHECK(reading.data.trails.front().name == "North");
  CHECK(reading.data.legs.size() == 2);
  CHECK(count_of(reading.faults, "trail Over: at 0.0 m it runs over East, there at ") == 1);
  CHECK(count_of(reading.faults, "it runs over") == 1);
}

TEST_CASE("a trail drawn there and back over itself is refused") {
  NetworkParts parts;
  parts.trails = {trail_through("Back", {spot(0, 0), spot(100, 0), spot(40, 0), spot(40, 50)})};
  const auto reading = node_network(parts, kSnap);
  CHECK(reading.data.trails.empty());
  CHECK(count_of(reading.faults, "it runs over itself") == 1);
}

TEST_CASE("marks stay where they are on the ground when a trail's start is moved") {
  NetworkParts parts = tee(2.0);
  parts.marks = {mark_on("North", MarkKind::gate, {Metres{50}, Metres{50}}),
                 mark_on("North", MarkKind::bench, {Metres{0}, Metres{98}}),
                 mark_on("East", MarkKind::drop, {Metres{10}, Metres{20}})};
  parts.trails[1] = trail_through("North", {spot(30, 2), spot(30, 10), spot(30, 100)});
  const Network network = node_network(parts, kSnap).data;
  CHECK(near(network.marks[0].span.from, Metres{52}, Metres{1e-9}));
  CHECK(near(network.marks[0].span.to, Metres{52}, Metres{1e-9}));
  CHECK(near(network.marks[1].span.from, Metres{0}, Metres{1e-9}));
  CHECK(near(network.marks[1].span.to, Metres{100}, Metres{1e-9}));
  CHECK(network.marks[2].span == Span{Metres{10}, Metres{20}});
}

TEST_CASE("a name given twice keeps the first trail and says so") {
  NetworkParts parts = cross();
  parts.trails[1].name = "East";
  const auto reading = node_network(parts, kSnap);
  CHECK(reading.data.trails.size() == 1);
  CHECK(count_of(reading.faults, "the name is given twice") == 1);
}

TEST_CASE("a trail that the tolerance would swallow whole is refused") {
  NetworkParts parts;
  parts.trails = {trail_through("A", {spot(-100, 0), spot(0, 0)}),
                  trail_through("Bit", {spot(0.5, 0), spot(1.5, 0)}),
                  trail_through("B", {spot(2, 0), spot(100, 0)})};
  const auto reading = node_network(parts, kSnap);
  CHECK(reading.data.trails.size() == 2);
  CHECK(count_of(reading.faults, "nothing is left of it") >= 1);
  CHECK(reading.data.junctions.size() == 3);
}

TEST_CASE("no trails make an empty network and no trouble") {
  const auto reading = node_network({}, kSnap);
  CHECK(reading.data.legs.empty());
  CHECK(reading.faults.empty());
}
