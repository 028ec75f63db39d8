#include "terrain/error.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <vector>

#include "base/require.h"

namespace rimehaul::terrain {

using units::Slope;

namespace {

/// A gradient as a weighted sum of heights: how much each cell's height counts in the rise per
/// column and per row.
struct WeightedCell {
  CellIndex cell;
  double per_column = 0.0;
  double per_row = 0.0;
};
using Weighting = std::vector<WeightedCell>;

bool possible(const HeightError& error) {
  const double deviation_m = error.standard_deviation.value();
  return deviation_m >= 0.0 && std::isfinite(deviation_m) &&
         error.correlation_length.value() >= 0.0;
}

double correlation_over(units::Metres distance, const HeightError& error) {
  if (distance == units::Metres{0}) {
    return 1.0;
  }
  const units::Metres length = error.correlation_length;
  return length > units::Metres{0} ? std::exp(-(distance / length)) : 0.0;
}

bool declared(const HeightTrust& trust) {
  return !trust.errors.empty() && std::ranges::all_of(trust.errors, possible) &&
         trust.mean_over >= 1 && trust.rounded_to >= units::Metres{0};
}

/// Covariance of the heights of two places, m2.
double covariance_m2(units::Metres apart, const std::vector<HeightError>& errors) {
  double sum_m2 = 0.0;
  for (const HeightError& error : errors) {
    const double deviation_m = error.standard_deviation.value();
    sum_m2 += deviation_m * deviation_m * correlation_over(apart, error);
  }
  return sum_m2;
}

/// Covariance of two heights of a lattice, m2, so many columns and rows apart. Of two means it is
/// the mean over all pairs of their cells; pairs as far apart are taken together.
double covariance_of_cells_m2(const GridFrame& frame, const HeightTrust& trust, CellIndex apart) {
  const std::int64_t n = trust.mean_over;
  const auto pairs_in_all = static_cast<double>(n * n * n * n);
  const auto in_cells = [n](std::int64_t cells, std::int64_t more) {
    return static_cast<double>(cells) + static_cast<double>(more) / static_cast<double>(n);
  };
  double sum_m2 = 0.0;
  for (std::int64_t row = 1 - n; row < n; ++row) {
    for (std::int64_t column = 1 - n; column < n; ++column) {
      const auto pairs = static_cast<double>((n - std::abs(row)) * (n - std::abs(column)));
      const units::Metres distance =
          frame.length_of({in_cells(apart.column, column), in_cells(apart.row, row)});
      sum_m2 += pairs / pairs_in_all * covariance_m2(distance, trust.errors);
    }
  }
  if (apart == CellIndex{}) {
    const double step_m = trust.rounded_to.value();
    sum_m2 += step_m * step_m / 12.0;
  }
  return sum_m2;
}

/// The larger eigenvalue of the gradient's covariance: Var of a weighted sum is the double sum of
/// weights times covariances.
double worst_direction_variance(const GridFrame& frame, const Weighting& weighting,
                                const HeightTrust& trust) {
  double east = 0.0;
  double north = 0.0;
  double both = 0.0;
  for (const WeightedCell& one : weighting) {
    const Gradient a = frame.to_map({units::Metres{one.per_column}, units::Metres{one.per_row}});
    for (const WeightedCell& other : weighting) {
      const Gradient b =
          frame.to_map({units::Metres{other.per_column}, units::Metres{other.per_row}});
      const double shared = covariance_of_cells_m2(
          frame, trust, {other.cell.column - one.cell.column, other.cell.row - one.cell.row});
      east += a.east.ratio() * shared * b.east.ratio();
      north += a.north.ratio() * shared * b.north.ratio();
      both += a.east.ratio() * shared * b.north.ratio();
    }
  }
  return (east + north) / 2.0 + std::hypot((east - north) / 2.0, both);
}

constexpr std::array<CellIndex, 4> kCorners{
    {CellIndex{0, 0}, CellIndex{1, 0}, CellIndex{0, 1}, CellIndex{1, 1}}};

/// The bilinear surface's gradient at one corner of its patch.
Weighting bilinear_at(CellIndex corner) {
  Weighting weighting;
  for (const CellIndex cell : kCorners) {
    weighting.push_back(
        {.cell = cell,
         .per_column = cell.row == corner.row ? (cell.column == 1 ? 1.0 : -1.0) : 0.0,
         .per_row = cell.column == corner.column ? (cell.row == 1 ? 1.0 : -1.0) : 0.0});
  }
  return weighting;
}

/// How much the middle and the two outer lines of three count, each over two steps; in the order of
/// WindowEstimate.
struct LineWeights {
  double middle = 0.0;
  double outer = 0.0;
};

LineWeights line_weights(WindowEstimate estimate) {
  constexpr std::array<LineWeights, 3> kWeights{
      {LineWeights{.middle = 2.0 / 8.0, .outer = 1.0 / 8.0},
       LineWeights{.middle = 1.0 / 2.0, .outer = 0.0},
       LineWeights{.middle = 1.0 / 6.0, .outer = 1.0 / 6.0}}};
  const auto index = static_cast<std::size_t>(estimate);
  base::require(index < kWeights.size(), "an estimate of a gradient has its weights");
  return kWeights[index];
}

Weighting window_of(WindowEstimate estimate) {
  const LineWeights line = line_weights(estimate);
  Weighting weighting;
  for (std::int64_t row = -1; row <= 1; ++row) {
    for (std::int64_t column = -1; column <= 1; ++column) {
      weighting.push_back(
          {.cell = {column, row},
           .per_column = static_cast<double>(column) * (row == 0 ? line.middle : line.outer),
           .per_row = static_cast<double>(row) * (column == 0 ? line.middle : line.outer)});
    }
  }
  return weighting;
}

}  // namespace

// The steepness in a fixed direction is a sum of heights whose weights change linearly over the
// patch, so its variance is convex there and greatest at a corner.
std::optional<Slope> gradient_sigma(const GridFrame& frame, const HeightTrust& trust) {
  if (!declared(trust)) {
    return std::nullopt;
  }
  double worst = 0.0;
  for (const CellIndex corner : kCorners) {
    worst = std::max(worst, worst_direction_variance(frame, bilinear_at(corner), trust));
  }
  return Slope::from_ratio(std::sqrt(worst));
}

std::optional<Slope> window_sigma(const GridFrame& frame, const HeightTrust& trust,
                                  WindowEstimate estimate) {
  if (!declared(trust)) {
    return std::nullopt;
  }
  return Slope::from_ratio(std::sqrt(worst_direction_variance(frame, window_of(estimate), trust)));
}

}  // namespace rimehaul::terrain
