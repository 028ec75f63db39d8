// Ways over an even slope, where it is known in closed form which headings a rig may take.
#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <numbers>
#include <random>
#include <set>

#include "crossing/any_ground.h"
#include "crossing/find_way.h"
#include "crossing/reach.h"

using namespace rimehaul::crossing;
using namespace rimehaul::testing;

namespace {

/// Whether no bearing of a heading's sector is steeper, up or down, than the limit on a plane that
/// rises to the north: |cos| of the bearing within the limit's share of the plane's slope.
bool whole_sector_is_safe(Heading heading, double limit_share) {
  const Sector sector = sector_of(heading);
  const double width = sector.from.turn_to(sector.to);
  for (int part = 0; part <= 1000; ++part) {
    const double bearing_rad =
        (sector.from.degrees() + width * part / 1000.0) * std::numbers::pi / 180.0;
    if (std::abs(std::cos(bearing_rad)) > limit_share) {
      return false;
    }
  }
  return true;
}

MovePrices plane(const Lattice& lattice, double limit_share) {
  std::array<bool, kHeadings> safe{};
  for (std::uint8_t index = 0; index < kHeadings; ++index) {
    safe.at(index) = whole_sector_is_safe(Heading{index}, limit_share);
  }
  MovePrices prices = even_ground(lattice, 100.0);
  for (const State& state : states_of(lattice)) {
    if (!safe.at(index_of(state.heading))) {
      set_price(prices, state, 0);
    }
  }
  return prices;
}

std::vector<State> any_heading_on_row(const Lattice& lattice, std::int32_t row) {
  std::vector<State> states;
  for (const State& state : states_of(lattice)) {
    if (state.cell.row == row) {
      states.push_back(state);
    }
  }
  return states;
}

std::set<unsigned> headings_left(const Way& way) {
  std::set<unsigned> headings;
  for (std::size_t at = 0; at + 1 < way.states.size(); ++at) {
    headings.insert(index_of(way.states[at].heading));
  }
  return headings;
}

/// Level ground with room to turn, in the middle of the western edge.
bool on_bench(Cell cell) {
  return cell.column < 12 && 14 <= cell.row && cell.row < 26;
}

}  // namespace

TEST_CASE("up a plane with a limit the way takes the heading nearest to straight up that is safe") {
  const Lattice lattice = lattice_of(60, 13);
  std::size_t ways = 0;
  for (int hundredths = 5; hundredths <= 100; ++hundredths) {
    CAPTURE(hundredths);
    const double limit_share = 0.01 * hundredths;
    std::optional<unsigned> nearest;  // on the eastern side; the western is its mirror image
    for (unsigned index = 0; index < 4 && !nearest.has_value(); ++index) {
      if (whole_sector_is_safe(Heading{static_cast<std::uint8_t>(index)}, limit_share)) {
        nearest = index;
      }
    }
    const MovePrices prices = plane(lattice, limit_share);
    std::vector<State> starts;
    for (std::uint8_t heading = 0; heading < 16; ++heading) {
      starts.push_back({{30, 12}, Heading{heading}});
    }
    const auto answer = find_way(starts, CostToGo{prices, any_heading_on_row(lattice, 0)});
    REQUIRE(std::holds_alternative<Way>(answer) == nearest.has_value());
    if (nearest.has_value()) {
      ++ways;
      const std::set<unsigned> used = headings_left(std::get<Way>(answer));
      REQUIRE(used.size() == 1);
      CHECK((*used.begin() == *nearest || *used.begin() == (16 - *nearest) % 16));
    }
  }
  CHECK(ways > 30);
}

TEST_CASE("a slope too steep to turn on is climbed in zigzags only where a bench is to turn on") {
  // Headings 3 to 5 and 11 to 13 are safe at this limit; from 3 to 13 the rig turns over barred
  // ones.
  constexpr double kLimitShare = 0.6;
  const Lattice lattice = lattice_of(60, 40);
  MovePrices prices = plane(lattice, kLimitShare);
  const std::vector<State> starts{{{50, 39}, Heading{13}}};
  std::vector<State> goals;
  for (const State& state : any_heading_on_row(lattice, 0)) {
    if (state.cell.column >= 40) {
      goals.push_back(state);
    }
  }
  // Going on as it begins, the rig leaves the slope in the west; to the goal it must turn back.
  CHECK(std::get<NoWay>(find_way(starts, CostToGo{prices, goals})) == NoWay::for_want_of_turns);

  const MovePrices open = even_ground(lattice, 100.0);
  for (const State& state : states_of(lattice)) {
    if (on_bench(state.cell) && on_bench(state.cell + step_of(state.heading))) {
      set_price(prices, state, price_of(open, state));
    }
  }
  const auto answer = find_way(starts, CostToGo{prices, goals});
  REQUIRE(std::holds_alternative<Way>(answer));
  const Way& way = std::get<Way>(answer);
  std::size_t turning = 0;
  for (std::size_t at = 0; at + 1 < way.states.size(); ++at) {
    if (!whole_sector_is_safe(way.states[at].heading, kLimitShare)) {
      CHECK(on_bench(way.states[at].cell));
      ++turning;
    }
  }
  CHECK(turning >= 5);
  const std::set<unsigned> used = headings_left(way);
  CHECK(used.contains(13));
  CHECK(used.contains(3));

  // A bench that allows no turns is no bench.
  for (std::uint32_t cell = 0; cell < cell_count(lattice); ++cell) {
    if (on_bench(cell_at(lattice, cell))) {
      prices.turns.at(cell) = 0;
    }
  }
  CHECK(std::get<NoWay>(find_way(starts, CostToGo{prices, goals})) == NoWay::for_want_of_turns);
}

TEST_CASE("turning the ground by a quarter turns what is reached and keeps every price") {
  for (std::uint32_t seed = 1; seed <= 60; ++seed) {
    CAPTURE(seed);
    std::mt19937 dice{seed};
    const MovePrices prices = any_ground(dice);
    const Lattice& lattice = prices.lattice;
    MovePrices quarter = all_barred(lattice_of(lattice.rows, lattice.columns));
    const auto turned_state = [&](const State& state) {
      return State{{lattice.rows - 1 - state.cell.row, state.cell.column},
                   turned(state.heading, 4)};
    };
    for (const State& state : states_of(lattice)) {
      set_price(quarter, turned_state(state), price_of(prices, state));
      if (may_turn(prices, state.cell, {state.heading, turned(state.heading, 1)})) {
        const State there = turned_state(state);
        std::uint16_t& turns = quarter.turns.at(index_of(quarter.lattice, there.cell));
        turns =
            static_cast<std::uint16_t>(turns | turn_bit({there.heading, turned(there.heading, 1)}));
      }
    }
    const State start = any_state(dice, prices);
    const Reach reach{prices, std::vector{start}};
    const Reach reach_turned{quarter, std::vector{turned_state(start)}};
    for (const State& state : states_of(lattice)) {
      const auto way = reach.way_to(state);
      const auto way_turned = reach_turned.way_to(turned_state(state));
      REQUIRE(way.has_value() == way_turned.has_value());
      if (way.has_value()) {
        CHECK(way->price == way_turned->price);
      }
    }
  }
}
