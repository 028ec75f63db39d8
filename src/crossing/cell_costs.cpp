#include "crossing/cell_costs.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>

#include "base/require.h"
#include "crossing/bucket_queue.h"

namespace rimehaul::crossing {
namespace {

constexpr double kBarred = -std::numeric_limits<double>::infinity();  // no sum is ever lower
constexpr double kNotYet = std::numeric_limits<double>::infinity();

std::size_t stride_of(Extent extent) {
  return static_cast<std::size_t>(extent.columns) + 2;
}

bool is_open(float cost) {
  return cost > 0.0F && std::isfinite(cost);
}

/// The width of a bucket: a little less than any move costs, so that the cells of one bucket cannot
/// better each other and each is final when its bucket's turn comes (Denardo and Fox 1979).
double bucket_width(std::span<const float> costs) {
  float least = std::numeric_limits<float>::infinity();
  float most = 0.0F;
  for (const float cost : costs) {
    if (is_open(cost)) {
      least = std::min(least, cost);
      most = std::max(most, cost);
    }
  }
  base::require(most == 0.0F || most / least < 1e9F, "costs of cells are too unlike each other");
  return 0.99 * double{least};
}

}  // namespace

CellCosts::CellCosts(Extent extent) : extent_{extent} {
  base::require(extent.columns >= 1 && extent.rows >= 1, "an extent has no cells");
  base::require(
      (std::int64_t{extent.columns} + 2) * (std::int64_t{extent.rows} + 2) <= std::int64_t{1} << 30,
      "an extent has more cells than can be numbered");
  costs_.assign(stride_of(extent) * (static_cast<std::size_t>(extent.rows) + 2), 0.0F);
}

std::span<float> CellCosts::row(std::int32_t row) {
  base::require(0 <= row && row < extent_.rows, "a row lies outside its extent");
  return std::span{costs_}.subspan(stride_of(extent_) * (static_cast<std::size_t>(row) + 1) + 1,
                                   static_cast<std::size_t>(extent_.columns));
}

std::span<const float> CellCosts::row(std::int32_t row) const {
  base::require(0 <= row && row < extent_.rows, "a row lies outside its extent");
  return std::span{costs_}.subspan(stride_of(extent_) * (static_cast<std::size_t>(row) + 1) + 1,
                                   static_cast<std::size_t>(extent_.columns));
}

CellDistances::CellDistances(const CellCosts& costs, std::span<const Cell> starts)
    : extent_{costs.extent()} {
  const std::span<const float> cost{costs.costs_};
  distances_.resize(cost.size());
  std::ranges::transform(cost, distances_.begin(),
                         [](float one) { return is_open(one) ? kNotYet : kBarred; });
  const auto per_row = static_cast<std::ptrdiff_t>(stride_of(extent_));
  struct Neighbour {
    std::ptrdiff_t offset;
    double half_length;
  };
  constexpr double kDiagonal = std::numbers::sqrt2 / 2.0;
  const std::array<Neighbour, 8> neighbours{{{-per_row - 1, kDiagonal},
                                             {-per_row, 0.5},
                                             {-per_row + 1, kDiagonal},
                                             {-1, 0.5},
                                             {1, 0.5},
                                             {per_row - 1, kDiagonal},
                                             {per_row, 0.5},
                                             {per_row + 1, kDiagonal}}};
  const double buckets_per_cost = 1.0 / bucket_width(cost);
  const auto bucket_of = [&](double distance) {
    return static_cast<std::uint64_t>(distance * buckets_per_cost);
  };
  BucketQueue pending;
  for (const Cell& start : starts) {
    const std::size_t index = index_of(start);
    if (distances_[index] != kBarred) {
      distances_[index] = 0.0;
      pending.put(0, static_cast<std::uint32_t>(index));
    }
  }
  while (const auto batch = pending.take()) {
    for (const std::uint32_t index : batch->items) {
      const double here = distances_[index];
      if (bucket_of(here) != batch->key) {
        continue;  // it was final in an earlier bucket
      }
      for (const Neighbour& neighbour : neighbours) {
        const auto next =
            static_cast<std::size_t>(static_cast<std::ptrdiff_t>(index) + neighbour.offset);
        const double there =
            here + neighbour.half_length * (double{cost[index]} + double{cost[next]});
        const double known = distances_[next];
        if (there < known) {
          distances_[next] = there;
          const std::uint64_t bucket = bucket_of(there);
          if (known == kNotYet || bucket != bucket_of(known)) {
            pending.put(bucket, static_cast<std::uint32_t>(next));
          }
        }
      }
    }
  }
}

std::optional<double> CellDistances::to(Cell cell) const {
  const double distance = distances_[index_of(cell)];
  return distance < 0.0 || distance == kNotYet ? std::nullopt : std::optional{distance};
}

std::size_t CellDistances::index_of(Cell cell) const {
  base::require(
      0 <= cell.column && cell.column < extent_.columns && 0 <= cell.row && cell.row < extent_.rows,
      "a cell lies outside its extent");
  return stride_of(extent_) * (static_cast<std::size_t>(cell.row) + 1) +
         static_cast<std::size_t>(cell.column) + 1;
}

}  // namespace rimehaul::crossing
