// The searches, by Boost.Graph's Dijkstra over compressed sparse rows. Nothing else knows it.
#include "search/graph.h"

#include <algorithm>
#include <boost/graph/compressed_sparse_row_graph.hpp>
#include <boost/graph/dijkstra_shortest_paths.hpp>
#include <boost/graph/filtered_graph.hpp>
#include <boost/property_map/function_property_map.hpp>
#include <cmath>
#include <numeric>
#include <utility>

#include "base/require.h"

namespace rimehaul::search {

namespace {

using Rows =
    boost::compressed_sparse_row_graph<boost::directedS, boost::no_property, boost::no_property,
                                       boost::no_property, std::uint32_t, std::uint32_t>;
using RowsEdge = Rows::edge_descriptor;
using RowsNode = Rows::vertex_descriptor;

/// Arcs as they are, or all turned round: rows, and which arc each edge of the rows stands for.
struct Direction {
  Rows rows;
  std::vector<ArcIndex> arc_of_edge;

  [[nodiscard]] ArcIndex arc(RowsEdge edge) const {
    return arc_of_edge[get(boost::edge_index, rows, edge)];
  }
};

Direction arranged(std::size_t nodes, const std::vector<Arc>& arcs) {
  std::vector<std::pair<RowsNode, RowsNode>> pairs;
  pairs.reserve(arcs.size());
  for (const Arc& arc : arcs) {
    pairs.emplace_back(index_of(arc.from), index_of(arc.to));
  }
  Direction direction{.rows = Rows{boost::edges_are_sorted, pairs.begin(), pairs.end(),
                                   static_cast<std::uint32_t>(nodes)},
                      .arc_of_edge = std::vector<ArcIndex>(arcs.size())};
  std::iota(direction.arc_of_edge.begin(), direction.arc_of_edge.end(), ArcIndex{0});
  return direction;
}

Direction turned_round(std::size_t nodes, const std::vector<Arc>& arcs) {
  std::vector<ArcIndex> order(arcs.size());
  std::iota(order.begin(), order.end(), ArcIndex{0});
  std::ranges::stable_sort(order, {}, [&](ArcIndex arc) { return arcs[arc].to; });
  std::vector<Arc> turned;
  turned.reserve(arcs.size());
  for (const ArcIndex arc : order) {
    turned.push_back({.from = arcs[arc].to, .to = arcs[arc].from});
  }
  Direction direction = arranged(nodes, turned);
  direction.arc_of_edge = std::move(order);
  return direction;
}

/// Which edges a search may use. Default-made only because the library demands it.
template <class MayUse>
struct EdgeFilter {
  const MayUse* may_use = nullptr;

  bool operator()(RowsEdge edge) const { return (*may_use)(edge); }
};

/// Thrown out of the library's loop once the goal is settled: it has no other way to stop.
struct Arrived {};

/// Notes over which arc each node was reached, and stops at the goal.
struct Witness : boost::dijkstra_visitor<> {
  const Direction* direction = nullptr;
  std::vector<ArcIndex>* arc = nullptr;
  std::optional<RowsNode> goal;

  template <class AnyGraph>
  void examine_vertex(RowsNode node, const AnyGraph&) const {
    if (node == goal) {
      throw Arrived{};
    }
  }
  template <class AnyGraph>
  void edge_relaxed(RowsEdge edge, const AnyGraph& graph) const {
    (*arc)[target(edge, graph)] = direction->arc(edge);
  }
};

/// One run of the library's search. `price_of` is asked only for edges that `may_use` lets pass.
template <class MayUse, class PriceOf, class Combine>
Reach run(const Direction& direction, Journey journey, const MayUse& may_use,
          const PriceOf& price_of, const Combine& combine) {
  const std::size_t nodes = num_vertices(direction.rows);
  Reach reach{.price = std::vector<double>(nodes, kBarred),
              .arc = std::vector<ArcIndex>(nodes, kNoArc)};
  const boost::filtered_graph<Rows, EdgeFilter<MayUse>> usable{direction.rows,
                                                               EdgeFilter<MayUse>{&may_use}};
  const auto start = static_cast<RowsNode>(index_of(journey.from));
  const auto index = get(boost::vertex_index, direction.rows);
  Witness witness;
  witness.direction = &direction;
  witness.arc = &reach.arc;
  if (journey.to != journey.from) {
    witness.goal = static_cast<RowsNode>(index_of(journey.to));
  }
  reach.price[start] = 0.0;
  try {
    boost::dijkstra_shortest_paths_no_init(
        usable, start, boost::dummy_property_map(),
        boost::make_iterator_property_map(reach.price.begin(), index),
        boost::make_function_property_map<RowsEdge, double>(price_of), index, std::less<double>(),
        combine, 0.0, witness);
  } catch (const Arrived&) {
    // The goal's price is settled; what lies beyond it stays unexplored.
  }
  return reach;
}

Reach reach_all(const Direction& direction, Node root, const Prices& prices, Combining combining) {
  const auto price_of = [&](RowsEdge edge) { return prices[direction.arc(edge)]; };
  const auto may_use = [&](RowsEdge edge) { return price_of(edge) < kBarred; };
  const Journey everywhere{.from = root, .to = root};
  if (combining == Combining::maximum) {
    return run(direction, everywhere, may_use, price_of,
               [](double a, double b) { return std::max(a, b); });
  }
  return run(direction, everywhere, may_use, price_of, std::plus<double>());
}

}  // namespace

struct Graph::Library {
  Direction ahead;
  Direction back;
};

Graph::Graph(std::size_t nodes, std::vector<Arc> arcs)
    : node_count_{nodes}, arcs_{std::move(arcs)} {
  base::require(nodes < kNoArc && arcs_.size() < kNoArc, "a graph is too large for its indices");
  base::require(std::ranges::is_sorted(arcs_, {}, &Arc::from), "arcs are not sorted");
  base::require(std::ranges::all_of(arcs_,
                                    [&](const Arc& arc) {
                                      return index_of(arc.from) < nodes && index_of(arc.to) < nodes;
                                    }),
                "an arc ends outside its graph");
  library_ = std::make_unique<Library>(
      Library{.ahead = arranged(nodes, arcs_), .back = turned_round(nodes, arcs_)});
}

Graph::~Graph() = default;
Graph::Graph(Graph&&) noexcept = default;
Graph& Graph::operator=(Graph&&) noexcept = default;

void Graph::requires_prices(const Prices& prices) const {
  base::require(prices.size() == arcs_.size(), "not one price per arc");
  base::require(std::ranges::none_of(prices, [](double price) { return price < 0.0; }),
                "an arc has a price below 0");
}

Reach Graph::reach_from(Node start, const Prices& prices, Combining combining) const {
  requires_prices(prices);
  return reach_all(library_->ahead, start, prices, combining);
}

Reach Graph::reach_to(Node goal, const Prices& prices, Combining combining) const {
  requires_prices(prices);
  Reach reach = reach_all(library_->back, goal, prices, combining);
  if (combining == Combining::maximum) {
    return reach;
  }
  // Every such arc leads to a node that was settled earlier, so the witnesses stay a tree.
  std::vector<bool> chosen(node_count_, false);
  for (ArcIndex index = 0; index < arcs_.size(); ++index) {
    const std::size_t from = index_of(arcs_[index].from);
    const double beyond = reach.price[index_of(arcs_[index].to)];
    if (!chosen[from] && beyond < reach.price[from] &&
        beyond + prices[index] == reach.price[from]) {
      reach.arc[from] = index;
      chosen[from] = true;
    }
  }
  return reach;
}

std::optional<Path> Graph::cheapest_path(Journey journey, const Prices& prices, const Bars& bars,
                                         const std::vector<double>& still_to_go) const {
  const Direction& ahead = library_->ahead;
  const auto may_use = [&](RowsEdge edge) {
    const std::size_t to = target(edge, ahead.rows);
    const ArcIndex arc = ahead.arc(edge);
    return prices[arc] < kBarred && still_to_go[to] < kBarred && !bars.nodes[to] &&
           std::ranges::find(bars.arcs, arc) == bars.arcs.end();
  };
  const auto detour_of = [&](RowsEdge edge) {
    const double gained =
        still_to_go[source(edge, ahead.rows)] - still_to_go[target(edge, ahead.rows)];
    return std::max(0.0, prices[ahead.arc(edge)] - gained);  // below 0 by rounding alone
  };
  if (!(still_to_go[index_of(journey.from)] < kBarred)) {
    return std::nullopt;
  }
  const Reach reach = run(ahead, journey, may_use, detour_of, std::plus<double>());
  if (!(reach.price[index_of(journey.to)] < kBarred)) {
    return std::nullopt;
  }
  Path path;
  for (Node node = journey.to; node != journey.from;) {
    path.arcs.push_back(reach.arc[index_of(node)]);
    node = arcs_[path.arcs.back()].from;
  }
  std::ranges::reverse(path.arcs);
  path.price = price_along(path.arcs, prices);
  return path;
}

std::optional<Path> path_to_goal(const Graph& graph, const Prices& prices, const Reach& to_goal,
                                 Node from) {
  if (!(to_goal.price[index_of(from)] < kBarred)) {
    return std::nullopt;
  }
  Path path;
  for (ArcIndex arc = to_goal.arc[index_of(from)]; arc != kNoArc;
       arc = to_goal.arc[index_of(graph.arcs()[arc].to)]) {
    path.arcs.push_back(arc);
  }
  path.price = price_along(path.arcs, prices);
  return path;
}

double price_along(std::span<const ArcIndex> arcs, const Prices& prices) {
  double sum = 0.0;
  for (const ArcIndex arc : arcs) {
    sum += prices[arc];
  }
  return sum;
}

}  // namespace rimehaul::search
