// Folded chains against plain searches over every arc: prices, worst prices and ways.
#include "search/chains.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <queue>

#include "base/require.h"
#include "near.h"
#include "search/fake_judge.h"

using namespace rimehaul::search;
using rimehaul::base::OurFault;
using rimehaul::testing::Dice;
using rimehaul::testing::near;

namespace {

/// The naive version of what Chains does: Dijkstra over every arc, from the goal back.
std::vector<double> plain_prices_to(const Graph& graph, Node goal, const Prices& prices,
                                    Combining combining) {
  std::vector<std::vector<ArcIndex>> into(graph.node_count());
  for (ArcIndex arc = 0; arc < prices.size(); ++arc) {
    into[index_of(graph.arcs()[arc].to)].push_back(arc);
  }
  std::vector<double> price(graph.node_count(), kBarred);
  using Reached = std::pair<double, std::size_t>;
  std::priority_queue<Reached, std::vector<Reached>, std::greater<>> waiting;
  price[index_of(goal)] = 0.0;
  waiting.emplace(0.0, index_of(goal));
  while (!waiting.empty()) {
    const Reached nearest = waiting.top();
    waiting.pop();
    for (const ArcIndex arc : into[nearest.second]) {
      const std::size_t from = index_of(graph.arcs()[arc].from);
      const double through = combining == Combining::sum
                                 ? prices[arc] + price[nearest.second]
                                 : std::fmax(prices[arc], price[nearest.second]);
      if (prices[arc] < kBarred && through < price[from]) {
        price[from] = through;
        waiting.emplace(through, from);
      }
    }
  }
  return price;
}

struct Case {
  Graph graph;
  std::vector<Node> ends;
};

/// Junctions joined by chains one way or both ways, some of them twice, to themselves or to no
/// junction, and circles that nothing leads to. Nodes are numbered at random.
Case random_chains(Dice& dice, std::uint32_t junctions, std::uint32_t trails) {
  std::vector<std::pair<std::uint32_t, std::uint32_t>> joined;
  std::uint32_t nodes = junctions;
  const auto chain = [&](std::uint32_t from, std::uint32_t to, std::uint32_t between) {
    std::uint32_t at = from;
    for (std::uint32_t i = 0; i < between; ++i) {
      joined.emplace_back(at, nodes);
      at = nodes++;
    }
    joined.emplace_back(at, to);
  };
  for (std::uint32_t i = 0; i < trails; ++i) {
    const std::uint32_t from = dice.below(junctions);
    const std::uint32_t to = dice.one_in(12) ? nodes++ : dice.below(junctions);
    const std::uint32_t between = dice.below(9);
    chain(from, to, between);
    if (!dice.one_in(4)) {
      chain(to, from, between);
    }
  }
  const std::uint32_t circle = nodes++;
  chain(circle, circle, 3);
  std::vector<std::uint32_t> number(nodes);
  for (std::uint32_t i = 0; i < nodes; ++i) {
    number[i] = i;
    std::swap(number[i], number[dice.below(i + 1)]);
  }
  std::vector<Arc> arcs;
  for (const auto& [from, to] : joined) {
    arcs.push_back({.from = Node{number[from]}, .to = Node{number[to]}});
  }
  std::ranges::stable_sort(arcs, {}, &Arc::from);
  std::vector<Node> ends;
  for (int i = 0; i < 8; ++i) {
    ends.push_back(Node{dice.below(nodes)});  // in the midst of chains more often than not
  }
  return {.graph = Graph{nodes, std::move(arcs)}, .ends = std::move(ends)};
}

/// Some barred, by an endless price or by none that is a number.
template <class Price>
Prices rolled(Dice& dice, const Graph& graph, const Price& price) {
  Prices prices;
  for (std::size_t arc = 0; arc < graph.arcs().size(); ++arc) {
    prices.push_back(dice.one_in(30) ? kBarred : dice.one_in(60) ? std::nan("") : price());
  }
  return prices;
}

std::vector<bool> usable_by(const Prices& prices) {
  std::vector<bool> usable;
  for (const double price : prices) {
    usable.push_back(price < kBarred);
  }
  return usable;
}

}  // namespace

TEST_CASE("ways over links cost what ways over every arc cost, and are the same ways") {
  std::size_t reached = 0;
  std::size_t closed = 0;
  std::size_t folded_away = 0;
  for (std::uint32_t seed = 1; seed <= 60; ++seed) {
    CAPTURE(seed);
    Dice dice{seed};
    const Case made = random_chains(dice, 12, 24);
    const std::vector<bool> all(made.graph.arcs().size(), true);
    const Chains once{made.graph, all, made.ends};
    folded_away += made.graph.node_count() - once.kept_count();
    for (int set = 0; set < 4; ++set) {
      // Few different prices, so that many ways cost the same.
      const Prices prices = rolled(dice, made.graph, [&] { return 1.0 + dice.below(3); });
      const Chains of_set{made.graph, usable_by(prices), made.ends};
      for (const Chains* chains : {&once, &of_set}) {
        const LinkPrices links = chains->fold(prices, Combining::sum);
        for (const Node goal : made.ends) {
          const WaysTo ways = chains->ways_to(goal, links, Combining::sum);
          const auto plain = plain_prices_to(made.graph, goal, prices, Combining::sum);
          const Reach reach = made.graph.reach_to(goal, prices, Combining::sum);
          CHECK(reach.price == plain);
          for (const Node start : made.ends) {
            CHECK(chains->price_from(start, ways) == plain[index_of(start)]);
            const auto way = chains->path_from(start, ways, {links, prices});
            const auto wanted = path_to_goal(made.graph, prices, reach, start);
            REQUIRE(way.has_value() == wanted.has_value());
            if (way.has_value()) {
              CHECK(way->arcs == wanted->arcs);
              CHECK(way->price == plain[index_of(start)]);
            }
            reached += way.has_value() ? 1U : 0U;
            closed += way.has_value() ? 0U : 1U;
          }
        }
      }
    }
  }
  CHECK(reached > 5000);
  CHECK(closed > 5000);
  CHECK(folded_away > 5000);
}

TEST_CASE("the least worst price over links is that over every arc") {
  std::size_t reached = 0;
  for (std::uint32_t seed = 1; seed <= 60; ++seed) {
    CAPTURE(seed);
    Dice dice{seed};
    const Case made = random_chains(dice, 12, 24);
    const Prices prices = rolled(dice, made.graph, [&] { return 0.01 * dice.below(70); });
    const Chains chains{made.graph, usable_by(prices), made.ends};
    const LinkPrices links = chains.fold(prices, Combining::maximum);
    for (const Node goal : made.ends) {
      const WaysTo ways = chains.ways_to(goal, links, Combining::maximum);
      const auto plain = plain_prices_to(made.graph, goal, prices, Combining::maximum);
      for (const Node start : made.ends) {
        CHECK(chains.price_from(start, ways) == plain[index_of(start)]);
        reached += plain[index_of(start)] < kBarred ? 1U : 0U;
      }
    }
  }
  CHECK(reached > 1000);
}

TEST_CASE("with prices of any size ways cost the same but for rounding") {
  std::size_t reached = 0;
  for (std::uint32_t seed = 1; seed <= 60; ++seed) {
    CAPTURE(seed);
    Dice dice{seed};
    const Case made = random_chains(dice, 12, 24);
    const Prices prices =
        rolled(dice, made.graph, [&] { return std::exp(0.001 * dice.below(10'000)) / 3; });
    const Chains chains{made.graph, usable_by(prices), made.ends};
    const LinkPrices links = chains.fold(prices, Combining::sum);
    for (const Node goal : made.ends) {
      const WaysTo ways = chains.ways_to(goal, links, Combining::sum);
      const auto plain = plain_prices_to(made.graph, goal, prices, Combining::sum);
      for (const Node start : made.ends) {
        const double price = chains.price_from(start, ways);
        const double wanted = plain[index_of(start)];
        CHECK((price < kBarred) == (wanted < kBarred));
        if (wanted < kBarred) {
          ++reached;
          CHECK(near(price, wanted, 1e-12 * (1.0 + wanted)));
          const auto way = chains.path_from(start, ways, {links, prices});
          REQUIRE(way.has_value());
          CHECK(near(way->price, wanted, 1e-12 * (1.0 + wanted)));
        }
      }
    }
  }
  CHECK(reached > 1000);
}

TEST_CASE("a trail of many legs is one link in each direction") {
  // 0 - 1 - ... - 9 both ways, as two rows of nodes: nothing turns back.
  std::vector<Arc> arcs;
  for (std::uint32_t i = 0; i < 9; ++i) {
    arcs.push_back({.from = Node{i}, .to = Node{i + 1}});
  }
  for (std::uint32_t i = 10; i < 19; ++i) {
    arcs.push_back({.from = Node{i}, .to = Node{i + 1}});
  }
  const Graph graph{20, arcs};
  const std::vector<Node> ends{Node{0}, Node{9}, Node{10}, Node{19}};
  const std::vector<bool> all(arcs.size(), true);
  CHECK(Chains{graph, all, ends}.link_count() == 2);
  CHECK(Chains{graph, all, ends}.kept_count() == 4);

  // An end in the midst cuts its chain in two; an arc that may not be used breaks it.
  const std::vector<Node> more{Node{0}, Node{4}, Node{9}, Node{10}, Node{19}};
  const Chains cut{graph, all, more};
  CHECK(cut.link_count() == 3);
  Prices prices(arcs.size(), 2.0);
  const LinkPrices links = cut.fold(prices, Combining::sum);
  const WaysTo ways = cut.ways_to(Node{4}, links, Combining::sum);
  CHECK(cut.price_from(Node{0}, ways) == 8.0);
  CHECK(cut.price_from(Node{4}, ways) == 0.0);
  CHECK(cut.price_from(Node{9}, ways) == kBarred);
  std::vector<bool> without = all;
  without[2] = false;
  const Chains broken{graph, without, ends};
  const LinkPrices left = broken.fold(prices, Combining::sum);
  CHECK(broken.price_from(Node{0}, broken.ways_to(Node{9}, left, Combining::sum)) == kBarred);
  CHECK(broken.price_from(Node{10}, broken.ways_to(Node{19}, left, Combining::sum)) == 18.0);
}

TEST_CASE("where trails join there is one link from each, and what goes round and round is none") {
  // 0 and 1 join at 2 and go on by 3 to 4; from 1 one may also drive round 5 and 6 for ever.
  const std::vector<std::pair<std::uint32_t, std::uint32_t>> joined{{0, 2}, {1, 2}, {1, 5}, {2, 3},
                                                                    {3, 4}, {5, 6}, {6, 5}};
  std::vector<Arc> arcs;
  for (const auto& [from, to] : joined) {
    arcs.push_back({.from = Node{from}, .to = Node{to}});
  }
  const Graph graph{7, arcs};
  const std::vector<Node> ends{Node{0}, Node{1}, Node{4}};
  const Chains chains{graph, std::vector<bool>(arcs.size(), true), ends};
  CHECK(chains.kept_count() == 3);
  CHECK(chains.link_count() == 2);
  const Prices prices{1, 2, 1, 4, 8, 1, 1};
  const LinkPrices links = chains.fold(prices, Combining::sum);
  const WaysTo ways = chains.ways_to(Node{4}, links, Combining::sum);
  CHECK(chains.price_from(Node{0}, ways) == 13);
  CHECK(chains.price_from(Node{1}, ways) == 14);
  CHECK(chains.path_from(Node{1}, ways, {links, prices})->arcs == std::vector<ArcIndex>{1, 3, 4});
  const LinkPrices worst = chains.fold({0.1, 0.5, 0.1, 0.2, 0.3, 0.1, 0.1}, Combining::maximum);
  const WaysTo safest = chains.ways_to(Node{4}, worst, Combining::maximum);
  CHECK(chains.price_from(Node{0}, safest) == 0.3);
  CHECK(chains.price_from(Node{1}, safest) == 0.5);
}

TEST_CASE("what no set of links can answer is our fault") {
  const Graph graph{3, {{.from = Node{0}, .to = Node{1}}, {.from = Node{1}, .to = Node{2}}}};
  const std::vector<Node> ends{Node{0}, Node{2}};
  CHECK_THROWS_AS((Chains{graph, {true}, ends}), OurFault);
  const Chains chains{graph, {true, true}, ends};
  CHECK_THROWS_AS(static_cast<void>(chains.fold({1.0}, Combining::sum)), OurFault);
  CHECK_THROWS_AS(static_cast<void>(chains.fold({1.0, -1.0}, Combining::sum)), OurFault);
  CHECK_THROWS_AS(static_cast<void>(chains.ways_to(Node{2}, {}, Combining::sum)), OurFault);
  const LinkPrices links = chains.fold({1.0, 1.0}, Combining::sum);
  CHECK_THROWS_AS(static_cast<void>(chains.ways_to(Node{1}, links, Combining::sum)), OurFault);
  CHECK_THROWS_AS(static_cast<void>(chains.ways_to(Node{7}, links, Combining::sum)), OurFault);
}
