// Room to turn at a junction: which marks of it count, and how much of them.
#include "passage/turning_room.h"

#include <doctest/doctest.h>

#include <cmath>

#include "passage/demo_scene.h"

namespace rimehaul::passage {

namespace {

using testing::place;
using trails::MarkKind;
using units::Metres;

trails::Mark room_on(const char* trail, double from_m, double to_m) {
  trails::Mark mark;
  mark.name = "Loop";
  mark.kind = MarkKind::turning_room;
  mark.trail = trail;
  mark.span = {Metres{from_m}, Metres{to_m}};
  mark.room = Metres{20};
  return mark;
}

/// 300 m to the north, cut in the middle, where a Side Way leaves to the east; no other room.
testing::TestTrails crossing() {
  const geo::MapPoint middle = place(0, 150);
  return {.trails = {testing::plain_trail("Long Way", {place(0, 0), middle, place(0, 300)}),
                     testing::plain_trail("Side Way", {middle, place(100, 150)})},
          .stations = {},
          .zones = {},
          .marks = {}};
}

trails::Network network_with(const trails::Mark& mark) {
  testing::TestTrails all = crossing();
  all.marks = {mark};
  return testing::network_of(all);
}

/// At the crossing, for who comes from the Long Way's start.
double at_crossing(const trails::Mark& mark) {
  const trails::Network network = network_with(mark);
  return turning_room_at(network, network.legs[0].to).value();
}

double to_turn_back(const trails::Mark& mark, std::size_t leg) {
  const trails::Network network = network_with(mark);
  return room_to_turn_back(network, network.legs[leg]).value();
}

TEST_CASE("a room to turn holds around a junction what its distance leaves of it") {
  CHECK(at_crossing(room_on("Long Way", 150, 150)) == 20);
  CHECK(at_crossing(room_on("Long Way", 138, 142)) == 10);
  CHECK(at_crossing(room_on("Side Way", 0, 20)) == 10);
  CHECK(at_crossing(room_on("Long Way", 100, 100)) == 0);
}

TEST_CASE("no other mark is a room to turn, nor one without a size, a place or a trail") {
  trails::Mark mark = room_on("Long Way", 140, 150);
  REQUIRE(to_turn_back(mark, 0) == 20);
  mark.kind = MarkKind::drop;  // its room is a setback
  CHECK(at_crossing(mark) == 0);
  CHECK(to_turn_back(mark, 0) == 0);
  mark = room_on("Long Way", 140, 150);
  mark.room.reset();
  CHECK(at_crossing(mark) == 0);
  CHECK(to_turn_back(mark, 0) == 0);
  mark.room = Metres{std::nan("")};
  CHECK(at_crossing(mark) == 0);
  CHECK(to_turn_back(mark, 0) == 0);
  mark = room_on("Long Way", std::nan(""), std::nan(""));
  CHECK(at_crossing(mark) == 0);
  CHECK(to_turn_back(mark, 0) == 0);
  mark = room_on("Lost Way", 140, 150);
  CHECK(at_crossing(mark) == 0);
  CHECK(to_turn_back(mark, 0) == 0);
}

TEST_CASE("only a room that lies wholly on the leg counts whole for turning back at its end") {
  // Leg 0 ends at the crossing from the south, leg 3 from the north.
  CHECK(to_turn_back(room_on("Long Way", 135, 145), 0) == 20);
  CHECK(to_turn_back(room_on("Long Way", 135, 145), 3) == 10);
  CHECK(to_turn_back(room_on("Long Way", 155, 165), 0) == 10);
  CHECK(to_turn_back(room_on("Long Way", 155, 165), 3) == 20);
  CHECK(to_turn_back(room_on("Long Way", 145, 155), 0) == 20);  // around the crossing itself
  CHECK(to_turn_back(room_on("Long Way", 141, 151), 0) == 16);
  CHECK(to_turn_back(room_on("Side Way", 5, 15), 0) == 10);
}

}  // namespace

}  // namespace rimehaul::passage
