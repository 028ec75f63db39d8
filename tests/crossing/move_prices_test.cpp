#include "crossing/move_prices.h"

#include <doctest/doctest.h>

#include "base/require.h"
#include "crossing/any_ground.h"

using namespace rimehaul::crossing;
using namespace rimehaul::testing;
using rimehaul::base::OurFault;

TEST_CASE("of ground nobody told anything about, every move and every turn is barred") {
  const MovePrices prices = all_barred(lattice_of(3, 2));
  CHECK_NOTHROW(require_sound(prices));
  for (const State& state : states_of(prices.lattice)) {
    CHECK(price_of(prices, state) == 0);
    CHECK_FALSE(may_turn(prices, state.cell, {state.heading, turned(state.heading, 1)}));
  }
}

TEST_CASE("an open move that ends off the lattice is refused, wherever it is") {
  for (const auto& size : {Cell{7, 6}, Cell{3, 9}, Cell{2, 2}, Cell{1, 5}}) {
    const Lattice lattice = lattice_of(size.column, size.row);
    std::size_t refused = 0;
    for (const State& state : states_of(lattice)) {
      MovePrices prices = all_barred(lattice);
      prices.price.at(index_of(lattice, state)) = 1;
      if (holds(lattice, state.cell + step_of(state.heading))) {
        CHECK_NOTHROW(require_sound(prices));
      } else {
        ++refused;
        CHECK_THROWS_AS(require_sound(prices), OurFault);
      }
    }
    CHECK(refused > 0);
  }
}

TEST_CASE("prices or turns that are not as many as the lattice has are refused") {
  MovePrices prices = all_barred(lattice_of(3, 2));
  prices.price.pop_back();
  CHECK_THROWS_AS(require_sound(prices), OurFault);
  prices = all_barred(lattice_of(3, 2));
  prices.turns.push_back(0);
  CHECK_THROWS_AS(require_sound(prices), OurFault);
}

TEST_CASE("a turn is allowed to both sides between the two headings of its bit, and nowhere else") {
  for (unsigned bit = 0; bit < 16; ++bit) {
    MovePrices prices = all_barred(lattice_of(1, 1));
    prices.turns.at(0) = static_cast<std::uint16_t>(1U << bit);
    for (std::uint8_t from = 0; from < 16; ++from) {
      for (std::uint8_t to = 0; to < 16; ++to) {
        CAPTURE(bit);
        CAPTURE(from);
        CAPTURE(to);
        const bool right = from == bit && to == (bit + 1) % 16;
        const bool left = to == bit && from == (bit + 1) % 16;
        CHECK(may_turn(prices, {0, 0}, {Heading{from}, Heading{to}}) ==
              (from == to || right || left));
      }
    }
  }
}
