#include "crossing/lattice.h"

#include <doctest/doctest.h>

#include <cmath>

#include "base/require.h"
#include "crossing/any_ground.h"
#include "near.h"

using namespace rimehaul::crossing;
using namespace rimehaul::testing;
using rimehaul::base::OurFault;
using rimehaul::geo::MapPoint;
using rimehaul::units::Metres;

TEST_CASE("every state has its own number and comes back from it") {
  const Lattice lattice = lattice_of(5, 3);
  std::uint32_t next = 0;
  for (const State& state : states_of(lattice)) {
    CHECK(index_of(lattice, state) == next);
    CHECK(state_at(lattice, next) == state);
    ++next;
  }
  CHECK(next == 16 * cell_count(lattice));
}

TEST_CASE("cells run east along the columns and south along the rows, a pitch apart") {
  const Lattice lattice = lattice_of(5, 3);
  CHECK(centre_of(lattice, {0, 0}) == lattice.north_west);
  CHECK(centre_of(lattice, {4, 2}) == MapPoint{Metres{500'016.0}, Metres{5'099'992.0}});
}

TEST_CASE("a place belongs to the cell whose square holds it, and outside to none") {
  const Lattice lattice = lattice_of(5, 3);
  const auto beside = [&](double east, double south) {
    return cell_of(lattice, {lattice.north_west.east + Metres{east},
                             lattice.north_west.north - Metres{south}});
  };
  CHECK(beside(0.0, 0.0) == Cell{0, 0});
  CHECK(beside(9.9, 5.9) == Cell{2, 1});
  CHECK(beside(10.1, 6.1) == Cell{3, 2});
  CHECK(beside(-1.9, -1.9) == Cell{0, 0});
  CHECK_FALSE(beside(-2.1, 0.0).has_value());
  CHECK_FALSE(beside(0.0, -2.1).has_value());
  CHECK(beside(17.9, 9.9) == Cell{4, 2});
  CHECK_FALSE(beside(18.1, 0.0).has_value());
  CHECK_FALSE(beside(0.0, 10.1).has_value());
  CHECK_FALSE(beside(std::nan(""), 0.0).has_value());
  CHECK_FALSE(beside(0.0, INFINITY).has_value());
}

TEST_CASE("a move runs from centre to centre along its heading's bearing") {
  const Lattice lattice = lattice_of(5, 5);
  for (std::uint8_t index = 0; index < 16; ++index) {
    CAPTURE(index);
    const auto line = move_of(lattice, {{2, 2}, Heading{index}});
    CHECK(line.from == centre_of(lattice, {2, 2}));
    CHECK(near(bearing(line).degrees(), bearing_of(Heading{index}).degrees(), 1e-9));
    CHECK(
        near(distance(line.from, line.to), length_of(Heading{index}, lattice.pitch), Metres{1e-9}));
  }
}

TEST_CASE("a lattice without cells, pitch or place is refused, as is one too large to number") {
  const auto refused = [](auto change) {
    Lattice lattice = lattice_of(5, 3);
    change(lattice);
    CHECK_THROWS_AS(require_sound(lattice), OurFault);
  };
  refused([](Lattice& lattice) { lattice.columns = 0; });
  refused([](Lattice& lattice) { lattice.rows = -3; });
  refused([](Lattice& lattice) { lattice.pitch = Metres{0.0}; });
  refused([](Lattice& lattice) { lattice.pitch = Metres{std::nan("")}; });
  refused([](Lattice& lattice) { lattice.north_west.north = Metres{INFINITY}; });
  refused([](Lattice& lattice) { lattice.columns = lattice.rows = 16'385; });
  Lattice largest = lattice_of(16'384, 16'384);
  CHECK_NOTHROW(require_sound(largest));
  CHECK_THROWS_AS((void)index_of(largest, Cell{16'384, 0}), OurFault);
  CHECK_THROWS_AS((void)index_of(largest, Cell{0, -1}), OurFault);
  CHECK_THROWS_AS((void)index_of(largest, State{{0, 0}, Heading{16}}), OurFault);
}
