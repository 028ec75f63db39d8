// What ties a printed card to its record, and how its parts share the paper.
#include "card/card_sheet.h"

#include <doctest/doctest.h>

#include "card/sample_card.h"
#include "passage/demo_scene.h"

namespace rimehaul::card {
namespace {

TEST_CASE("a card's number is the local day and hour of leaving and the start of its digest") {
  RouteCard card = testing::sample_card();
  card.depart = *units::parse_instant("2026-02-01T17:30:00Z");
  card.local_clock = units::LocalClock{-600};
  CHECK(number_of(card, "3f9a1c2b00000000") == "20260201-0730-3f9a1c2b");
}

TEST_CASE("each way of the map runs from its leg's first point to the point shared with the next") {
  RouteCard card = testing::sample_card();
  card.legs = {testing::sample_leg(1), testing::sample_leg(2)};
  card.trace.clear();
  for (int i = 0; i < 5; ++i) {
    card.trace.push_back(
        {testing::place(100.0 * i, 0), {}, units::Metres{100.0 * i}, i <= 2 ? 0 : 1});
  }
  const auto ways = ways_of(card);
  REQUIRE(ways.size() == 2);
  CHECK(ways[0].points.size() == 3);
  CHECK(ways[1].points.size() == 3);
  CHECK(ways[0].points.back() == ways[1].points.front());
  CHECK(ways[1].points.back() == testing::place(400, 0));
  CHECK(ways[1].number == 2);
}

}  // namespace
}  // namespace rimehaul::card
