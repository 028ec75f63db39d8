#include "crossing/lattice.h"

#include <cmath>

#include "base/require.h"

namespace rimehaul::crossing {
namespace {

constexpr std::int64_t kMostCells = std::int64_t{1} << 28;  // sixteen states each fit into 32 bits

}  // namespace

void require_sound(const Lattice& lattice) {
  base::require(std::isfinite(lattice.north_west.east.value()) &&
                    std::isfinite(lattice.north_west.north.value()) &&
                    std::isfinite(lattice.pitch.value()),
                "a lattice lies at no finite place");
  base::require(lattice.pitch > units::Metres{0.0}, "a lattice has no pitch");
  base::require(lattice.columns >= 1 && lattice.rows >= 1, "a lattice has no cells");
  base::require(std::int64_t{lattice.columns} * lattice.rows <= kMostCells,
                "a lattice has more cells than can be numbered");
}

std::uint32_t index_of(const Lattice& lattice, Cell cell) {
  base::require(holds(lattice, cell), "a cell lies off its lattice");
  return static_cast<std::uint32_t>(cell.row) * static_cast<std::uint32_t>(lattice.columns) +
         static_cast<std::uint32_t>(cell.column);
}

std::uint32_t index_of(const Lattice& lattice, State state) {
  base::require(index_of(state.heading) < kHeadings, "there are sixteen headings");
  return index_of(lattice, state.cell) * kHeadings + index_of(state.heading);
}

geo::MapPoint centre_of(const Lattice& lattice, Cell cell) {
  return {lattice.north_west.east + lattice.pitch * cell.column,
          lattice.north_west.north - lattice.pitch * cell.row};
}

std::optional<Cell> cell_of(const Lattice& lattice, geo::MapPoint place) {
  const double column = std::floor((place.east - lattice.north_west.east) / lattice.pitch + 0.5);
  const double row = std::floor((lattice.north_west.north - place.north) / lattice.pitch + 0.5);
  if (0.0 <= column && column < lattice.columns && 0.0 <= row && row < lattice.rows) {
    return Cell{static_cast<std::int32_t>(column), static_cast<std::int32_t>(row)};
  }
  return std::nullopt;
}

geo::Segment move_of(const Lattice& lattice, State state) {
  return {.from = centre_of(lattice, state.cell),
          .to = centre_of(lattice, state.cell + step_of(state.heading))};
}

}  // namespace rimehaul::crossing
