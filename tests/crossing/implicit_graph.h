// The states and moves of open ground as a graph that Boost's searches can walk, nothing stored.
#pragma once

#include <array>
#include <boost/graph/graph_traits.hpp>
#include <boost/graph/properties.hpp>
#include <boost/iterator/counting_iterator.hpp>
#include <boost/iterator/iterator_facade.hpp>
#include <boost/property_map/property_map.hpp>
#include <cstdint>
#include <utility>

#include "crossing/move_prices.h"

namespace rimehaul::testing {

/// A vertex is a state by its number, an edge a move with the turn at its end.
struct ImplicitGraph {
  using vertex_descriptor = std::uint32_t;
  struct edge_descriptor {
    std::uint32_t from = 0;
    std::uint32_t to = 0;

    friend bool operator==(const edge_descriptor&, const edge_descriptor&) = default;
  };
  using directed_category = boost::directed_tag;
  using edge_parallel_category = boost::disallow_parallel_edge_tag;
  struct traversal_category : boost::incidence_graph_tag, boost::vertex_list_graph_tag {};
  using vertices_size_type = std::uint32_t;
  using degree_size_type = std::uint32_t;
  using vertex_iterator = boost::counting_iterator<std::uint32_t>;

  /// Over the turns 0 to 2 that the end of a move allows; 3 is the end.
  class out_edge_iterator
      : public boost::iterator_facade<out_edge_iterator, edge_descriptor,
                                      boost::forward_traversal_tag, edge_descriptor> {
   public:
    out_edge_iterator() = default;
    out_edge_iterator(std::uint32_t from, std::uint32_t end, std::uint32_t turns,
                      std::uint32_t turn)
        : from_{from}, end_{end}, turns_{turns}, turn_{turn} {
      skip();
    }

   private:
    friend class boost::iterator_core_access;
    [[nodiscard]] std::uint32_t heading(std::uint32_t turn) const {
      return (from_ % 16 + turn + 15) % 16;
    }
    void skip() {
      while ((turn_ == 0 && (turns_ >> heading(0) & 1U) == 0) ||
             (turn_ == 2 && (turns_ >> heading(1) & 1U) == 0)) {
        ++turn_;
      }
    }
    [[nodiscard]] edge_descriptor dereference() const {
      return {from_, end_ * 16 + heading(turn_)};
    }
    [[nodiscard]] bool equal(const out_edge_iterator& other) const { return turn_ == other.turn_; }
    void increment() {
      ++turn_;
      skip();
    }

    std::uint32_t from_ = 0;
    std::uint32_t end_ = 0;
    std::uint32_t turns_ = 0;
    std::uint32_t turn_ = 3;
  };

  explicit ImplicitGraph(const crossing::MovePrices& ground)
      : prices{&ground}, offsets{cell_offsets(ground.lattice)} {}

  const crossing::MovePrices* prices;
  std::array<std::uint32_t, crossing::kHeadings> offsets;
};

inline std::pair<ImplicitGraph::out_edge_iterator, ImplicitGraph::out_edge_iterator> out_edges(
    std::uint32_t state, const ImplicitGraph& graph) {
  if (graph.prices->price[state] == 0) {
    return {};
  }
  const std::uint32_t end = state / 16 + graph.offsets[state % 16];
  const std::uint32_t turns = graph.prices->turns[end];
  return {{state, end, turns, 0}, {state, end, turns, 3}};
}
inline std::uint32_t out_degree(std::uint32_t state, const ImplicitGraph& graph) {
  const auto edges = out_edges(state, graph);
  return static_cast<std::uint32_t>(std::distance(edges.first, edges.second));
}
inline std::uint32_t source(ImplicitGraph::edge_descriptor edge, const ImplicitGraph& /*graph*/) {
  return edge.from;
}
inline std::uint32_t target(ImplicitGraph::edge_descriptor edge, const ImplicitGraph& /*graph*/) {
  return edge.to;
}
inline std::uint32_t num_vertices(const ImplicitGraph& graph) {
  return static_cast<std::uint32_t>(graph.prices->price.size());
}
inline std::pair<ImplicitGraph::vertex_iterator, ImplicitGraph::vertex_iterator> vertices(
    const ImplicitGraph& graph) {
  return {ImplicitGraph::vertex_iterator{0}, ImplicitGraph::vertex_iterator{num_vertices(graph)}};
}

/// What an edge costs: the price of its move.
struct EdgePrice {
  using key_type = ImplicitGraph::edge_descriptor;
  using value_type = std::uint32_t;
  using reference = std::uint32_t;
  using category = boost::readable_property_map_tag;
  const std::uint8_t* price = nullptr;
};
inline std::uint32_t get(const EdgePrice& map, ImplicitGraph::edge_descriptor edge) {
  return map.price[edge.from];
}

}  // namespace rimehaul::testing
