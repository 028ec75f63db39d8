// Ways over open ground become trails of the network, joined to it where they begin and end.
#include "trails/open_ways.h"

#include <doctest/doctest.h>

#include <string>
#include <utility>
#include <vector>

#include "near.h"

namespace rimehaul::trails {

namespace {

using geo::MapPoint;
using testing::near;
using units::Metres;

MapPoint at(double east, double north) {
  return {Metres{500'000 + east}, Metres{5'100'000 + north}};
}

Trail trail_of(const std::string& name, std::vector<MapPoint> points) {
  return {.name = name,
          .line = geo::Polyline{std::move(points)},
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

/// Two trails 100 m apart, both 300 m to the north; a hut at the foot of the second.
Network two_trails() {
  return make_network(
      {trail_of("West", {at(0, 0), at(0, 300)}), trail_of("East", {at(100, 0), at(100, 300)})},
      {{.name = "Hut", .kind = {}, .place = at(100, 0), .turning_radius = {}}}, {},
      {{.name = "gate",
        .kind = MarkKind::gate,
        .trail = "East",
        .span = {Metres{200}, Metres{200}},
        .survey = {},
        .most_mass = {},
        .room = {}}},
      {Cut{0, Metres{0}, at(0, 0), {}}, Cut{0, Metres{300}, at(0, 300), {}},
       Cut{1, Metres{0}, at(100, 0), 0}, Cut{1, Metres{300}, at(100, 300), {}}});
}

}  // namespace

TEST_CASE("a way over open ground is a trail after the others, and cuts those it joins") {
  const Network before = two_trails();
  const Network network =
      joined_with(before, {{trail_of("over", {at(0, 120), at(50, 130), at(100, 150)}),
                            {0, Metres{120}},
                            {1, Metres{150}}}});
  REQUIRE(network.trails.size() == 3);
  CHECK(network.trails[2].name == "over");
  CHECK(network.marks.size() == before.marks.size());
  CHECK(network.junctions.size() == 6);
  REQUIRE(network.legs.size() == 10);
  const Leg& over = network.legs[8];
  CHECK(over.trail == 2);
  CHECK(network.junctions[static_cast<std::size_t>(over.from)].place == at(0, 120));
  CHECK(network.junctions[static_cast<std::size_t>(over.to)].place == at(100, 150));
  CHECK(over.from == network.legs[0].to);
  CHECK(over.to == network.legs[4].to);
  CHECK(near(network.legs[0].line.length(), Metres{120}, Metres{1e-9}));
  CHECK(near(network.legs[6].line.length(), Metres{150}, Metres{1e-9}));
  CHECK(network.junction_of(0) == network.legs[4].from);
}

TEST_CASE("a way that begins where trails are cut already makes no new junction there") {
  const Network network =
      joined_with(two_trails(),
                  {{trail_of("one", {at(0, 300), at(100, 0)}), {0, Metres{300}}, {1, Metres{0}}},
                   {trail_of("two", {at(0, 120), at(100, 0)}), {0, Metres{120}}, {1, Metres{0}}}});
  CHECK(network.junctions.size() == 5);
  CHECK(network.legs.size() == 10);
  REQUIRE(network.junction_of(0).has_value());
  CHECK(network.legs[6].to == *network.junction_of(0));
  CHECK(network.legs[8].to == *network.junction_of(0));
}

TEST_CASE("without ways the network stays what it was") {
  const Network before = two_trails();
  const Network after = joined_with(before, {});
  CHECK(after.legs.size() == before.legs.size());
  CHECK(after.junctions.size() == before.junctions.size());
}

}  // namespace rimehaul::trails
