#include "card/trip_words.h"

#include <doctest/doctest.h>

#include "passage/demo_scene.h"

namespace rimehaul::card {

namespace {

using testing::place;

search::FixedWay along(const trails::Network& network, std::size_t trail, trails::Way way) {
  return {trails::legs_along(network, trail, way)};
}

}  // namespace

TEST_CASE("a trail is named with where it comes from and leads to, as cards name junctions") {
  const trails::Network network = testing::network_of(testing::two_ways());
  const auto lower = along(network, 0, trails::Way::as_drawn);
  CHECK(trail_and_direction(lower, network) == "Lower Way, from Depot to Lodge");
  CHECK(trail_and_direction(search::back_along(lower), network) ==
        "Lower Way, from Lodge to Depot");
  CHECK(places_of(lower, network) == std::vector<std::string>{"Depot", "junction 2", "Lodge"});
  const auto spur = along(network, 3, trails::Way::as_drawn);
  const std::string col = places_of(spur, network).front();
  CHECK(col.starts_with("junction "));
  CHECK(trail_and_direction(spur, network) == "Hut Spur, from " + col + " to Hut");
}

TEST_CASE("a trail that may be driven but one way says so") {
  testing::TestTrails all = testing::straight_trail(0);
  all.trails[0].direction = trails::AllowedDirection::backward;
  const trails::Network network = testing::network_of(all);
  CHECK(trail_and_direction(along(network, 0, trails::Way::against), network) ==
        "Straight, from End to Start (one way)");
}

TEST_CASE("a ring, whose ends are one, is named by how its line is drawn") {
  testing::TestTrails all;
  all.trails = {
      testing::plain_trail("Ring", {place(0, 0), place(100, 0), place(100, 100), place(0, 0)})};
  all.stations = {testing::plain_station("Hut", place(0, 0))};
  const trails::Network network = testing::network_of(all);
  CHECK(trail_and_direction(along(network, 0, trails::Way::as_drawn), network) ==
        "Ring, from Hut round as drawn");
  CHECK(trail_and_direction(along(network, 0, trails::Way::against), network) ==
        "Ring, from Hut round against the drawing");
}

TEST_CASE("of a trip between stations only the stations asked for are told") {
  const trails::Network network = testing::network_of(testing::two_ways());
  CHECK(places_of(day::Stops{{2, 0, 1}}, network) ==
        std::vector<std::string>{"Hut", "Depot", "Lodge"});
}

}  // namespace rimehaul::card
