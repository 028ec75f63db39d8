// A directed graph and the searches on it, in plain words, so that one file alone knows the
// library.
#pragma once

#include <cstdint>
#include <limits>
#include <memory>
#include <optional>
#include <span>
#include <vector>

namespace rimehaul::search {

enum class Node : std::uint32_t {};
using ArcIndex = std::uint32_t;

inline constexpr double kBarred = std::numeric_limits<double>::infinity();
inline constexpr ArcIndex kNoArc = std::numeric_limits<ArcIndex>::max();

[[nodiscard]] constexpr std::size_t index_of(Node node) {
  return static_cast<std::size_t>(node);
}

struct Arc {
  Node from{};
  Node to{};

  friend auto operator<=>(const Arc&, const Arc&) = default;
};

/// One price per arc, by its index: 0 or more, kBarred where the arc may not be used. Not a number
/// counts as barred.
using Prices = std::vector<double>;

/// What a path costs: all its prices together, or the highest of them.
enum class Combining { sum, maximum };

/// The cheapest way between one node and every other. `arc` is the witness: the arc over which a
/// node was reached (seen from the start) or is left (seen from the goal); kNoArc at the node
/// itself and where `price` is infinite.
struct Reach {
  std::vector<double> price;
  std::vector<ArcIndex> arc;
};

/// From where to where.
struct Journey {
  Node from{};
  Node to{};
};

/// Arcs in driving order and the sum of their prices, added from the first to the last.
struct Path {
  std::vector<ArcIndex> arcs;
  double price = 0.0;
};

/// An immutable graph. Several arcs between the same nodes are kept apart.
class Graph {
 public:
  /// Requires arcs sorted by `from`, each between nodes below `nodes` (OurFault otherwise).
  Graph(std::size_t nodes, std::vector<Arc> arcs);
  ~Graph();
  Graph(Graph&&) noexcept;
  Graph& operator=(Graph&&) noexcept;

  [[nodiscard]] std::size_t node_count() const { return node_count_; }
  [[nodiscard]] const std::vector<Arc>& arcs() const { return arcs_; }
  /// Throws OurFault unless there is one price per arc, and none below 0.
  void requires_prices(const Prices& prices) const;

  /// Dijkstra (1959), with the maximum in place of the sum where so asked.
  [[nodiscard]] Reach reach_from(Node start, const Prices& prices, Combining combining) const;
  /// The same seen from the goal. Of several equally cheap ways by sum, each node leaves over the
  /// arc with the lowest index among those that bring it strictly nearer.
  [[nodiscard]] Reach reach_to(Node goal, const Prices& prices, Combining combining) const;

  /// What a search between two nodes must keep off.
  struct Bars {
    const std::vector<bool>& nodes;  ///< by node; the start may be barred: nothing returns to it
    std::span<const ArcIndex> arcs;
  };
  /// The cheapest path by sum that keeps off the bars; nothing when there is none. `still_to_go` is
  /// a lower bound of the price from each node to the goal that no arc undercuts, as reach_to
  /// gives: it steers the search (Hart, Nilsson and Raphael 1968) and never changes the price found
  /// beyond rounding.
  [[nodiscard]] std::optional<Path> cheapest_path(Journey journey, const Prices& prices,
                                                  const Bars& bars,
                                                  const std::vector<double>& still_to_go) const;

 private:
  struct Library;

  std::size_t node_count_ = 0;
  std::vector<Arc> arcs_;
  std::unique_ptr<Library> library_;
};

/// The path that a Reach from the goal takes from a node; nothing when the goal is out of reach.
[[nodiscard]] std::optional<Path> path_to_goal(const Graph& graph, const Prices& prices,
                                               const Reach& to_goal, Node from);

/// Sum of prices along arcs, added from the first to the last.
[[nodiscard]] double price_along(std::span<const ArcIndex> arcs, const Prices& prices);

}  // namespace rimehaul::search
