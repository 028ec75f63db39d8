// The square cells that open ground is crossed on, and the states of a rig on them.
#pragma once

#include <cstdint>
#include <optional>

#include "crossing/heading.h"
#include "geo/point.h"

namespace rimehaul::crossing {

/// A cell by its column from the west and its row from the north, both from 0.
struct Cell {
  std::int32_t column = 0;
  std::int32_t row = 0;

  friend auto operator<=>(const Cell&, const Cell&) = default;
};

[[nodiscard]] constexpr Cell operator+(Cell cell, CellStep step) {
  return {cell.column + step.columns, cell.row + step.rows};
}
[[nodiscard]] constexpr Cell operator-(Cell cell, CellStep step) {
  return {cell.column - step.columns, cell.row - step.rows};
}

/// A rig at a cell's centre, about to leave it with that heading.
struct State {
  Cell cell;
  Heading heading{};

  friend auto operator<=>(const State&, const State&) = default;
};

/// Square cells in the map frame, rows to the south.
struct Lattice {
  geo::MapPoint north_west;  ///< centre of cell (0, 0); finite
  units::Metres pitch;       ///< from centre to centre; above 0
  std::int32_t columns = 0;  ///< at least 1
  std::int32_t rows = 0;     ///< at least 1; with the columns, at most 2^28 cells
};

/// Requires what the members of a lattice say (OurFault otherwise: whoever lays it sees to it).
void require_sound(const Lattice& lattice);

[[nodiscard]] constexpr bool holds(const Lattice& lattice, Cell cell) {
  return 0 <= cell.column && cell.column < lattice.columns && 0 <= cell.row &&
         cell.row < lattice.rows;
}
/// How many cells there are, at most 2^28.
[[nodiscard]] constexpr std::uint32_t cell_count(const Lattice& lattice) {
  return static_cast<std::uint32_t>(lattice.columns) * static_cast<std::uint32_t>(lattice.rows);
}
/// Cells are numbered along the rows from the north-west. Requires a cell of the lattice.
[[nodiscard]] std::uint32_t index_of(const Lattice& lattice, Cell cell);
[[nodiscard]] constexpr Cell cell_at(const Lattice& lattice, std::uint32_t index) {
  const auto columns = static_cast<std::uint32_t>(lattice.columns);
  return {static_cast<std::int32_t>(index % columns), static_cast<std::int32_t>(index / columns)};
}
/// States are numbered by 16 times their cell's number, plus the heading.
[[nodiscard]] std::uint32_t index_of(const Lattice& lattice, State state);
[[nodiscard]] constexpr State state_at(const Lattice& lattice, std::uint32_t index) {
  return {cell_at(lattice, index / kHeadings),
          Heading{static_cast<std::uint8_t>(index % kHeadings)}};
}

[[nodiscard]] geo::MapPoint centre_of(const Lattice& lattice, Cell cell);
/// The cell whose square holds a place; nothing outside the lattice and for what is not finite.
[[nodiscard]] std::optional<Cell> cell_of(const Lattice& lattice, geo::MapPoint place);
/// The straight line of a state's move, from centre to centre; it may lead off the lattice.
[[nodiscard]] geo::Segment move_of(const Lattice& lattice, State state);

}  // namespace rimehaul::crossing
