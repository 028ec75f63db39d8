// The graph layer against published examples, against proof by certificate, and against all paths.
#include "search/graph.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <random>
#include <string>

#include "base/require.h"
#include "near.h"
#include "search/cheapest_paths.h"

using namespace rimehaul::search;
using rimehaul::testing::near;

namespace {

/// A graph whose nodes are letters.
struct Lettered {
  Graph graph;
  Prices prices;
  std::string letters;

  [[nodiscard]] Node node(char letter) const {
    return Node{static_cast<std::uint32_t>(letters.find(letter))};
  }
  [[nodiscard]] double price(const Reach& reach, char letter) const {
    return reach.price[index_of(node(letter))];
  }
  [[nodiscard]] std::string spelled(const Path& path) const {
    std::string word;
    for (const ArcIndex arc : path.arcs) {
      word += letters[index_of(graph.arcs()[arc].from)];
    }
    return word + letters[index_of(graph.arcs()[path.arcs.back()].to)];
  }
};

struct LetteredArc {
  char from;
  char to;
  double price;
};

Lettered lettered(const std::string& letters, std::vector<LetteredArc> arcs) {
  const auto node = [&](char letter) {
    return Node{static_cast<std::uint32_t>(letters.find(letter))};
  };
  std::ranges::sort(arcs, {}, [&](const LetteredArc& arc) {
    return std::pair{node(arc.from), node(arc.to)};
  });
  std::vector<Arc> plain;
  Prices prices;
  for (const LetteredArc& arc : arcs) {
    plain.push_back({.from = node(arc.from), .to = node(arc.to)});
    prices.push_back(arc.price);
  }
  return {.graph = Graph{letters.size(), std::move(plain)},
          .prices = std::move(prices),
          .letters = letters};
}

/// Cormen, Leiserson, Rivest and Stein, Introduction to Algorithms, 3rd ed. 2009, Fig. 24.6.
Lettered textbook_graph() {
  return lettered("stxyz", {{'s', 't', 10},
                            {'s', 'y', 5},
                            {'t', 'x', 1},
                            {'t', 'y', 2},
                            {'x', 'z', 4},
                            {'y', 't', 3},
                            {'y', 'x', 9},
                            {'y', 'z', 2},
                            {'z', 's', 7},
                            {'z', 'x', 6}});
}

Lettered random_graph(std::uint32_t seed, std::uint32_t nodes, std::uint32_t arcs) {
  std::mt19937 engine{seed};
  const auto random = [&] { return static_cast<std::uint32_t>(engine()); };
  std::vector<Arc> plain;
  for (std::uint32_t i = 0; i < arcs; ++i) {
    plain.push_back({.from = Node{random() % nodes}, .to = Node{random() % nodes}});
  }
  std::ranges::sort(plain);
  Prices prices;
  for (std::uint32_t i = 0; i < arcs; ++i) {
    prices.push_back(random() % 20 == 0 ? kBarred : static_cast<double>(random() % 1000) / 8.0);
  }
  return {.graph = Graph{nodes, std::move(plain)}, .prices = std::move(prices), .letters = ""};
}

/// No arc undercuts, every node reached has a witness that adds up, and nothing barred is used.
void check_certificate(const Lettered& map, Node start, const Reach& reach, Combining combining) {
  const auto combine = [&](double a, double b) {
    return combining == Combining::sum ? a + b : std::max(a, b);
  };
  std::size_t undercut = 0;
  for (std::size_t arc = 0; arc < map.prices.size(); ++arc) {
    const double from = reach.price[index_of(map.graph.arcs()[arc].from)];
    const double to = reach.price[index_of(map.graph.arcs()[arc].to)];
    undercut += to <= combine(from, map.prices[arc]) ? 0U : 1U;
  }
  CHECK(undercut == 0);
  std::size_t unproven = 0;
  for (std::size_t node = 0; node < map.graph.node_count(); ++node) {
    const ArcIndex arc = reach.arc[node];
    if (node == index_of(start) || !(reach.price[node] < kBarred)) {
      unproven += arc == kNoArc ? 0U : 1U;
      continue;
    }
    REQUIRE(arc != kNoArc);
    const Arc witness = map.graph.arcs()[arc];
    const double before = reach.price[index_of(witness.from)];
    const bool adds_up = index_of(witness.to) == node && map.prices[arc] < kBarred &&
                         combine(before, map.prices[arc]) == reach.price[node];
    unproven += adds_up ? 0U : 1U;
  }
  CHECK(unproven == 0);
  CHECK(reach.price[index_of(start)] == 0.0);
}

void collect_simple(const Lettered& map, Node at, Node goal, std::vector<bool>& passed,
                    double so_far, std::vector<double>& found) {
  if (at == goal) {
    found.push_back(so_far);
    return;
  }
  passed[index_of(at)] = true;
  for (std::size_t arc = 0; arc < map.prices.size(); ++arc) {
    const Arc step = map.graph.arcs()[arc];
    if (step.from == at && !passed[index_of(step.to)] && map.prices[arc] < kBarred) {
      collect_simple(map, step.to, goal, passed, so_far + map.prices[arc], found);
    }
  }
  passed[index_of(at)] = false;
}

}  // namespace

TEST_CASE("the textbook's shortest ways come out as printed") {
  const Lettered map = textbook_graph();
  const Reach reach = map.graph.reach_from(map.node('s'), map.prices, Combining::sum);
  CHECK(map.price(reach, 's') == 0);
  CHECK(map.price(reach, 't') == 8);
  CHECK(map.price(reach, 'x') == 9);
  CHECK(map.price(reach, 'y') == 5);
  CHECK(map.price(reach, 'z') == 7);

  const Reach back = map.graph.reach_to(map.node('x'), map.prices, Combining::sum);
  const auto path = path_to_goal(map.graph, map.prices, back, map.node('s'));
  REQUIRE(path.has_value());
  CHECK(map.spelled(*path) == "sytx");
  CHECK(path->price == 9);
}

TEST_CASE("the k shortest loopless ways of Yen's example come in order of price") {
  // Directed example for Yen (1971), Management Science 17(11):712-716. Three ways tie at 8, so
  // prices are compared beyond the second.
  Lettered map = lettered("CDEFGH", {{'C', 'D', 3},
                                     {'C', 'E', 2},
                                     {'D', 'F', 4},
                                     {'E', 'D', 1},
                                     {'E', 'F', 2},
                                     {'E', 'G', 3},
                                     {'F', 'G', 2},
                                     {'F', 'H', 1},
                                     {'G', 'H', 2}});
  CheapestPaths paths{map.graph, map.prices, {.from = map.node('C'), .to = map.node('H')}};
  std::vector<double> prices;
  std::vector<std::string> words;
  while (auto path = paths.next()) {
    prices.push_back(path->price);
    words.push_back(map.spelled(*path));
  }
  CHECK(prices == std::vector<double>{5, 7, 8, 8, 8, 11, 11});
  CHECK(words[0] == "CEFH");
  CHECK(words[1] == "CEGH");
  std::vector<std::string> tied{words.begin() + 2, words.begin() + 5};
  std::ranges::sort(tied);
  CHECK(tied == std::vector<std::string>{"CDFH", "CEDFH", "CEFGH"});
}

TEST_CASE("the least worst share is found as the widest way is") {
  // Widest-path example (Pollack 1960), capacities turned into shares 10 - capacity: S to T 5, A 7,
  // B 5, C 6.
  std::vector<LetteredArc> arcs;
  for (const LetteredArc& edge : std::vector<LetteredArc>{{'S', 'A', 7},
                                                          {'S', 'B', 4},
                                                          {'A', 'B', 5},
                                                          {'A', 'T', 3},
                                                          {'B', 'T', 6},
                                                          {'A', 'C', 6},
                                                          {'C', 'T', 5}}) {
    arcs.push_back({edge.from, edge.to, 10 - edge.price});
    arcs.push_back({edge.to, edge.from, 10 - edge.price});
  }
  const Lettered map = lettered("SABCT", arcs);
  const Reach reach = map.graph.reach_from(map.node('S'), map.prices, Combining::maximum);
  CHECK(10 - map.price(reach, 'T') == 5);
  CHECK(10 - map.price(reach, 'A') == 7);
  CHECK(10 - map.price(reach, 'B') == 5);
  CHECK(10 - map.price(reach, 'C') == 6);
  const Reach back = map.graph.reach_to(map.node('T'), map.prices, Combining::maximum);
  CHECK(10 - map.price(back, 'S') == 5);
}

TEST_CASE("on large random graphs no arc undercuts and every price has its witness") {
  for (const std::uint32_t seed : {1U, 2U, 3U}) {
    CAPTURE(seed);
    const Lettered map = random_graph(seed, 20'000, 60'000);
    for (const Combining combining : {Combining::sum, Combining::maximum}) {
      const Reach reach = map.graph.reach_from(Node{0}, map.prices, combining);
      check_certificate(map, Node{0}, reach, combining);
      const auto reached = std::ranges::count_if(reach.price, [](double p) { return p < kBarred; });
      CHECK(reached > 10'000);
    }
  }
}

TEST_CASE("seen from the start and seen from the goal, ways cost the same") {
  const Lettered map = random_graph(7, 300, 900);
  const Node goal{299};
  const Reach back = map.graph.reach_to(goal, map.prices, Combining::sum);
  std::size_t reached = 0;
  for (std::uint32_t i = 0; i < 300; i += 10) {
    const Reach ahead = map.graph.reach_from(Node{i}, map.prices, Combining::sum);
    CHECK(ahead.price[299] == back.price[i]);  // sums of eighths are exact
    const auto path = path_to_goal(map.graph, map.prices, back, Node{i});
    CHECK(path.has_value() == (back.price[i] < kBarred));
    if (path.has_value()) {
      ++reached;
      CHECK(path->price == back.price[i]);
    }
  }
  CHECK(reached > 20);
}

TEST_CASE("loopless ways come complete and in order on small random graphs") {
  std::size_t ways = 0;
  for (std::uint32_t seed = 1; seed <= 60; ++seed) {
    CAPTURE(seed);
    const Lettered map = random_graph(seed, 7, 18);
    std::vector<bool> passed(7, false);
    std::vector<double> wanted;
    collect_simple(map, Node{0}, Node{6}, passed, 0.0, wanted);
    std::ranges::sort(wanted);
    CheapestPaths paths{map.graph, map.prices, {.from = Node{0}, .to = Node{6}}};
    std::vector<double> found;
    while (const auto path = paths.next()) {
      found.push_back(path->price);
    }
    CHECK(found == wanted);
    ways += wanted.size();
  }
  CHECK(ways > 100);
}

TEST_CASE("of two equally cheap ways the one with the lower index is taken, again and again") {
  const Lettered map =
      lettered("abcd", {{'a', 'b', 1}, {'a', 'c', 1}, {'b', 'd', 1}, {'c', 'd', 1}});
  const Reach back = map.graph.reach_to(map.node('d'), map.prices, Combining::sum);
  const auto path = path_to_goal(map.graph, map.prices, back, map.node('a'));
  REQUIRE(path.has_value());
  CHECK(map.spelled(*path) == "abd");
}

TEST_CASE("a barred arc and an arc without a known price are never used") {
  Lettered map = lettered("ab", {{'a', 'b', 1}});
  for (const double price : {kBarred, std::nan("")}) {
    map.prices[0] = price;
    CHECK(map.price(map.graph.reach_from(map.node('a'), map.prices, Combining::sum), 'b') ==
          kBarred);
    CHECK(map.price(map.graph.reach_from(map.node('a'), map.prices, Combining::maximum), 'b') ==
          kBarred);
    CheapestPaths paths{map.graph, map.prices, {.from = map.node('a'), .to = map.node('b')}};
    CHECK_FALSE(paths.next().has_value());
  }
}

TEST_CASE("a price below 0 or too few prices are our fault") {
  const Lettered map = lettered("ab", {{'a', 'b', 1}});
  CHECK_THROWS_AS((void)map.graph.reach_from(map.node('a'), {-1.0}, Combining::sum),
                  rimehaul::base::OurFault);
  CHECK_THROWS_AS((void)map.graph.reach_from(map.node('a'), {}, Combining::sum),
                  rimehaul::base::OurFault);
}
