// A queue that hands out what is nearest first.
#pragma once

#include <algorithm>
#include <cstdint>
#include <vector>

namespace rimehaul::search {

/// A heap of four children to a node: it is half as deep as one of two, and the children of a node
/// lie side by side (Johnson 1975, Information Processing Letters 4(3):53-57).
class NearestFirst {
 public:
  /// A node that was reached for a price.
  struct Reached {
    double price = 0.0;
    std::uint32_t node = 0;
  };

  [[nodiscard]] bool empty() const { return heap_.empty(); }

  void push(Reached reached) {
    std::size_t place = heap_.size();
    heap_.push_back(reached);
    while (place > 0 && reached.price < heap_[(place - 1) / kChildren].price) {
      heap_[place] = heap_[(place - 1) / kChildren];
      place = (place - 1) / kChildren;
    }
    heap_[place] = reached;
  }

  /// Requires that there is one.
  Reached pop() {
    const Reached nearest = heap_.front();
    const Reached last = heap_.back();
    heap_.pop_back();
    if (!heap_.empty()) {
      sink(last);
    }
    return nearest;
  }

 private:
  static constexpr std::size_t kChildren = 4;

  /// Into the place of the first.
  void sink(Reached reached) {
    const std::size_t size = heap_.size();
    std::size_t place = 0;
    for (std::size_t first = 1; first < size; first = place * kChildren + 1) {
      std::size_t least = first;
      const std::size_t end = std::min(first + kChildren, size);
      for (std::size_t child = first + 1; child < end; ++child) {
        least = heap_[child].price < heap_[least].price ? child : least;
      }
      if (!(heap_[least].price < reached.price)) {
        break;
      }
      heap_[place] = heap_[least];
      place = least;
    }
    heap_[place] = reached;
  }

  std::vector<Reached> heap_;
};

}  // namespace rimehaul::search
