#include "crossing/move_prices.h"

#include "base/require.h"

namespace rimehaul::crossing {
namespace {

void require_kept_on_lattice(const MovePrices& prices, Cell cell) {
  for (unsigned index = 0; index < kHeadings; ++index) {
    const State state{cell, Heading{static_cast<std::uint8_t>(index)}};
    base::require(
        holds(prices.lattice, cell + step_of(state.heading)) || price_of(prices, state) == 0,
        "a move off its lattice is not barred");
  }
}

}  // namespace

MovePrices all_barred(const Lattice& lattice) {
  require_sound(lattice);
  const std::size_t cells = cell_count(lattice);
  return {.lattice = lattice,
          .price = std::vector<std::uint8_t>(cells * kHeadings, 0),
          .turns = std::vector<std::uint16_t>(cells, 0)};
}

void require_sound(const MovePrices& prices) {
  const Lattice& lattice = prices.lattice;
  require_sound(lattice);
  const std::size_t cells = cell_count(lattice);
  base::require(prices.price.size() == cells * kHeadings, "not every state has a price");
  base::require(prices.turns.size() == cells, "not every cell says which turns it allows");
  constexpr std::int32_t kReach = 2;  // of the longest step
  for (std::int32_t row = 0; row < lattice.rows; ++row) {
    const bool inside = kReach <= row && row < lattice.rows - kReach;
    for (std::int32_t column = 0; column < lattice.columns; ++column) {
      if (inside && column == kReach && lattice.columns > 2 * kReach) {
        column = lattice.columns - kReach;
      }
      require_kept_on_lattice(prices, {column, row});
    }
  }
}

std::uint8_t price_of(const MovePrices& prices, State state) {
  return prices.price[index_of(prices.lattice, state)];
}

bool may_turn(const MovePrices& prices, Cell cell, Turn turn) {
  const std::uint16_t allowed = prices.turns[index_of(prices.lattice, cell)];
  if (turn.before == turn.after) {
    return true;
  }
  const bool by_one = turned(turn.before, 1) == turn.after || turned(turn.before, -1) == turn.after;
  return by_one && (allowed & turn_bit(turn)) != 0;
}

std::array<std::uint32_t, kHeadings> cell_offsets(const Lattice& lattice) {
  std::array<std::uint32_t, kHeadings> offsets{};
  for (std::size_t heading = 0; heading < kHeadings; ++heading) {
    const CellStep step = kSteps.at(heading);
    offsets.at(heading) = static_cast<std::uint32_t>(step.rows * lattice.columns + step.columns);
  }
  return offsets;
}

}  // namespace rimehaul::crossing
