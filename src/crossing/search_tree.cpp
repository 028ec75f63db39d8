#include "crossing/search_tree.h"

#include <algorithm>

#include "base/require.h"

namespace rimehaul::crossing {

SearchTree::SearchTree(const MovePrices& prices, std::span<const State> starts)
    : prices_{&prices}, offsets_{cell_offsets(prices.lattice)} {
  require_sound(prices);
  marks_.assign(cell_count(prices.lattice), 0);
  for (const State& start : starts) {
    starts_.push_back(index_of(prices.lattice, start));
  }
  std::ranges::sort(starts_);
  starts_.erase(std::unique(starts_.begin(), starts_.end()), starts_.end());
  for (const std::uint32_t start : starts_) {
    marks_[start / kHeadings] |= kStraight << (start % kHeadings * 2);
  }
}

Way SearchTree::way_to(std::uint32_t state) const {
  base::require(reached(state), "there is no way to a state that was not reached");
  Way way;
  way.states.push_back(state_at(prices_->lattice, state));
  while (!std::ranges::binary_search(starts_, state)) {
    const std::uint32_t heading = state % kHeadings;
    const std::uint32_t turn = marks_[state / kHeadings] >> (heading * 2) & 3U;
    const std::uint32_t before = (heading + kStraight - turn) % kHeadings;
    state = (state / kHeadings - offsets_[before]) * kHeadings + before;
    way.states.push_back(state_at(prices_->lattice, state));
    way.price += prices_->price[state];
  }
  std::ranges::reverse(way.states);
  return way;
}

}  // namespace rimehaul::crossing
