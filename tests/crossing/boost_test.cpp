// Agreement with Boost's Dijkstra on grounds too large to try everything on.
#include <doctest/doctest.h>

#include <boost/graph/dijkstra_shortest_paths.hpp>
#include <limits>
#include <random>
#include <variant>

#include "crossing/any_ground.h"
#include "crossing/find_way.h"
#include "crossing/implicit_graph.h"
#include "crossing/reach.h"

using namespace rimehaul::crossing;
using namespace rimehaul::testing;

namespace {

constexpr std::uint32_t kNever = std::numeric_limits<std::uint32_t>::max();

std::vector<std::uint32_t> boost_prices(const MovePrices& prices, State start) {
  const ImplicitGraph graph{prices};
  std::vector<std::uint32_t> found(prices.price.size());
  const auto by_number = boost::typed_identity_property_map<std::uint32_t>{};
  boost::dijkstra_shortest_paths(
      graph, index_of(prices.lattice, start),
      boost::distance_map(boost::make_iterator_property_map(found.begin(), by_number))
          .predecessor_map(boost::dummy_property_map{})
          .weight_map(EdgePrice{prices.price.data()})
          .vertex_index_map(by_number));
  return found;
}

/// A mountain of waves; moves steeper than the limit are barred, others cost more the steeper.
MovePrices waves(const Lattice& lattice, std::mt19937& dice) {
  const double phase = static_cast<double>(dice() % 1000) / 100.0;
  const auto height = [&](Cell cell) {
    return 3.0 * std::sin(0.31 * cell.column + phase) * std::cos(0.23 * cell.row) +
           0.2 * static_cast<double>((cell.column * 7919 + cell.row * 104729) % 10);
  };
  MovePrices prices = all_barred(lattice);
  for (const State& state : states_of(lattice)) {
    const Cell end = state.cell + step_of(state.heading);
    const double length = length_of(state.heading, rimehaul::units::Metres{1.0}).value();
    const double grade = (height(end) - height(state.cell)) / length;
    if (-1.0 <= grade && grade <= 0.8) {
      set_price(prices, state,
                static_cast<std::uint8_t>(length * (20.0 + 40.0 * std::max(0.0, grade))));
    }
  }
  for (std::uint16_t& turns : prices.turns) {
    turns = static_cast<std::uint16_t>(dice() | dice() | dice());
  }
  return prices;
}

}  // namespace

TEST_CASE("on wider ground every state is reached at the price that Boost's Dijkstra finds") {
  for (std::uint32_t seed = 1; seed <= 5; ++seed) {
    CAPTURE(seed);
    std::mt19937 dice{seed};
    const MovePrices prices = waves(lattice_of(90, 70), dice);
    const State start = any_state(dice, prices);
    const std::vector<std::uint32_t> wanted = boost_prices(prices, start);
    const Reach reach{prices, std::vector{start}};
    std::size_t reached = 0;
    for (const State& state : states_of(prices.lattice)) {
      const std::uint32_t known = wanted[index_of(prices.lattice, state)];
      const auto way = reach.way_to(state);
      REQUIRE(way.has_value() == (known != kNever));
      if (way.has_value()) {
        REQUIRE(way->price == known);
        ++reached;
      }
    }
    CHECK(reached > 30'000);

    for (int round = 0; round < 20; ++round) {
      const State goal = any_state(dice, prices);
      const auto answer = find_way(std::vector{start}, CostToGo{prices, std::vector{goal}});
      const std::uint32_t known = wanted[index_of(prices.lattice, goal)];
      REQUIRE(std::holds_alternative<Way>(answer) == (known != kNever));
      if (known != kNever) {
        CHECK(std::get<Way>(answer).price == known);
        CHECK(walked(prices, std::get<Way>(answer).states) == known);
      }
    }
  }
}
