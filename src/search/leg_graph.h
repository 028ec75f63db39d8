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
  std::vector<Node> starts;  ///< one, or one for each junction that ways set out from
  std::vector<Node> goals;   ///< one, or one for each junction that ways are to reach
  std::vector<Step> steps;   ///< by arc
  std::size_t leg_count = 0;

  /// Of a graph that was made for one.
  [[nodiscard]] Journey journey() const { return {.from = starts.front(), .to = goals.front()}; }
  [[nodiscard]] std::size_t stage_of(Node node) const { return index_of(node) / leg_count; }
};

/// Turns must be sorted. Ways that come past the first junction again in the first stage are left
/// out: setting out there the other way is never worse.
[[nodiscard]] LegGraph make_leg_graph(const trails::Network& network,
                                      std::span<const trails::JunctionId> stops,
                                      const std::vector<Turn>& turns);

/// Junctions that ways set out from, and such that they are to reach; each named once.
struct Between {
  std::vector<trails::JunctionId> from;
  std::vector<trails::JunctionId> to;
};

/// The graph of all ways from any of some junctions to any of others, with one stage, and a start
/// and a goal for each as they stand in `between`. Turns must be sorted. A way may lead past a
/// start or goal; where prices are above 0, and setting out costs no more than turning into the
/// same leg, no cheapest way comes past its own.
[[nodiscard]] LegGraph make_leg_graph(const trails::Network& network, const Between& between,
                                      const std::vector<Turn>& turns);

/// The graph of one way alone: a node for each of its legs, in driving order, and an arc for each
/// turn from one to the next, numbered likewise. Requires a leg or more.
[[nodiscard]] LegGraph make_leg_graph(std::span<const trails::LegId> way);

/// The cheapest way of the journey; nothing when there is none.
[[nodiscard]] std::optional<Path> cheapest_way(const LegGraph& legs, const Prices& prices);

/// The legs of a path, in driving order.
[[nodiscard]] std::vector<trails::LegId> legs_of(const LegGraph& legs, const Path& path);

}  // namespace rimehaul::search
