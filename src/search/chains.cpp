#include "search/chains.h"

#include <algorithm>
#include <numeric>
#include <utility>

#include "base/require.h"
#include "search/nearest_first.h"

namespace rimehaul::search {

namespace {

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

Chains::Chains(const Graph& graph, const std::vector<bool>& usable, std::span<const Node> ends)
    : graph_{&graph} {
  take(folded_into_links(graph, usable, ends));
}

/// Sorts the links by the node they lead to, and lists them by the node they leave.
void Chains::take(Links&& found) {
  const std::size_t count = found.links.size();
  into_.assign(found.kept_count, 0);
  out_of_.assign(found.kept_count, 0);
  for (std::size_t i = 0; i < count; ++i) {
    ++into_[found.links[i].to];
    ++out_of_[found.from[i]];
  }
  begins_from_counts(into_);
  begins_from_counts(out_of_);
  from_.resize(count);
  links_.resize(count);
  links_out_.resize(count);
  std::vector<LinkIndex> next_into = into_;
  std::vector<std::uint32_t> next_out = out_of_;
  for (std::size_t i = 0; i < count; ++i) {
    const LinkIndex link = next_into[found.links[i].to]++;
    from_[link] = found.from[i];
    links_[link] = found.links[i];
    links_out_[next_out[found.from[i]]++] = link;
  }
  kept_of_ = std::move(found.kept_of);
  arcs_ = std::move(found.arcs);
  tails_ = std::move(found.tails);
}

LinkPrices Chains::fold(const Prices& prices, Combining combining) const {
  graph_->requires_prices(prices);
  return combining == Combining::maximum
             ? folded(prices, [](double a, double b) { return std::max(a, b); })
             : folded(prices, [](double a, double b) { return a + b; });
}

template <class Combine>
LinkPrices Chains::folded(const Prices& prices, const Combine& combine) const {
  std::vector<double> tails;
  tails.reserve(tails_.size());
  const auto price_of = [&](const Led& led) {
    double price = 0.0;
    for (const ArcIndex arc : arcs_of(led)) {
      price = combine(price, barred_unless_known(prices[arc]));
    }
    return led.tail == kNone ? price : combine(price, tails[led.tail]);
  };
  for (const Led& tail : tails_) {
    tails.push_back(tail.to == kNone ? kBarred : price_of(tail));
  }
  LinkPrices links;
  links.reserve(links_.size());
  for (const Led& link : links_) {
    links.push_back(price_of(link));
  }
  return links;
}

WaysTo Chains::ways_to(Node goal, const LinkPrices& prices, Combining combining) const {
  base::require(prices.size() == link_count(), "not one price per link");
  return combining == Combining::maximum
             ? searched(goal, prices, [](double a, double b) { return std::max(a, b); })
             : searched(goal, prices, [](double a, double b) { return a + b; });
}

template <class Combine>
struct Chains::Search {
  const Chains& chains;
  const LinkPrices& prices;
  const Combine& combine;
  std::vector<WaysTo::Way> ways{chains.kept_count()};
  NearestFirst waiting{};

  void run(Kept goal) {
    ways[goal].price = 0.0;
    waiting.push({.price = 0.0, .node = goal});
    while (!waiting.empty()) {
      const NearestFirst::Reached nearest = waiting.pop();
      if (nearest.price > ways[nearest.node].price) {
        continue;  // it was reached cheaper since
      }
      look_back_from(nearest);
    }
  }

  void look_back_from(NearestFirst::Reached to) {
    for (LinkIndex link = chains.into_[to.node]; link < chains.into_[to.node + 1]; ++link) {
      const Kept from = chains.from_[link];
      const double price = combine(prices[link], to.price);
      if (price < ways[from].price) {
        ways[from] = {.price = price, .link = link};
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
    for (const Led* led = &links_[link]; led != nullptr;
         led = led->tail == kNone ? nullptr : &tails_[led->tail]) {
      const std::span<const ArcIndex> arcs = arcs_of(*led);
      path.arcs.insert(path.arcs.end(), arcs.begin(), arcs.end());
    }
    at = links_[link].to;
  }
  path.price = price_along(path.arcs, priced.arcs);
  return path;
}

/// The first that is cheapest and brings nearer with its first arc; else that of the search.
LinkIndex Chains::link_to_take(Kept from, const WaysTo& ways, const Priced& priced) const {
  for (std::uint32_t i = out_of_[from]; i < out_of_[from + 1]; ++i) {
    const LinkIndex link = links_out_[i];
    if (priced.links[link] + ways.from[links_[link].to].price == ways.from[from].price &&
        priced.arcs[arcs_of(links_[link]).front()] > 0.0) {
      return link;
    }
  }
  return ways.from[from].link;
}

Kept Chains::kept(Node node) const {
  base::require(index_of(node) < kept_of_.size() && kept_of_[index_of(node)] != kNone,
                "a way is asked for from or to a node that is not kept");
  return kept_of_[index_of(node)];
}

std::span<const ArcIndex> Chains::arcs_of(const Led& led) const {
  return std::span{arcs_}.subspan(led.run.first, led.run.count);
}

}  // namespace rimehaul::search
