// Networks of random trails: every leg touches its junctions, nothing is lost, and GEOS's own
// noding agrees on how many pieces there are.
#include <doctest/doctest.h>
#include <geos_c.h>

#include <cmath>
#include <cstddef>
#include <map>
#include <numbers>
#include <random>
#include <string>
#include <utility>
#include <vector>

#include "near.h"
#include "ports/geos/geos_handles.h"
#include "ports/geos/noding.h"
#include "ports/geos/trail_builders.h"

using rimehaul::geo::MapPoint;
using rimehaul::ports::geos::Context;
using rimehaul::ports::geos::Geometry;
using rimehaul::ports::geos::NetworkParts;
using rimehaul::ports::geos::node_network;
using rimehaul::testing::count_of;
using rimehaul::testing::near;
using rimehaul::testing::spot;
using rimehaul::testing::station_at;
using rimehaul::testing::trail_through;
using rimehaul::trails::Leg;
using rimehaul::trails::Network;
using rimehaul::trails::Trail;
using rimehaul::trails::Way;
using rimehaul::units::Metres;

namespace {

/// A trail of 40 steps of some 30 m each that wanders off in one direction.
Trail wiggly_trail(std::mt19937& chance, int number) {
  std::uniform_real_distribution<double> place{-400, 400};
  std::uniform_real_distribution<double> whole{0, 2 * std::numbers::pi};
  std::normal_distribution<double> turn{0, 0.4};
  std::vector<MapPoint> points;
  double east = place(chance);
  double north = place(chance);
  double heading = whole(chance);
  for (int i = 0; i < 40; ++i) {
    points.push_back(spot(east, north));
    heading += turn(chance);
    east += 30 * std::cos(heading);
    north += 30 * std::sin(heading);
  }
  return trail_through("wiggly " + std::to_string(number), std::move(points));
}

std::vector<Trail> wiggly_trails(unsigned seed) {
  std::mt19937 chance{seed};
  std::vector<Trail> trails;
  for (int i = 0; i < 20; ++i) {
    trails.push_back(wiggly_trail(chance, i));
  }
  return trails;
}

/// Pieces into which GEOS's own noding cuts the lines, each at every meeting.
int pieces_by_geos(const std::vector<Trail>& trails) {
  const Context context;
  std::vector<GEOSGeometry*> lines;
  for (const Trail& trail : trails) {
    const auto points = trail.line.points();
    GEOSCoordSequence* sequence =
        GEOSCoordSeq_create_r(context.get(), static_cast<unsigned>(points.size()), 2);
    for (unsigned i = 0; i < points.size(); ++i) {
      GEOSCoordSeq_setXY_r(context.get(), sequence, i, points[i].east.value(),
                           points[i].north.value());
    }
    lines.push_back(GEOSGeom_createLineString_r(context.get(), sequence));
  }
  const Geometry all = context.own(GEOSGeom_createCollection_r(
      context.get(), GEOS_MULTILINESTRING, lines.data(), static_cast<unsigned>(lines.size())));
  const Geometry noded = context.own(GEOSNode_r(context.get(), all.get()));
  REQUIRE(noded != nullptr);
  return GEOSGetNumGeometries_r(context.get(), noded.get());
}

/// Crossings of segments counted one by one by the signs of four triangles.
int crossings_by_hand(const std::vector<Trail>& trails) {
  struct Piece {
    MapPoint from;
    MapPoint to;
    std::size_t number;
  };
  std::vector<Piece> pieces;
  for (const Trail& trail : trails) {
    for (std::size_t i = 0; i < trail.line.segment_count(); ++i) {
      pieces.push_back({trail.line.points()[i], trail.line.points()[i + 1], pieces.size()});
    }
  }
  const auto side = [](const Piece& piece, MapPoint place) {
    const double east = (piece.to.east - piece.from.east).value();
    const double north = (piece.to.north - piece.from.north).value();
    return east * (place.north - piece.from.north).value() -
               north * (place.east - piece.from.east).value() >
           0;
  };
  int crossings = 0;
  for (const Piece& one : pieces) {
    for (const Piece& other : pieces) {
      const bool are_neighbours = one.to == other.from || other.to == one.from;
      if (one.number < other.number && !are_neighbours &&
          side(one, other.from) != side(one, other.to) &&
          side(other, one.from) != side(other, one.to)) {
        ++crossings;
      }
    }
  }
  return crossings;
}

}  // namespace

TEST_CASE("random trails: every leg ends at its junctions and each trail's legs add up to it") {
  for (const unsigned seed : {1U, 2U, 3U}) {
    CAPTURE(seed);
    NetworkParts parts;
    parts.trails = wiggly_trails(seed);
    const Network network = node_network(parts, Metres{2}).data;
    REQUIRE(network.trails.size() == 20);
    std::vector<double> lengths(network.trails.size(), 0.0);
    for (const Leg& leg : network.legs) {
      const auto from = static_cast<std::size_t>(leg.from);
      const auto to = static_cast<std::size_t>(leg.to);
      CHECK(leg.line.points().front() == network.junctions[from].place);
      CHECK(leg.line.points().back() == network.junctions[to].place);
      CHECK(near(leg.line.length(), leg.span.to - leg.span.from, Metres{1e-6}));
      lengths[leg.trail] += leg.way == Way::as_drawn ? leg.line.length().value() : 0.0;
    }
    for (std::size_t i = 0; i < lengths.size(); ++i) {
      CHECK(near(lengths[i], network.trails[i].line.length().value(), 1e-6));
    }
  }
}

TEST_CASE("random trails without snapping: as many pieces and crossings as other ways count") {
  for (const unsigned seed : {1U, 2U, 3U, 4U, 5U}) {
    CAPTURE(seed);
    NetworkParts parts;
    parts.trails = wiggly_trails(seed);
    const Network network = node_network(parts, Metres{0}).data;
    CHECK(static_cast<int>(network.legs.size()) == 2 * pieces_by_geos(parts.trails));
    const int crossings = crossings_by_hand(parts.trails);
    CHECK(crossings > 20);
    CHECK(static_cast<int>(network.junctions.size()) == crossings + 40);
  }
}

TEST_CASE("tangles smaller than the tolerance break no promise: refused or noded, never half") {
  for (unsigned seed = 1; seed <= 400; ++seed) {
    CAPTURE(seed);
    std::mt19937 chance{seed};
    std::uniform_real_distribution<double> place{0, seed % 2 == 0 ? 8.0 : 40.0};
    NetworkParts parts;
    for (int i = 0; i < 5; ++i) {
      std::vector<MapPoint> points;
      for (int j = 0; j < 4; ++j) {
        points.push_back(spot(place(chance), place(chance)));
      }
      parts.trails.push_back(trail_through("t" + std::to_string(i), std::move(points)));
      parts.stations.push_back(
          station_at("s" + std::to_string(i), spot(place(chance), place(chance))));
    }
    const auto reading = node_network(parts, Metres{2});
    const Network& network = reading.data;
    const std::size_t told = count_of(reading.faults, "station s");
    std::size_t joined = 0;
    for (std::size_t i = 0; i < network.stations.size(); ++i) {
      joined += network.junction_of(i).has_value() ? 1 : 0;
    }
    CHECK(joined + told == parts.stations.size());
    std::vector<double> lengths(network.trails.size(), 0.0);
    bool touch = true;
    for (const Leg& leg : network.legs) {
      const auto from = static_cast<std::size_t>(leg.from);
      const auto to = static_cast<std::size_t>(leg.to);
      touch = touch && leg.line.points().front() == network.junctions[from].place &&
              leg.line.points().back() == network.junctions[to].place;
      lengths[leg.trail] += leg.way == Way::as_drawn ? leg.line.length().value() : 0.0;
    }
    CHECK(touch);
    for (std::size_t i = 0; i < lengths.size(); ++i) {
      CHECK(near(lengths[i], network.trails[i].line.length().value(), 0.002));
    }
  }
}

TEST_CASE("noding twice gives the same network to the last bit") {
  NetworkParts parts;
  parts.trails = wiggly_trails(7);
  const Network once = node_network(parts, Metres{2}).data;
  const Network again = node_network(parts, Metres{2}).data;
  REQUIRE(once.junctions.size() == again.junctions.size());
  REQUIRE(once.legs.size() == again.legs.size());
  for (std::size_t i = 0; i < once.junctions.size(); ++i) {
    CHECK(once.junctions[i].place == again.junctions[i].place);
  }
  for (std::size_t i = 0; i < once.legs.size(); ++i) {
    CHECK(once.legs[i].from == again.legs[i].from);
    CHECK(once.legs[i].span == again.legs[i].span);
  }
}

TEST_CASE("a finished network noded again stays as it is") {
  NetworkParts parts;
  parts.trails = wiggly_trails(11);
  const Network once = node_network(parts, Metres{2}).data;
  NetworkParts second;
  second.trails = once.trails;
  const Network again = node_network(second, Metres{2}).data;
  CHECK(again.legs.size() == once.legs.size());
  CHECK(again.junctions.size() == once.junctions.size());
  for (std::size_t i = 0; i < once.trails.size(); ++i) {
    CHECK(near(again.trails[i].line.length(), once.trails[i].line.length(), Metres{1e-6}));
  }
}
