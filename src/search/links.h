// Chains of a graph, folded into links between the nodes where there is a choice.
#pragma once

#include "search/graph.h"

namespace rimehaul::search {

/// Index of a node that is kept.
using Kept = std::uint32_t;
inline constexpr std::uint32_t kNone = std::numeric_limits<std::uint32_t>::max();

/// Where in Links::arcs some arcs stand that follow one another, in driving order.
struct Run {
  std::uint32_t first = 0;
  std::uint32_t count = 0;
};

/// A run, the tail that it leads into, and the kept node that is reached in the end.
struct Led {
  Run run;
  std::uint32_t tail = kNone;  ///< in Links::tails
  Kept to = kNone;             ///< of a tail that goes round and round or ends: kNone
};

/// A node with one way out leaves nothing to choose. So a link is an arc from a kept node, and what
/// must follow, up to the next kept node: a run, and where others join it, the tail that all of
/// them go on by. No arc stands in two runs.
struct Links {
  std::vector<Kept> kept_of;  ///< by node; kNone where it is not kept
  std::uint32_t kept_count = 0;
  std::vector<ArcIndex> arcs;  ///< of one run after the other
  std::vector<Led> tails;      ///< each after the one that it leads into
  std::vector<Led> links;  ///< in order of their first arc; such as lead to no kept node left out
  std::vector<Kept> from;  ///< by link
};

/// Keeps the `ends`, and every node with several ways out. Arcs that are not usable are left out.
/// Requires one entry of `usable` per arc (OurFault otherwise).
[[nodiscard]] Links folded_into_links(const Graph& graph, const std::vector<bool>& usable,
                                      std::span<const Node> ends);

}  // namespace rimehaul::search
