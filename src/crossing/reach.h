// Everything that a rig can reach over open ground from a set of states, at the least price.
#pragma once

#include <optional>

#include "crossing/search_tree.h"

namespace rimehaul::crossing {

/// All states that can be reached from any of the starts, by Dijkstra (1959) on whole-number
/// prices. Of ways of the same price one is chosen by a fixed rule, so that the same ground and
/// starts give the same ways. Takes about a third of a byte a state beside the prices, and what the
/// queue holds.
class Reach {
 public:
  /// Holds a reference: the prices must outlive it. Requires sound prices and starts of the
  /// lattice.
  Reach(const MovePrices& prices, std::span<const State> starts);

  /// Whether the rig can come to a cell and turn to that heading there, be the next move barred or
  /// not; a start is reached. Requires a state of the lattice.
  [[nodiscard]] bool reached(State state) const;
  /// A way of least price from a start to a state; nothing if there is none.
  [[nodiscard]] std::optional<Way> way_to(State state) const;

 private:
  SearchTree tree_;
};

}  // namespace rimehaul::crossing
