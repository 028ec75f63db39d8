#include "crossing/reach.h"

#include "crossing/bucket_queue.h"

namespace rimehaul::crossing {
namespace {

constexpr std::size_t kAhead = 12;  // moves by which memory is asked for before it is needed

}  // namespace

Reach::Reach(const MovePrices& prices, std::span<const State> starts) : tree_{prices, starts} {
  BucketQueue ends;  // of moves, by price from a start
  const auto leave = [&](std::uint64_t price, std::uint32_t state) {
    if (prices.price[state] != 0) {
      ends.put(price + prices.price[state], state);
    }
  };
  for (const std::uint32_t start : tree_.starts()) {
    leave(0, start);
  }
  while (const auto batch = ends.take()) {
    const std::span<const std::uint32_t> moves = batch->items;
    const std::uint64_t price = batch->key;
    for (std::size_t at = 0; at < moves.size(); ++at) {
      if (at + kAhead < moves.size()) {
        tree_.foresee(moves[at + kAhead]);
      }
      tree_.arrive(moves[at], [&](std::uint32_t state) { leave(price, state); });
    }
  }
}

bool Reach::reached(State state) const {
  return tree_.reached(index_of(tree_.prices().lattice, state));
}

std::optional<Way> Reach::way_to(State state) const {
  const std::uint32_t index = index_of(tree_.prices().lattice, state);
  return tree_.reached(index) ? std::optional{tree_.way_to(index)} : std::nullopt;
}

}  // namespace rimehaul::crossing
