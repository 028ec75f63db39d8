#include "crossing/cell_costs.h"

#include <algorithm>
#include <array>
#include <bit>
#include <cmath>
#include <limits>
#include <numbers>

#include "base/require.h"
#include "crossing/bucket_queue.h"

namespace rimehaul::crossing {
namespace {

constexpr double kBarred = -std::numeric_limits<double>::infinity();  // no sum is ever lower
constexpr std::size_t kAhead = 8;  // cells by which memory is asked for before it is needed
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

/// Works the distances off, bucket by bucket.
class Search {
 public:
  Search(std::span<const float> costs, std::span<double> distances, std::size_t stride)
      : costs_{costs.data()},
        distances_{distances.data()},
        stride_{static_cast<std::ptrdiff_t>(stride)},
        buckets_per_cost_{1.0 / bucket_width(costs)} {}

  void begin_at(std::size_t index) {
    if (distances_[index] != kBarred) {
      distances_[index] = 0.0;
      pending_.put(0, static_cast<std::uint32_t>(index));
    }
  }

  void run() {
    while (const auto batch = pending_.take()) {
      for (std::size_t at = 0; at < batch->items.size(); ++at) {
        if (at + kAhead < batch->items.size()) {
          foresee(batch->items[at + kAhead]);
        }
        const std::uint32_t index = batch->items[at];
        if (bucket_of(distances_[index]) == batch->key) {  // else it was final in an earlier one
          expand(index);
        }
      }
    }
  }

 private:
  [[nodiscard]] std::uint64_t bucket_of(double distance) const {
    return static_cast<std::uint64_t>(static_cast<std::int64_t>(distance * buckets_per_cost_));
  }

  void foresee(std::uint32_t index) const {
    for (const std::ptrdiff_t row : {-stride_, std::ptrdiff_t{0}, stride_}) {
      __builtin_prefetch(distances_ + index + row, 1);
      __builtin_prefetch(costs_ + index + row);
    }
  }

  /// Looks at all neighbours before it changes any, as that spares the processor wrong guesses.
  void expand(std::uint32_t index) {
    constexpr double kDiagonal = std::numbers::sqrt2 / 2.0;
    double* const distances = distances_ + index;
    const float* const costs = costs_ + index;
    const double here = *distances;
    const double cost_here{*costs};
    std::array<double, 8> there{};
    unsigned better = 0;
    const auto look = [&](unsigned side, std::ptrdiff_t offset, double half_length) {
      const double distance = here + half_length * (cost_here + double{costs[offset]});
      there[side] = distance;
      better |= static_cast<unsigned>(distance < distances[offset]) << side;
    };
    look(0, -stride_ - 1, kDiagonal);
    look(1, -stride_, 0.5);
    look(2, -stride_ + 1, kDiagonal);
    look(3, -1, 0.5);
    look(4, 1, 0.5);
    look(5, stride_ - 1, kDiagonal);
    look(6, stride_, 0.5);
    look(7, stride_ + 1, kDiagonal);
    const std::array<std::ptrdiff_t, 8> offsets{-stride_ - 1, -stride_, -stride_ + 1, -1, 1,
                                                stride_ - 1,  stride_,  stride_ + 1};
    for (; better != 0; better &= better - 1) {
      const auto side = static_cast<std::size_t>(std::countr_zero(better));
      double& distance = distances[offsets[side]];
      const std::uint64_t bucket = bucket_of(there[side]);
      if (distance == kNotYet || bucket != bucket_of(distance)) {
        pending_.put(bucket, static_cast<std::uint32_t>(index + offsets[side]));
      }
      distance = there[side];
    }
  }

  const float* costs_;
  double* distances_;
  std::ptrdiff_t stride_;
  double buckets_per_cost_;
  BucketQueue pending_;
};

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
  const std::span<const float> padded{costs.costs_};
  distances_.assign(padded.size(), kBarred);
  for (std::size_t index = 0; index < padded.size(); ++index) {
    if (is_open(padded[index])) {
      distances_[index] = kNotYet;
    }
  }
  Search search{padded, distances_, stride_of(extent_)};
  for (const Cell& start : starts) {
    search.begin_at(index_of(start));
  }
  search.run();
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
