#include "crossing/find_way.h"

#include <algorithm>
#include <optional>

#include "crossing/bucket_queue.h"

namespace rimehaul::crossing {
namespace {

constexpr std::size_t kAhead = 12;  // moves by which memory is asked for before it is needed

/// The search, which tries ends of moves by their price so far and what is to go from there.
class Search {
 public:
  Search(std::span<const State> starts, const CostToGo& to_go)
      : to_go_{&to_go}, tree_{to_go.prices(), starts} {}

  std::variant<Way, NoWay> run() {
    const auto ticks = to_go_->by_cell();
    bool joined = false;
    for (const std::uint32_t start : tree_.starts()) {
      joined = joined || ticks[start / kHeadings] != CostToGo::kNoWay;
      reach(0, start);
    }
    if (!joined) {
      return NoWay::even_turning_on_the_spot;
    }
    while (!goal_.has_value()) {
      const auto batch = ends_.take();
      if (!batch.has_value()) {
        return NoWay::for_want_of_turns;
      }
      work_off(*batch);
    }
    return tree_.way_to(*goal_);
  }

 private:
  void work_off(const BucketQueue::Batch& batch) {
    const auto ticks = to_go_->by_cell();
    for (std::size_t at = 0; at < batch.items.size(); ++at) {
      if (at + kAhead < batch.items.size()) {
        tree_.foresee(batch.items[at + kAhead]);
      }
      const std::uint32_t move = batch.items[at];
      const std::uint64_t price = batch.key - ticks[tree_.end_of(move)];
      tree_.arrive(move, [&](std::uint32_t state) { reach(price, state); });
    }
  }

  void reach(std::uint64_t price, std::uint32_t state) {
    const auto ticks = to_go_->by_cell();
    if (!goal_.has_value() && ticks[state / kHeadings] == 0 && to_go_->is_goal(state)) {
      goal_ = state;
    }
    const std::uint32_t own = tree_.prices().price[state];
    if (own == 0) {
      return;
    }
    const std::uint32_t left = ticks[tree_.end_of(state)];
    if (left != CostToGo::kNoWay) {
      ends_.put(price + own + left, state);
    }
  }

  const CostToGo* to_go_;
  SearchTree tree_;
  BucketQueue ends_;
  std::optional<std::uint32_t> goal_;
};

}  // namespace

std::variant<Way, NoWay> find_way(std::span<const State> starts, const CostToGo& to_go) {
  return Search{starts, to_go}.run();
}

}  // namespace rimehaul::crossing
