// The searches against trying every move over and over, on small random grounds.
#include <doctest/doctest.h>

#include <random>
#include <variant>

#include "crossing/any_ground.h"
#include "crossing/find_way.h"
#include "crossing/reach.h"

using namespace rimehaul::crossing;
using namespace rimehaul::testing;

namespace {

std::vector<State> any_states(std::mt19937& dice, const MovePrices& prices) {
  std::vector<State> states;
  const unsigned most = dice() % 2 == 0 ? 3 : 40;
  for (std::uint64_t left = 1 + dice() % most; left > 0; --left) {
    states.push_back(any_state(dice, prices));
  }
  return states;
}

/// The least price among the goals; nothing if none is reached.
std::optional<std::uint64_t> least_of(const std::map<State, std::uint64_t>& found,
                                      std::span<const State> goals) {
  std::optional<std::uint64_t> least;
  for (const State& goal : goals) {
    const auto known = found.find(goal);
    if (known != found.end() && (!least.has_value() || known->second < *least)) {
      least = known->second;
    }
  }
  return least;
}

/// Whether a start's cell and a goal's are joined if turning costs nothing and is allowed anywhere.
bool are_joined(const MovePrices& prices, std::span<const State> starts,
                std::span<const State> goals) {
  std::vector<State> any_heading;
  for (const State& start : starts) {
    for (std::uint8_t heading = 0; heading < 16; ++heading) {
      any_heading.push_back({start.cell, Heading{heading}});
    }
  }
  return least_of(try_everything(prices, any_heading, Turning::freely), goals).has_value();
}

}  // namespace

TEST_CASE(
    "on small random grounds everything is reached at the price that trying all moves finds") {
  std::size_t reached = 0;
  std::size_t not_reached = 0;
  for (std::uint32_t seed = 1; seed <= 300; ++seed) {
    CAPTURE(seed);
    std::mt19937 dice{seed};
    const MovePrices prices = any_ground(dice);
    const std::vector<State> starts = any_states(dice, prices);
    const Reach reach{prices, starts};
    const auto wanted = try_everything(prices, starts);
    for (const State& state : states_of(prices.lattice)) {
      const auto known = wanted.find(state);
      const auto way = reach.way_to(state);
      REQUIRE(way.has_value() == (known != wanted.end()));
      REQUIRE(reach.reached(state) == way.has_value());
      if (!way.has_value()) {
        ++not_reached;
        continue;
      }
      ++reached;
      REQUIRE(way->price == known->second);
      REQUIRE(walked(prices, way->states) == known->second);
      REQUIRE(std::ranges::find(starts, way->states.front()) != starts.end());
      REQUIRE(way->states.back() == state);
    }
  }
  CHECK(reached > 10'000);
  CHECK(not_reached > 10'000);
}

TEST_CASE("a way between two sets of states costs what trying all moves finds, or there is none") {
  std::size_t found = 0;
  std::size_t cut_off = 0;
  std::size_t want_turns = 0;
  for (std::uint32_t seed = 1; seed <= 1500; ++seed) {
    CAPTURE(seed);
    std::mt19937 dice{seed};
    const MovePrices prices = any_ground(dice);
    const std::vector<State> starts = any_states(dice, prices);
    const std::vector<State> goals = any_states(dice, prices);
    const auto answer = find_way(starts, CostToGo{prices, goals});
    const auto wanted = least_of(try_everything(prices, starts), goals);
    if (const auto* way = std::get_if<Way>(&answer)) {
      ++found;
      REQUIRE(wanted.has_value());
      REQUIRE(way->price == *wanted);
      REQUIRE(walked(prices, way->states) == *wanted);
      REQUIRE(std::ranges::find(starts, way->states.front()) != starts.end());
      REQUIRE(std::ranges::find(goals, way->states.back()) != goals.end());
      continue;
    }
    REQUIRE_FALSE(wanted.has_value());
    const bool joined = are_joined(prices, starts, goals);
    REQUIRE((std::get<NoWay>(answer) == NoWay::for_want_of_turns) == joined);
    ++(joined ? want_turns : cut_off);
  }
  CHECK(found > 500);
  CHECK(cut_off > 30);
  CHECK(want_turns > 200);
}

TEST_CASE("the cost to go is what is left to pay when the rig may turn anywhere, and never more") {
  std::size_t compared = 0;
  for (std::uint32_t seed = 1; seed <= 60; ++seed) {
    CAPTURE(seed);
    std::mt19937 dice{seed};
    const MovePrices prices = any_ground(dice);
    const std::vector<State> goals = any_states(dice, prices);
    const CostToGo to_go{prices, goals};
    for (int sample = 0; sample < 5; ++sample) {
      const Cell cell = any_state(dice, prices).cell;
      std::vector<State> any_heading;
      for (std::uint8_t heading = 0; heading < 16; ++heading) {
        any_heading.push_back({cell, Heading{heading}});
      }
      std::vector<State> any_end;
      for (const State& goal : goals) {
        for (std::uint8_t heading = 0; heading < 16; ++heading) {
          any_end.push_back({goal.cell, Heading{heading}});
        }
      }
      const auto relaxed = least_of(try_everything(prices, any_heading, Turning::freely), any_end);
      const auto told = to_go.from(cell);
      REQUIRE(told.has_value() == relaxed.has_value());
      if (told.has_value()) {
        REQUIRE(*told == *relaxed);
      }
      for (const State& state : any_heading) {
        const auto real = least_of(try_everything(prices, std::vector{state}), goals);
        if (real.has_value()) {
          REQUIRE(told.has_value());
          REQUIRE(*told <= *real);
          ++compared;
        }
      }
    }
  }
  CHECK(compared > 200);
}

TEST_CASE("the same ground and ends give the same way, in whatever order the ends are named") {
  std::size_t compared = 0;
  for (std::uint32_t seed = 1; seed <= 500; ++seed) {
    CAPTURE(seed);
    std::mt19937 dice{seed};
    const MovePrices prices = any_ground(dice);
    std::vector<State> starts = any_states(dice, prices);
    std::vector<State> goals = any_states(dice, prices);
    const auto first = find_way(starts, CostToGo{prices, goals});
    std::ranges::reverse(starts);
    starts.push_back(starts.front());
    std::ranges::reverse(goals);
    const auto again = find_way(starts, CostToGo{prices, goals});
    REQUIRE(first == again);
    compared += std::holds_alternative<Way>(first) ? 1U : 0U;
  }
  CHECK(compared > 50);
}

TEST_CASE("one cost to go serves every start to its goals") {
  std::mt19937 dice{11};
  const MovePrices prices = even_ground(lattice_of(9, 8), 10.0);
  const std::vector<State> goals{{{7, 1}, Heading{3}}};
  const CostToGo to_go{prices, goals};
  for (const State& start : states_of(prices.lattice)) {
    const auto answer = find_way(std::vector{start}, to_go);
    const auto wanted = least_of(try_everything(prices, std::vector{start}), goals);
    REQUIRE(std::holds_alternative<Way>(answer) == wanted.has_value());
    if (wanted.has_value()) {
      CHECK(std::get<Way>(answer).price == *wanted);
    }
  }
}

TEST_CASE("a start that is a goal is a way of no move, and a barred goal can still be come to") {
  MovePrices prices = even_ground(lattice_of(1, 4), 5.0);
  const State start{{0, 3}, Heading{0}};
  const State goal{{0, 0}, Heading{0}};  // whose own move would leave the lattice
  REQUIRE(price_of(prices, goal) == 0);
  const auto answer = find_way(std::vector{start}, CostToGo{prices, std::vector{goal}});
  REQUIRE(std::holds_alternative<Way>(answer));
  CHECK(std::get<Way>(answer).price == 15);
  const auto at_once = find_way(std::vector{goal}, CostToGo{prices, std::vector{goal}});
  REQUIRE(std::holds_alternative<Way>(at_once));
  CHECK(std::get<Way>(at_once) == Way{.states = {goal}, .price = 0});
}

TEST_CASE("without a start or without a goal there is no way") {
  const MovePrices prices = even_ground(lattice_of(4, 4), 5.0);
  const std::vector<State> one{{{1, 1}, Heading{0}}};
  const std::vector<State> none;
  CHECK(std::get<NoWay>(find_way(none, CostToGo{prices, one})) == NoWay::even_turning_on_the_spot);
  CHECK(std::get<NoWay>(find_way(one, CostToGo{prices, none})) == NoWay::even_turning_on_the_spot);
  CHECK_FALSE(Reach{prices, none}.reached(one[0]));
}
