// The cheapest way over open ground from one set of states to another.
#pragma once

#include <variant>

#include "crossing/cost_to_go.h"
#include "crossing/search_tree.h"

namespace rimehaul::crossing {

/// Why there is no way; both are proven.
enum class NoWay {
  even_turning_on_the_spot,  ///< no line of open moves joins a start's cell and a goal's
  for_want_of_turns,         ///< such lines there are, but none with turns that the ground allows
};

/// A way of least price from any of the starts to any of the goals, by A* (Hart, Nilsson and
/// Raphael 1968). A goal may be barred to leave: it is only come to. Of ways of the same price one
/// is chosen by a fixed rule. Requires starts of the lattice. Takes a third of a byte a state
/// beside the prices and the cost to go, and what the queue holds.
[[nodiscard]] std::variant<Way, NoWay> find_way(std::span<const State> starts,
                                                const CostToGo& to_go);

}  // namespace rimehaul::crossing
