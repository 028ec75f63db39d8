#include "terrain/gradient.h"

#include <array>
#include <cmath>
#include <cstddef>

namespace rimehaul::terrain {

using units::Metres;
using units::Slope;

namespace {

/// Heights around a cell, row by row: [0] lies one row and one column before it, [4] is the cell.
using Window = std::array<double, 9>;

std::optional<Window> window_around(const HeightMap& heights, CellIndex cell) {
  Window window_m{};
  std::size_t next = 0;
  for (std::int64_t row = cell.row - 1; row <= cell.row + 1; ++row) {
    for (std::int64_t column = cell.column - 1; column <= cell.column + 1; ++column) {
      const auto height = heights.at(CellIndex{column, row});
      if (!height) {
        return std::nullopt;
      }
      window_m[next++] = height->above_datum_m();
    }
  }
  return window_m;
}

}  // namespace

// Horn 1981: weights 1, 2, 1 over the three differences on each side, each over two steps.
std::optional<Gradient> horn_gradient(const HeightMap& heights, CellIndex cell) {
  const auto window = window_around(heights, cell);
  if (!window) {
    return std::nullopt;
  }
  const Window& z = *window;
  const double per_column = ((z[2] + 2.0 * z[5] + z[8]) - (z[0] + 2.0 * z[3] + z[6])) / 8.0;
  const double per_row = ((z[6] + 2.0 * z[7] + z[8]) - (z[0] + 2.0 * z[1] + z[2])) / 8.0;
  return heights.frame().to_map({Metres{per_column}, Metres{per_row}});
}

// Zevenbergen and Thorne 1987: G and H of their partial quartic surface at its centre.
std::optional<Gradient> zevenbergen_thorne_gradient(const HeightMap& heights, CellIndex cell) {
  const auto before = heights.at(CellIndex{cell.column - 1, cell.row});
  const auto behind = heights.at(CellIndex{cell.column + 1, cell.row});
  const auto above = heights.at(CellIndex{cell.column, cell.row - 1});
  const auto below = heights.at(CellIndex{cell.column, cell.row + 1});
  if (!before || !behind || !above || !below) {
    return std::nullopt;
  }
  return heights.frame().to_map({(*behind - *before) / 2.0, (*below - *above) / 2.0});
}

Slope slope_of(Gradient gradient) {
  return Slope::from_ratio(std::hypot(gradient.east.ratio(), gradient.north.ratio()));
}

std::optional<units::Bearing> aspect_of(Gradient gradient) {
  const double east = gradient.east.ratio();
  const double north = gradient.north.ratio();
  const bool known = std::isfinite(east) && std::isfinite(north);
  if (!known || (east == 0.0 && north == 0.0)) {
    return std::nullopt;
  }
  return units::Bearing::of(-east, -north);
}

}  // namespace rimehaul::terrain
