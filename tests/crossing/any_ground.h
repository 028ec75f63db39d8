// Grounds drawn at random, and what every state costs by trying every move over and over.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <map>
#include <optional>
#include <random>
#include <span>
#include <utility>
#include <vector>

#include "crossing/search_tree.h"

namespace rimehaul::testing {

inline crossing::Lattice lattice_of(std::int32_t columns, std::int32_t rows) {
  return {.north_west = {units::Metres{500'000.0}, units::Metres{5'100'000.0}},
          .pitch = units::Metres{4.0},
          .columns = columns,
          .rows = rows};
}

inline std::vector<crossing::State> states_of(const crossing::Lattice& lattice) {
  std::vector<crossing::State> states;
  for (std::int32_t row = 0; row < lattice.rows; ++row) {
    for (std::int32_t column = 0; column < lattice.columns; ++column) {
      for (std::uint8_t heading = 0; heading < 16; ++heading) {
        states.push_back({{column, row}, crossing::Heading{heading}});
      }
    }
  }
  return states;
}

/// Sets the price of a move, unless it leads off the lattice.
inline void set_price(crossing::MovePrices& prices, crossing::State state, std::uint8_t price) {
  const bool stays = holds(prices.lattice, state.cell + step_of(state.heading));
  prices.price.at(index_of(prices.lattice, state)) = stays ? price : std::uint8_t{0};
}

/// Turns everywhere; every move at the same price for each pitch of way, rounded up.
inline crossing::MovePrices even_ground(const crossing::Lattice& lattice, double per_pitch) {
  crossing::MovePrices prices = all_barred(lattice);
  std::ranges::fill(prices.turns, crossing::kEveryTurn);
  for (const crossing::State& state : states_of(lattice)) {
    const double pitches = length_of(state.heading, units::Metres{1.0}).value();
    set_price(prices, state, static_cast<std::uint8_t>(std::ceil(per_pitch * pitches)));
  }
  return prices;
}

/// Few prices, so that ties are common, or many; moves and turns barred here and there, most or
/// none of them open; at times a wall from north to south that nothing gets through.
inline crossing::MovePrices any_ground(std::mt19937& dice) {
  const auto below = [&](unsigned count) { return static_cast<unsigned>(dice()) % count; };
  const auto any_side = [&] {
    return static_cast<std::int32_t>(below(5) == 0 ? 1 + below(6) : 12 + below(8));
  };
  const std::int32_t columns = any_side();
  const std::int32_t rows = any_side();
  crossing::MovePrices prices = all_barred(lattice_of(columns, rows));
  const unsigned most = std::array{3U, 20U, 255U}.at(below(3));
  const unsigned open_of_twenty = 12 + below(9);
  const unsigned turns_of_twenty = 12 + below(9);
  const std::int32_t wall = below(3) == 0 ? columns / 2 : columns;
  for (const crossing::State& state : states_of(prices.lattice)) {
    const bool in_wall = state.cell.column == wall || state.cell.column == wall + 1;
    if (below(20) < open_of_twenty && !in_wall) {
      set_price(prices, state, static_cast<std::uint8_t>(1 + below(most)));
    }
  }
  for (std::uint16_t& turns : prices.turns) {
    for (unsigned bit = 0; bit < 16; ++bit) {
      if (below(20) < turns_of_twenty) {
        turns = static_cast<std::uint16_t>(turns | (1U << bit));
      }
    }
  }
  return prices;
}

/// A state that the rig can leave, most often.
inline crossing::State any_state(std::mt19937& dice, const crossing::MovePrices& prices) {
  std::uint32_t state = 0;
  for (int left = 10; left > 0 && prices.price.at(state) == 0; --left) {
    state = static_cast<std::uint32_t>(dice() % prices.price.size());
  }
  return state_at(prices.lattice, state);
}

/// Whether the rig may turn by one heading or none, or, in the relaxed problem, however it likes.
enum class Turning { by_one, freely };

inline constexpr std::array<std::pair<int, int>, 16> kEastAndNorth{{{0, 1},
                                                                    {1, 2},
                                                                    {1, 1},
                                                                    {2, 1},
                                                                    {1, 0},
                                                                    {2, -1},
                                                                    {1, -1},
                                                                    {1, -2},
                                                                    {0, -1},
                                                                    {-1, -2},
                                                                    {-1, -1},
                                                                    {-2, -1},
                                                                    {-1, 0},
                                                                    {-2, 1},
                                                                    {-1, 1},
                                                                    {-1, 2}}};

/// Whether a rig that came with a heading may go on with the next, by the bits of the cell's turns.
inline bool goes_on(int heading, int next, std::uint16_t turns, Turning turning) {
  const int right = (next - heading + 16) % 16;
  return turning == Turning::freely || right == 0 || (right == 1 && (turns >> heading & 1) == 1) ||
         (right == 15 && (turns >> next & 1) == 1);
}

/// The least price to every state that can be reached, by going through all states until nothing
/// changes. It shares no step, turn or order with the searches.
inline std::map<crossing::State, std::uint64_t> try_everything(
    const crossing::MovePrices& prices, std::span<const crossing::State> starts,
    Turning turning = Turning::by_one) {
  constexpr std::uint64_t kNever = ~std::uint64_t{0};
  const int width = prices.lattice.columns;
  const auto number = [&](int column, int row, int heading) {
    return static_cast<std::size_t>((row * width + column) * 16 + heading);
  };
  std::vector<std::uint64_t> paid(prices.price.size(), kNever);
  for (const crossing::State& start : starts) {
    paid.at(number(start.cell.column, start.cell.row, static_cast<int>(start.heading))) = 0;
  }
  const std::vector<crossing::State> states = states_of(prices.lattice);
  for (bool changed = true; changed;) {
    changed = false;
    for (const crossing::State& state : states) {
      const int heading = static_cast<int>(state.heading);
      const std::size_t here = number(state.cell.column, state.cell.row, heading);
      if (paid.at(here) == kNever || prices.price.at(here) == 0) {
        continue;
      }
      const auto step = kEastAndNorth.at(static_cast<std::size_t>(heading));
      const int column = state.cell.column + step.first;
      const int row = state.cell.row - step.second;
      const std::uint16_t turns = prices.turns.at(static_cast<std::size_t>(row * width + column));
      const std::uint64_t there = paid.at(here) + prices.price.at(here);
      for (int next = 0; next < 16; ++next) {
        std::uint64_t& known = paid.at(number(column, row, next));
        if (there < known && goes_on(heading, next, turns, turning)) {
          known = there;
          changed = true;
        }
      }
    }
  }
  std::map<crossing::State, std::uint64_t> found;
  for (std::size_t at = 0; at < states.size(); ++at) {
    if (paid.at(at) != kNever) {
      found.emplace(states.at(at), paid.at(at));
    }
  }
  return found;
}

/// The price of a way if each of its moves is open and each of its turns allowed; nothing
/// otherwise.
inline std::optional<std::uint64_t> walked(const crossing::MovePrices& prices,
                                           std::span<const crossing::State> states) {
  std::uint64_t price = 0;
  for (std::size_t at = 1; at < states.size(); ++at) {
    const crossing::State& from = states[at - 1];
    const crossing::State& to = states[at];
    const std::uint8_t paid = price_of(prices, from);
    if (paid == 0 || to.cell != from.cell + step_of(from.heading) ||
        !may_turn(prices, to.cell, {from.heading, to.heading})) {
      return std::nullopt;
    }
    price += paid;
  }
  return price;
}

}  // namespace rimehaul::testing
