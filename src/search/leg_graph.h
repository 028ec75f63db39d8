// Legs and turns as a graph: a node per leg and stage of the journey, an arc per turn.
#pragma once

#include <span>
#include <vector>

#include "search/graph.h"
#include "search/usable.h"

namespace rimehaul::search {

/// Index into the turns that a graph was made from.
using TurnIndex = std::uint32_t;

/// Entering a leg over a turn; for the arcs into the goal, nothing is entered.
struct Step {
  std::optional<trails::LegId> leg;
  std::optional<TurnIndex> turn;  ///< nothing for the first leg
};

/// The graph of a journey past several junctions in order. A stage is the way from one of them to
/// the next; the leg that arrives there is the state from which the next stage sets out, so a turn
/// at a stop is judged like any other. The start is every leg that leaves the first junction, the
/// goal every leg that reaches the last.
struct LegGraph {
  Graph graph;
  Journey journey;
  std::vector<Step> steps;  ///< by arc
  std::size_t leg_count = 0;

  [[nodiscard]] std::size_t stage_of(Node node) const { return index_of(node) / leg_count; }
};

/// Turns must be sorted. Ways that come past the first junction again in the first stage are left
/// out: setting out there the other way is never worse.
[[nodiscard]] LegGraph make_leg_graph(const trails::Network& network,
                                      std::span<const trails::JunctionId> stops,
                                      const std::vector<Turn>& turns);

/// The cheapest way of the journey; nothing when there is none.
[[nodiscard]] std::optional<Path> cheapest_way(const LegGraph& legs, const Prices& prices);

/// The legs of a path, in driving order.
[[nodiscard]] std::vector<trails::LegId> legs_of(const LegGraph& legs, const Path& path);

}  // namespace rimehaul::search
