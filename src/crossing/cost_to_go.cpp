#include "crossing/cost_to_go.h"

#include <algorithm>

#include "base/require.h"
#include "crossing/bucket_queue.h"

namespace rimehaul::crossing {
namespace {

constexpr std::uint32_t kDearest = 255;  // that a move can be

/// Fills in the ticks of all cells from those that have them already.
class BackwardSearch {
 public:
  BackwardSearch(const MovePrices& prices, std::span<std::uint32_t> ticks)
      : prices_{prices.price}, ticks_{ticks}, offsets_{cell_offsets(prices.lattice)} {}

  void begin_at(std::uint32_t cell) {
    ticks_[cell] = 0;
    pending_.put(0, cell);
  }

  void run() {
    while (const auto batch = pending_.take()) {
      base::require(batch->key < CostToGo::kNoWay - kDearest,
                    "a way costs more ticks than can be counted");
      for (const std::uint32_t cell : batch->items) {
        if (ticks_[cell] == batch->key) {  // else it has been reached at a lower price since
          expand(cell);
        }
      }
    }
  }

 private:
  void expand(std::uint32_t cell) {
    const std::uint32_t here = ticks_[cell];
    for (std::uint32_t heading = 0; heading < kHeadings; ++heading) {
      // Where this wraps to another row, that cell's move leads off the lattice and is barred.
      const std::uint32_t before = cell - offsets_[heading];
      if (before >= ticks_.size()) {
        continue;
      }
      const std::uint32_t price = prices_[std::size_t{before} * kHeadings + heading];
      const std::uint32_t ticks = here + price;
      if (price != 0 && ticks < ticks_[before]) {
        ticks_[before] = ticks;
        pending_.put(ticks, before);
      }
    }
  }

  std::span<const std::uint8_t> prices_;
  std::span<std::uint32_t> ticks_;
  std::array<std::uint32_t, kHeadings> offsets_;
  BucketQueue pending_;
};

}  // namespace

CostToGo::CostToGo(const MovePrices& prices, std::span<const State> goals) : prices_{&prices} {
  require_sound(prices);
  ticks_.assign(cell_count(prices.lattice), kNoWay);
  BackwardSearch search{prices, ticks_};
  for (const State& goal : goals) {
    goals_.push_back(index_of(prices.lattice, goal));
    search.begin_at(index_of(prices.lattice, goal.cell));
  }
  std::ranges::sort(goals_);
  search.run();
}

std::optional<std::uint32_t> CostToGo::from(Cell cell) const {
  const std::uint32_t ticks = ticks_[index_of(prices_->lattice, cell)];
  return ticks == kNoWay ? std::nullopt : std::optional{ticks};
}

bool CostToGo::is_goal(std::uint32_t state) const {
  return std::ranges::binary_search(goals_, state);
}

}  // namespace rimehaul::crossing
