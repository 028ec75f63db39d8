// What each move on a lattice costs and where the rig may turn: all that a search knows of ground.
#pragma once

#include <cstdint>
#include <vector>

#include "crossing/lattice.h"

namespace rimehaul::crossing {

/// Prices of moves in whole ticks; what a tick is worth is the business of whoever fills them in.
/// A move from (cell, h) goes one step along h; at its end the rig has the heading h, or turns by
/// one to h - 1 or h + 1 if the cell it came to allows that turn.
struct MovePrices {
  Lattice lattice;
  /// By number of state: 0 is barred, else 1 to 255 ticks for the whole ground that the move sweeps
  /// with any bearing of its heading's sector. Moves that end off the lattice are barred.
  std::vector<std::uint8_t> price;
  /// By number of cell: bit h says that the rig may turn here between headings h and h + 1, to
  /// either side; bit 15 between 15 and 0.
  std::vector<std::uint16_t> turns;
};

inline constexpr std::uint16_t kEveryTurn = 0xffff;

/// Nothing is known of the ground yet: every move and every turn is barred.
[[nodiscard]] MovePrices all_barred(const Lattice& lattice);

/// Requires a sound lattice, a price for each state, turns for each cell, and that no move ends off
/// the lattice (OurFault otherwise). Searches ask for it; it looks at the edge of the lattice
/// alone.
void require_sound(const MovePrices& prices);

/// 0 where the move is barred. Requires a state of the lattice.
[[nodiscard]] std::uint8_t price_of(const MovePrices& prices, State state);

/// The bit of a cell's `turns` that stands for a turn by one heading, to either side.
[[nodiscard]] constexpr std::uint16_t turn_bit(Turn turn) {
  const bool to_the_right = turned(turn.before, 1) == turn.after;
  return static_cast<std::uint16_t>(1U << index_of(to_the_right ? turn.before : turn.after));
}

/// Whether a rig that came to a cell may go on so: straight ahead always, with a heading beside its
/// own if the cell allows that turn. Requires a cell of the lattice.
[[nodiscard]] bool may_turn(const MovePrices& prices, Cell cell, Turn turn);

/// How far on, by number of cell, the move of each heading ends; modulo 2^32.
[[nodiscard]] std::array<std::uint32_t, kHeadings> cell_offsets(const Lattice& lattice);

}  // namespace rimehaul::crossing
