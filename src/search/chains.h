// Many answers on one graph: chains are folded into links once, and every search sees links alone.
#pragma once

#include "search/links.h"

namespace rimehaul::search {

using LinkIndex = std::uint32_t;

/// What a set of prices comes to over the links of Chains, by link: 0 or more, kBarred where an arc
/// of the link is barred.
using LinkPrices = std::vector<double>;

/// The cheapest ways to one goal, by the nodes that Chains has kept.
struct WaysTo {
  struct Way {
    double price = kBarred;
    LinkIndex link = 0;  ///< that is taken; means nothing at the goal and where there is no way
  };
  Node goal{};
  std::vector<Way> from;
};

/// A graph for searches with many goals and many sets of prices: its chains are folded into links,
/// and a set of prices is folded likewise, once for all goals. Where prices are multiples of one
/// step, above 0, and their sums stay under 2^53 steps, nothing is rounded: then prices and paths
/// are those of Graph::reach_to to the last digit, else prices within rounding.
class Chains {
 public:
  /// Arcs that are false in `usable` are left out. Ways are asked for from and to `ends` alone,
  /// which are kept. Holds a reference: the graph must outlive it. Throws OurFault where `usable`
  /// has not one entry per arc.
  Chains(const Graph& graph, const std::vector<bool>& usable, std::span<const Node> ends);

  /// One price per link. Throws OurFault where there is not one price per arc, or one below 0.
  [[nodiscard]] LinkPrices fold(const Prices& prices, Combining combining) const;

  /// Dijkstra (1959) from the goal, which must be one of the ends, with the maximum in place of the
  /// sum where so asked.
  [[nodiscard]] WaysTo ways_to(Node goal, const LinkPrices& prices, Combining combining) const;

  /// What the cheapest way from one of the ends costs; kBarred where there is none.
  [[nodiscard]] double price_from(Node start, const WaysTo& ways) const;

  /// What sums were searched with: by link, and the prices that they were folded from.
  struct Priced {
    const LinkPrices& links;
    const Prices& arcs;
  };
  /// A cheapest way by sum from one of the ends; nothing where there is none. Of several equally
  /// cheap, each node leaves over the arc with the lowest index among those that bring it strictly
  /// nearer.
  [[nodiscard]] std::optional<Path> path_from(Node start, const WaysTo& ways,
                                              const Priced& priced) const;

  [[nodiscard]] std::size_t kept_count() const { return into_.size() - 1; }
  [[nodiscard]] std::size_t link_count() const { return from_.size(); }

 private:
  template <class Combine>
  struct Search;

  void take(Links&& found);
  [[nodiscard]] Kept kept(Node node) const;
  [[nodiscard]] std::span<const ArcIndex> arcs_of(const Led& led) const;
  [[nodiscard]] LinkIndex link_to_take(Kept from, const WaysTo& ways, const Priced& priced) const;
  template <class Combine>
  [[nodiscard]] LinkPrices folded(const Prices& prices, const Combine& combine) const;
  template <class Combine>
  [[nodiscard]] WaysTo searched(Node goal, const LinkPrices& prices, const Combine& combine) const;

  const Graph* graph_;
  std::vector<Kept> kept_of_;          ///< by node
  std::vector<ArcIndex> arcs_;         ///< of one run after the other
  std::vector<Led> tails_;             ///< each after the one that it leads into
  std::vector<Led> links_;             ///< in order of the node they lead to
  std::vector<Kept> from_;             ///< by link
  std::vector<LinkIndex> into_;        ///< by kept node, its first link in; and the end of all
  std::vector<LinkIndex> links_out_;   ///< in order of the node they leave, then of first arc
  std::vector<std::uint32_t> out_of_;  ///< by kept node, its first in links_out_; and the end
};

}  // namespace rimehaul::search
