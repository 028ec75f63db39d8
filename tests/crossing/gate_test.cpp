// Gates: where ways over open ground may begin and end.
#include "crossing/gate.h"

#include <doctest/doctest.h>

#include <cmath>

#include "base/require.h"
#include "near.h"
#include "passage/demo_scene.h"

namespace rimehaul::crossing {

namespace {

using testing::near;
using testing::place;
using units::Metres;

geo::Region square(double west, double south, double east, double north) {
  return {{{place(west, south), place(east, south), place(east, north), place(west, north),
            place(west, south)}}};
}

}  // namespace

TEST_CASE("a trail that runs through open ground has gates inside both edges and between") {
  const trails::Network network = testing::network_of(testing::straight_trail(0));  // 300 m north
  const auto gates =
      gates_of(network, square(-50, 40, 50, 260), {.apart = Metres{80}, .inside = Metres{10}});
  REQUIRE(gates.size() == 4);
  for (std::size_t i = 0; i < gates.size(); ++i) {
    const double at = 50 + 200.0 / 3 * static_cast<double>(i);
    CHECK(near(gates[i].where.at, Metres{at}, Metres{0.01}));
    CHECK(geo::distance(gates[i].place, place(0, at)) < Metres{0.01});
    REQUIRE(gates[i].onward.size() == 2);
    CHECK(near(std::abs(gates[i].onward[0].turn_to(gates[i].onward[1])), 180.0, 1e-9));
    CHECK_FALSE(gates[i].at_station);
  }
  CHECK(gates[0].name == "Straight 50 m");
}

TEST_CASE(
    "an end of a trail and a junction in open ground are gates once, with all ways from there") {
  const trails::Network network = testing::network_of(testing::two_ways());
  const auto gates =
      gates_of(network, square(350, 390, 450, 650), {.apart = Metres{1000}, .inside = Metres{5}});
  const auto named = [&](const std::string& name) {
    return std::ranges::find(gates, name, &Gate::name);
  };
  REQUIRE(named("Hut") != gates.end());
  CHECK(named("Hut")->at_station);
  CHECK(named("Hut")->onward.size() == 1);
  const auto col = std::ranges::find(gates, place(400, 420), &Gate::place);
  REQUIRE(col != gates.end());
  CHECK(col->onward.size() == 4);  // Upper Way both ways, Link, Hut Spur
  CHECK(std::ranges::count(gates, place(400, 420), &Gate::place) == 1);
}

TEST_CASE("a corner of open ground that a trail cuts for less than two insets has no gate") {
  const trails::Network network = testing::network_of(testing::straight_trail(0));
  CHECK(gates_of(network, square(-50, 100, 50, 115), {.apart = Metres{80}, .inside = Metres{10}})
            .empty());
  CHECK(gates_of(network, square(10, 0, 50, 300), {.apart = Metres{80}, .inside = Metres{10}})
            .empty());
  CHECK_THROWS_AS((void)gates_of(network, square(10, 0, 50, 300), {Metres{0}, Metres{10}}),
                  base::OurFault);
  CHECK_THROWS_AS((void)gates_of(network, square(10, 0, 50, 300), {Metres{10}, Metres{-1}}),
                  base::OurFault);
}

}  // namespace rimehaul::crossing
