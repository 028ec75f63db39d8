// Legs from cut trails: pairs, chainages, marks seen from both driving directions.
#include "trails/network.h"

#include <doctest/doctest.h>

#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include "base/require.h"
#include "near.h"

using rimehaul::base::OurFault;
using rimehaul::geo::MapPoint;
using rimehaul::geo::Polyline;
using rimehaul::geo::Span;
using rimehaul::testing::near;
using rimehaul::trails::Cut;
using rimehaul::trails::JunctionId;
using rimehaul::trails::Leg;
using rimehaul::trails::LegId;
using rimehaul::trails::legs_along;
using rimehaul::trails::make_network;
using rimehaul::trails::Mark;
using rimehaul::trails::MarkKind;
using rimehaul::trails::Network;
using rimehaul::trails::opposite_of;
using rimehaul::trails::span_on_leg;
using rimehaul::trails::Station;
using rimehaul::trails::Trail;
using rimehaul::trails::Way;
using rimehaul::units::Metres;

namespace {

MapPoint at(double east, double north) {
  return {Metres{500'000 + east}, Metres{5'100'000 + north}};
}

Trail trail_of(const std::string& name, std::vector<MapPoint> points) {
  return {.name = name,
          .line = Polyline{std::move(points)},
          .direction = {},
          .width = {},
          .lanes = {},
          .groomed = {},
          .shared_with_skiers = {},
          .hours = {},
          .line_error = {},
          .sight = {},
          .marker_spacing = {},
          .file = "t.geojson"};
}

Mark mark_of(const std::string& trail, double from, double to) {
  return {.name = "mark",
          .kind = MarkKind::gate,
          .trail = trail,
          .span = {Metres{from}, Metres{to}},
          .survey = {},
          .most_mass = {},
          .room = {}};
}

/// A trail 300 m north with a bend at 100, crossed at 200 by one 80 m east that has its own ends.
Network crossing(double second_cut = 200.0) {
  std::vector<Trail> trails{trail_of("Up", {at(0, 0), at(0, 100), at(0, 300)}),
                            trail_of("Across", {at(-40, 200), at(40, 200)})};
  std::vector<Station> stations{
      {.name = "Foot Hut", .kind = {}, .place = at(1, 0), .turning_radius = {}}};
  return make_network(
      std::move(trails), std::move(stations), {}, {mark_of("Up", 210, 230)},
      {Cut{1, Metres{80}, at(40, 200), {}}, Cut{0, Metres{0}, at(0, 0), 0},
       Cut{0, Metres{second_cut}, at(0, 200), {}}, Cut{0, Metres{300}, at(0, 300), {}},
       Cut{1, Metres{0}, at(-40, 200), {}}, Cut{1, Metres{40}, at(0, 200), {}}});
}

}  // namespace

TEST_CASE("legs come in pairs that run the same line both ways") {
  const Network network = crossing();
  REQUIRE(network.legs.size() == 8);
  CHECK(network.junctions.size() == 5);
  for (std::uint32_t i = 0; i < network.legs.size(); i += 2) {
    const Leg& drawn = network.legs[i];
    const Leg& back = network.legs[static_cast<std::uint32_t>(opposite_of(LegId{i}))];
    CHECK(drawn.way == Way::as_drawn);
    CHECK(back.way == Way::against);
    CHECK(opposite_of(LegId{i + 1}) == LegId{i});
    CHECK(drawn.from == back.to);
    CHECK(drawn.to == back.from);
    CHECK(drawn.span == back.span);
    CHECK(drawn.line.points().front() == back.line.points().back());
    CHECK(near(drawn.line.length(), back.line.length(), Metres{1e-9}));
  }
}

TEST_CASE("the ends of every leg are its junctions' places, to the last bit") {
  const Network network = crossing(200.0004);
  for (const Leg& leg : network.legs) {
    CHECK(leg.line.points().front() == network.junctions[static_cast<std::size_t>(leg.from)].place);
    CHECK(leg.line.points().back() == network.junctions[static_cast<std::size_t>(leg.to)].place);
  }
}

TEST_CASE("the legs of a trail add up to the trail, bends included") {
  const Network network = crossing();
  CHECK(network.legs[0].span == Span{Metres{0}, Metres{200}});
  CHECK(network.legs[0].line.points().size() == 3);
  CHECK(network.legs[2].span == Span{Metres{200}, Metres{300}});
  CHECK(near(network.legs[0].line.length() + network.legs[2].line.length(), Metres{300},
             Metres{1e-9}));
}

TEST_CASE("cuts nearer than a millimetre are one junction, at a millimetre and more they are two") {
  const auto junctions_with = [](double apart) {
    std::vector<Trail> trails{trail_of("Up", {at(0, 0), at(0, 300)})};
    return make_network(
        std::move(trails), {}, {}, {},
        {Cut{0, Metres{0}, at(0, 0), {}}, Cut{0, Metres{100}, at(0, 100), {}},
         Cut{0, Metres{100 + apart}, at(0, 100 + apart), {}}, Cut{0, Metres{300}, at(0, 300), {}}});
  };
  CHECK(junctions_with(0.0009).junctions.size() == 3);
  CHECK(junctions_with(0.0009).legs.size() == 4);
  CHECK(junctions_with(0.0011).junctions.size() == 4);
  CHECK(junctions_with(0.0011).legs.size() == 6);
}

TEST_CASE("the legs along a trail lead from its one end to the other, either way") {
  const Network network = crossing();
  for (std::size_t trail = 0; trail < network.trails.size(); ++trail) {
    for (const Way way : {Way::as_drawn, Way::against}) {
      const std::vector<LegId> legs = legs_along(network, trail, way);
      REQUIRE_FALSE(legs.empty());
      Metres length{0};
      for (std::size_t i = 0; i < legs.size(); ++i) {
        const Leg& leg = network.legs[static_cast<std::size_t>(legs[i])];
        CHECK(leg.trail == trail);
        CHECK(leg.way == way);
        CHECK((i == 0 || network.legs[static_cast<std::size_t>(legs[i - 1])].to == leg.from));
        length += leg.line.length();
      }
      CHECK(near(length, network.trails[trail].line.length(), Metres{1e-6}));
    }
  }
}

TEST_CASE("a trail that ends where it begins is a leg from a junction to itself") {
  const Network network =
      make_network({trail_of("Round", {at(0, 0), at(50, 0), at(50, 50), at(0, 0)})}, {}, {}, {},
                   {Cut{0, Metres{0}, at(0, 0), {}},
                    Cut{0, Metres{100 + std::hypot(50.0, 50.0)}, at(0, 0), {}}});
  REQUIRE(network.legs.size() == 2);
  CHECK(network.junctions.size() == 1);
  CHECK(network.legs[0].from == network.legs[0].to);
}

TEST_CASE("a trail that is not cut at its end is our own fault and said so") {
  const auto cut_at = [](double end) {
    return make_network({trail_of("Up", {at(0, 0), at(0, 300)})}, {}, {}, {},
                        {Cut{0, Metres{0}, at(0, 0), {}}, Cut{0, Metres{end}, at(0, end), {}}});
  };
  CHECK_THROWS_AS(cut_at(299), OurFault);
  CHECK_NOTHROW(cut_at(300));
  CHECK_THROWS_AS(make_network({trail_of("Up", {at(0, 0), at(0, 300)})}, {}, {}, {}, {}), OurFault);
}

TEST_CASE("a mark stands on the leg that carries it, mirrored for the driver who comes back") {
  const Network network = crossing();
  const Mark& mark = network.marks.front();
  CHECK(span_on_leg(mark, network, network.legs[2]) == Span{Metres{10}, Metres{30}});
  CHECK(span_on_leg(mark, network, network.legs[3]) == Span{Metres{70}, Metres{90}});
  CHECK_FALSE(span_on_leg(mark, network, network.legs[0]).has_value());
  CHECK_FALSE(span_on_leg(mark, network, network.legs[4]).has_value());
}

TEST_CASE("a stretch over a junction is shared out, one that only touches it is not") {
  const Network network = crossing();
  const Mark over = mark_of("Up", 150, 260);
  CHECK(span_on_leg(over, network, network.legs[0]) == Span{Metres{150}, Metres{200}});
  CHECK(span_on_leg(over, network, network.legs[1]) == Span{Metres{0}, Metres{50}});
  CHECK(span_on_leg(over, network, network.legs[2]) == Span{Metres{0}, Metres{60}});
  const Mark up_to = mark_of("Up", 150, 200);
  CHECK(span_on_leg(up_to, network, network.legs[0]).has_value());
  CHECK_FALSE(span_on_leg(up_to, network, network.legs[2]).has_value());
}

TEST_CASE("a gate exactly at a junction closes the legs on both sides") {
  const Network network = crossing();
  const Mark gate = mark_of("Up", 200, 200);
  CHECK(span_on_leg(gate, network, network.legs[0]) == Span{Metres{200}, Metres{200}});
  CHECK(span_on_leg(gate, network, network.legs[2]) == Span{Metres{0}, Metres{0}});
  CHECK(span_on_leg(gate, network, network.legs[3]) == Span{Metres{100}, Metres{100}});
}

TEST_CASE("stations and trails are found by their names, and a station by its junction") {
  const Network network = crossing();
  CHECK(network.trail_named("Across") == 1);
  CHECK_FALSE(network.trail_named("across").has_value());
  CHECK(network.station_named("Foot Hut") == 0);
  REQUIRE(network.junction_of(0).has_value());
  CHECK(network.junctions[static_cast<std::size_t>(*network.junction_of(0))].place == at(0, 0));
  CHECK_FALSE(network.junction_of(1).has_value());
}
