#include "search/chains.h"

#include <algorithm>
#include <numeric>
#include <utility>

#include "base/require.h"
#include "search/nearest_first.h"

namespace rimehaul::search {

namespace {

constexpr std::uint32_t kNone = std::numeric_limits<std::uint32_t>::max();

/// What is no number is barred too.
double barred_unless_known(double price) {
  return std::min(kBarred, price);
}

/// Turns how many there are of each into where each begins, with the end of all behind.
void begins_from_counts(std::vector<std::uint32_t>& counts) {
  counts.push_back(0);
  std::exclusive_scan(counts.begin(), counts.end(), counts.begin(), 0U);
}

}  // namespace

/// Which nodes are kept, and the links between them, in order of the node they leave.
struct Chains::Folding {
  Folding(const Graph& graph, const std::vector<bool>& usable_arcs, std::span<const Node> ends)
      : arcs{graph.arcs()}, usable{usable_arcs}, kept_of(graph.node_count(), kNone) {
    keep_nodes(ends);
    in_links.reserve(arcs.size());
    for (ArcIndex arc = 0; arc < arcs.size(); ++arc) {
      if (usable[arc] && kept_of[index_of(arcs[arc].from)] != kNone) {
        follow(arc);
      }
    }
  }

  /// All but those with one way in and one way out, which remember their way out, and those without
  /// any. Those with one way out come last.
  void keep_nodes(std::span<const Node> ends) {
    std::vector<std::uint8_t> ways_in(kept_of.size(), 0);
    std::vector<std::uint8_t> ways_out(kept_of.size(), 0);
    way_on.assign(kept_of.size(), kNoArc);
    const auto up_to_two = [](std::uint8_t& count) {
      count = static_cast<std::uint8_t>(count == 0 ? 1 : 2);
    };
    for (ArcIndex arc = 0; arc < arcs.size(); ++arc) {
      if (usable[arc]) {
        up_to_two(ways_in[index_of(arcs[arc].to)]);
        up_to_two(ways_out[index_of(arcs[arc].from)]);
        way_on[index_of(arcs[arc].from)] = arc;
      }
    }
    for (const Node end : ends) {
      ways_in[index_of(end)] = 2;
    }
    const auto number = [&](const auto& is_kept) {
      for (std::size_t node = 0; node < kept_of.size(); ++node) {
        if (is_kept(ways_in[node], ways_out[node])) {
          kept_of[node] = kept_count++;
        }
      }
    };
    number([](auto in, auto out) { return out != 1 && in + out > 0; });
    first_one_way = kept_count;
    number([](auto in, auto out) { return out == 1 && in != 1; });
  }

  /// From a node that is kept to the next: every node between has one way in, so none comes twice.
  void follow(ArcIndex arc) {
    const std::uint32_t from = kept_of[index_of(arcs[arc].from)];
    const auto first = static_cast<std::uint32_t>(in_links.size());
    in_links.push_back(arc);
    std::size_t at = index_of(arcs[arc].to);
    while (kept_of[at] == kNone) {
      in_links.push_back(way_on[at]);
      at = index_of(arcs[way_on[at]].to);
    }
    links.push_back({from, kept_of[at]});
    runs.push_back({first, static_cast<std::uint32_t>(in_links.size()) - first});
  }

  const std::vector<Arc>& arcs;
  const std::vector<bool>& usable;
  std::vector<std::uint32_t> kept_of;
  std::uint32_t kept_count = 0;
  std::uint32_t first_one_way = 0;
  std::vector<ArcIndex> way_on;  ///< by node: its only way out, where it has but one
  std::vector<ArcIndex> in_links;
  std::vector<std::pair<Kept, Kept>> links;  ///< from and to
  std::vector<Run> runs;
};

Chains::Chains(const Graph& graph, const std::vector<bool>& usable, std::span<const Node> ends)
    : graph_{&graph} {
  base::require(usable.size() == graph.arcs().size(), "not every arc is usable or not");
  Folding folding{graph, usable, ends};
  take(folding);
  kept_of_ = std::move(folding.kept_of);
  arcs_ = std::move(folding.in_links);
}

/// Sorts the links by the node they lead to, and lists them by the node they leave.
void Chains::take(const Folding& folding) {
  const std::size_t count = folding.links.size();
  into_.assign(folding.kept_count, 0);
  out_of_.assign(folding.kept_count, 0);
  for (const auto& [from, to] : folding.links) {
    ++into_[to];
    ++out_of_[from];
  }
  first_one_way_ = folding.first_one_way;
  begins_from_counts(into_);
  begins_from_counts(out_of_);
  from_.resize(count);
  to_.resize(count);
  runs_.resize(count);
  links_out_.resize(count);
  std::vector<LinkIndex> next_into = into_;
  std::vector<std::uint32_t> next_out = out_of_;
  for (std::size_t i = 0; i < count; ++i) {
    const auto& [from, to] = folding.links[i];
    const LinkIndex link = next_into[to]++;
    from_[link] = from;
    to_[link] = to;
    runs_[link] = folding.runs[i];
    links_out_[next_out[from]++] = link;
  }
}

LinkPrices Chains::fold(const Prices& prices, Combining combining) const {
  graph_->requires_prices(prices);
  return combining == Combining::maximum
             ? folded(prices, [](double a, double b) { return std::max(a, b); })
             : folded(prices, [](double a, double b) { return a + b; });
}

template <class Combine>
LinkPrices Chains::folded(const Prices& prices, const Combine& combine) const {
  LinkPrices links(link_count());
  for (LinkIndex link = 0; link < links.size(); ++link) {
    double price = 0.0;
    for (const ArcIndex arc : arcs_of(link)) {
      price = combine(price, barred_unless_known(prices[arc]));
    }
    links[link] = price;
  }
  return links;
}

WaysTo Chains::ways_to(Node goal, const LinkPrices& prices, Combining combining) const {
  base::require(prices.size() == link_count(), "not one price per link");
  return combining == Combining::maximum
             ? searched(goal, prices, [](double a, double b) { return std::max(a, b); })
             : searched(goal, prices, [](double a, double b) { return a + b; });
}

/// One search. A node with one way out is settled with the node that it leads to: only the others
/// must wait.
template <class Combine>
struct Chains::Search {
  const Chains& chains;
  const LinkPrices& prices;
  const Combine& combine;
  std::vector<WaysTo::Way> ways{chains.kept_count()};
  NearestFirst waiting{};
  std::vector<Kept> settled{};

  void run(Kept goal) {
    ways[goal].price = 0.0;
    waiting.push({.price = 0.0, .node = goal});
    while (!waiting.empty()) {
      const NearestFirst::Reached nearest = waiting.pop();
      if (nearest.price > ways[nearest.node].price) {
        continue;  // it was reached cheaper since
      }
      settled.push_back(nearest.node);
      while (!settled.empty()) {
        const Kept node = settled.back();
        settled.pop_back();
        look_back_from(node);
      }
    }
  }

  void look_back_from(Kept to) {
    const double beyond = ways[to].price;
    for (LinkIndex link = chains.into_[to]; link < chains.into_[to + 1]; ++link) {
      const Kept from = chains.from_[link];
      const double price = combine(prices[link], beyond);
      if (!(price < ways[from].price)) {
        continue;
      }
      ways[from] = {.price = price, .link = link};
      if (from >= chains.first_one_way_) {
        settled.push_back(from);
      } else {
        waiting.push({.price = price, .node = from});
      }
    }
  }
};

template <class Combine>
WaysTo Chains::searched(Node goal, const LinkPrices& prices, const Combine& combine) const {
  Search<Combine> search{*this, prices, combine};
  search.run(kept(goal));
  return {.goal = goal, .from = std::move(search.ways)};
}

double Chains::price_from(Node start, const WaysTo& ways) const {
  return ways.from[kept(start)].price;
}

std::optional<Path> Chains::path_from(Node start, const WaysTo& ways, const Priced& priced) const {
  if (!(price_from(start, ways) < kBarred)) {
    return std::nullopt;
  }
  Path path;
  const Kept goal = kept(ways.goal);
  for (Kept at = kept(start); at != goal;) {
    const LinkIndex link = link_to_take(at, ways, priced);
    const std::span<const ArcIndex> arcs = arcs_of(link);
    path.arcs.insert(path.arcs.end(), arcs.begin(), arcs.end());
    at = to_[link];
  }
  path.price = price_along(path.arcs, priced.arcs);
  return path;
}

/// The first that is cheapest and brings nearer with its first arc; else that of the search.
LinkIndex Chains::link_to_take(Kept from, const WaysTo& ways, const Priced& priced) const {
  for (std::uint32_t i = out_of_[from]; i < out_of_[from + 1]; ++i) {
    const LinkIndex link = links_out_[i];
    if (priced.links[link] + ways.from[to_[link]].price == ways.from[from].price &&
        priced.arcs[arcs_of(link).front()] > 0.0) {
      return link;
    }
  }
  return ways.from[from].link;
}

Chains::Kept Chains::kept(Node node) const {
  base::require(index_of(node) < kept_of_.size() && kept_of_[index_of(node)] != kNone,
                "a way is asked for from or to a node that is not kept");
  return kept_of_[index_of(node)];
}

std::span<const ArcIndex> Chains::arcs_of(LinkIndex link) const {
  return std::span{arcs_}.subspan(runs_[link].first, runs_[link].count);
}

}  // namespace rimehaul::search
