#include "terrain/grid.h"

#include <algorithm>
#include <cmath>

#include "base/require.h"

namespace rimehaul::terrain {

using units::Metres;
using units::Slope;

namespace {

/// Sine of the angle between columns and rows below which they count as one direction.
constexpr double kLeastSine = 1e-6;

double length_m(GridStep step) {
  return std::hypot(step.east.value(), step.north.value());
}

}  // namespace

GridFrame::GridFrame(geo::MapPoint first, GridSteps steps)
    : first_{first},
      steps_{steps},
      determinant_{steps.per_column.east.value() * steps.per_row.north.value() -
                   steps.per_column.north.value() * steps.per_row.east.value()} {
  const double area_m2 = length_m(steps.per_column) * length_m(steps.per_row);
  base::require(std::isfinite(first.east.value()) && std::isfinite(first.north.value()),
                "a grid starts at no place");
  base::require(
      std::isfinite(area_m2) && area_m2 > 0.0 && std::abs(determinant_) >= kLeastSine * area_m2,
      "the steps of a grid do not span the plane");
}

geo::MapPoint GridFrame::centre_of(CellIndex cell) const {
  const auto column = static_cast<double>(cell.column);
  const auto row = static_cast<double>(cell.row);
  return {first_.east + column * steps_.per_column.east + row * steps_.per_row.east,
          first_.north + column * steps_.per_column.north + row * steps_.per_row.north};
}

GridPlace GridFrame::locate(geo::MapPoint place) const {
  const double east_m = (place.east - first_.east).value();
  const double north_m = (place.north - first_.north).value();
  return {(east_m * steps_.per_row.north.value() - north_m * steps_.per_row.east.value()) /
              determinant_,
          (north_m * steps_.per_column.east.value() - east_m * steps_.per_column.north.value()) /
              determinant_};
}

Metres GridFrame::length_of(GridPlace way) const {
  return Metres{
      std::hypot((way.column * steps_.per_column.east + way.row * steps_.per_row.east).value(),
                 (way.column * steps_.per_column.north + way.row * steps_.per_row.north).value())};
}

// The rise of one step is the gradient times the step, so the gradient is the inverse transpose of
// the step matrix times the rises.
Gradient GridFrame::to_map(GridRise rise) const {
  const double column_m = rise.per_column.value();
  const double row_m = rise.per_row.value();
  const double east =
      column_m * steps_.per_row.north.value() - row_m * steps_.per_column.north.value();
  const double north =
      row_m * steps_.per_column.east.value() - column_m * steps_.per_row.east.value();
  return {Slope::from_ratio(east / determinant_), Slope::from_ratio(north / determinant_)};
}

Metres GridFrame::smaller_step() const {
  return Metres{std::min(length_m(steps_.per_column), length_m(steps_.per_row))};
}

Metres GridFrame::larger_step() const {
  return Metres{std::max(length_m(steps_.per_column), length_m(steps_.per_row))};
}

Metres GridFrame::half_diagonal() const {
  const GridStep sum{steps_.per_column.east + steps_.per_row.east,
                     steps_.per_column.north + steps_.per_row.north};
  const GridStep difference{steps_.per_column.east - steps_.per_row.east,
                            steps_.per_column.north - steps_.per_row.north};
  return Metres{std::max(length_m(sum), length_m(difference)) / 2.0};
}

Metres GridFrame::least_stretch() const {
  const double columns_m = length_m(steps_.per_column);
  const double rows_m = length_m(steps_.per_row);
  const double squares = columns_m * columns_m + rows_m * rows_m;
  const double both = 2.0 * std::abs(determinant_);
  // Sum and difference of the two singular values, from their squares' sum and their product.
  return Metres{(std::sqrt(squares + both) - std::sqrt(std::max(0.0, squares - both))) / 2.0};
}

}  // namespace rimehaul::terrain
