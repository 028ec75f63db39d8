#include "terrain/error.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

namespace rimehaul::terrain {

using units::Slope;

namespace {

/// Cell centres around a patch, and one number for each.
constexpr std::array<CellIndex, 4> kCorners{
    {CellIndex{0, 0}, CellIndex{1, 0}, CellIndex{0, 1}, CellIndex{1, 1}}};
using PerCorner = std::array<double, 4>;
using Covariance = std::array<PerCorner, 4>;

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

Covariance covariance_of(const GridFrame& frame, const std::vector<HeightError>& errors) {
  Covariance sum{};
  for (const HeightError& error : errors) {
    const double variance_m2 = error.standard_deviation.value() * error.standard_deviation.value();
    for (std::size_t i = 0; i < kCorners.size(); ++i) {
      for (std::size_t j = 0; j < kCorners.size(); ++j) {
        const auto apart =
            geo::distance(frame.centre_of(kCorners[i]), frame.centre_of(kCorners[j]));
        sum[i][j] += variance_m2 * correlation_over(apart, error);
      }
    }
  }
  return sum;
}

double product(const PerCorner& a, const Covariance& covariance, const PerCorner& b) {
  double sum = 0.0;
  for (std::size_t i = 0; i < a.size(); ++i) {
    for (std::size_t j = 0; j < b.size(); ++j) {
      sum += a[i] * covariance[i][j] * b[j];
    }
  }
  return sum;
}

/// How much each corner's height counts in the steepness towards east and north at one corner.
struct Weights {
  PerCorner east{};
  PerCorner north{};
};

Weights weights_at(const GridFrame& frame, CellIndex place) {
  Weights weights;
  for (std::size_t i = 0; i < kCorners.size(); ++i) {
    const double column_sign = kCorners[i].column == 1 ? 1.0 : -1.0;
    const double row_sign = kCorners[i].row == 1 ? 1.0 : -1.0;
    const units::Metres per_column{kCorners[i].row == place.row ? column_sign : 0.0};
    const units::Metres per_row{kCorners[i].column == place.column ? row_sign : 0.0};
    const Gradient gradient = frame.to_map({per_column, per_row});
    weights.east[i] = gradient.east.ratio();
    weights.north[i] = gradient.north.ratio();
  }
  return weights;
}

double worst_direction_variance(const Weights& weights, const Covariance& covariance) {
  const double east = product(weights.east, covariance, weights.east);
  const double north = product(weights.north, covariance, weights.north);
  const double both = product(weights.east, covariance, weights.north);
  return (east + north) / 2.0 + std::hypot((east - north) / 2.0, both);
}

}  // namespace

// The steepness in a fixed direction is a sum of heights whose weights change linearly over the
// patch, so its variance is convex there and greatest at a corner.
std::optional<Slope> gradient_sigma(const GridFrame& frame, const HeightTrust& trust) {
  if (trust.errors.empty() || !std::ranges::all_of(trust.errors, possible)) {
    return std::nullopt;
  }
  const Covariance covariance = covariance_of(frame, trust.errors);
  double worst = 0.0;
  for (const CellIndex place : kCorners) {
    worst = std::max(worst, worst_direction_variance(weights_at(frame, place), covariance));
  }
  return Slope::from_ratio(std::sqrt(worst));
}

// Six weights of size 1, 2, 1, 1, 2, 1 over 8 w: their squares add to 12 / (64 w^2).
Slope horn_sigma_independent(const GridFrame& frame, units::Metres sigma_height) {
  return Slope::from_ratio(std::sqrt(12.0) / 8.0 * (sigma_height / frame.smaller_step()));
}

}  // namespace rimehaul::terrain
