#include "crossing/cost_to_go.h"

#include <algorithm>

#include "base/require.h"
#include "crossing/bucket_queue.h"

namespace rimehaul::crossing {

CostToGo::CostToGo(const MovePrices& prices, std::span<const State> goals) : prices_{&prices} {
  require_sound(prices);
  const std::uint32_t cells = cell_count(prices.lattice);
  const auto offsets = cell_offsets(prices.lattice);
  ticks_.assign(cells, kNoWay);
  BucketQueue pending;
  for (const State& goal : goals) {
    goals_.push_back(index_of(prices.lattice, goal));
    ticks_[index_of(prices.lattice, goal.cell)] = 0;
    pending.put(0, index_of(prices.lattice, goal.cell));
  }
  std::ranges::sort(goals_);
  while (const auto batch = pending.take()) {
    base::require(batch->key < kNoWay - 255, "a way costs more ticks than can be counted");
    const auto ticks = static_cast<std::uint32_t>(batch->key);
    for (const std::uint32_t cell : batch->items) {
      if (ticks_[cell] != ticks) {
        continue;  // it has been reached at a lower price since
      }
      for (std::uint32_t heading = 0; heading < kHeadings; ++heading) {
        // Where this wraps to another row, that cell's move leads off the lattice and is barred.
        const std::uint32_t before = cell - offsets[heading];
        if (before >= cells) {
          continue;
        }
        const std::uint32_t price = prices.price[std::size_t{before} * kHeadings + heading];
        if (price != 0 && ticks + price < ticks_[before]) {
          ticks_[before] = ticks + price;
          pending.put(ticks + price, before);
        }
      }
    }
  }
}

std::optional<std::uint32_t> CostToGo::from(Cell cell) const {
  const std::uint32_t ticks = ticks_[index_of(prices_->lattice, cell)];
  return ticks == kNoWay ? std::nullopt : std::optional{ticks};
}

bool CostToGo::is_goal(std::uint32_t state) const {
  return std::ranges::binary_search(goals_, state);
}

}  // namespace rimehaul::crossing
