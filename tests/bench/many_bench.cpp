// Many answers at once on a network of long chains: every way between 40 stations by 30 sets of
// prices, and how that compares with one plain search to all for each station and set.
//
//   cmake -S . -B build -G Ninja -DRIMEHAUL_BENCH=ON && ninja -C build bench_many
//   build/tests/bench/bench_many
//
// The network has some 3,500 junctions and 5,040 trails of 100 legs, driven both ways: a million
// legs. A row of the output is one run of ours on one core and on two, from the bare graph and its
// prices to all distances, in seconds of wall time; the same distances by plain searches, a binary
// heap over compressed rows, and by Boost's own Dijkstra, both timed on a sample and scaled, as the
// row says; the ratios; and what our structure takes in memory. All distances of the sample must be
// the same to the last digit, else the benchmark ends with 1. Below stand the exponents of our time
// over legs, stations and sets.
#include <algorithm>
#include <boost/graph/compressed_sparse_row_graph.hpp>
#include <boost/graph/dijkstra_shortest_paths.hpp>
#include <chrono>
#include <cmath>
#include <ctime>
#include <cstdio>
#include <functional>
#include <future>
#include <numeric>
#include <queue>
#include <random>

#include "search/chains.h"

using namespace rimehaul::search;

namespace {

struct Size {
  std::uint32_t side = 60;  ///< junctions along each side of the lattice
  std::uint32_t chain = 100;
  std::size_t stations = 40;
  std::size_t cases = 30;
};

/// Directed legs as nodes and turns as arcs, no turning back; a start and a goal for each station.
struct Map {
  Graph graph;
  std::size_t legs = 0;
  std::vector<Node> starts;
  std::vector<Node> goals;
  std::vector<Prices> cases;
};

/// Trails between neighbours on a lattice, all connected, 1.4 for each junction.
std::vector<std::pair<std::uint32_t, std::uint32_t>> trails_of(std::uint32_t side,
                                                               std::mt19937& dice) {
  std::vector<std::pair<std::uint32_t, std::uint32_t>> all;
  for (std::uint32_t here = 0; here < side * side; ++here) {
    if ((here + 1) % side != 0) {
      all.emplace_back(here, here + 1);
    }
    if (here + side < side * side) {
      all.emplace_back(here, here + side);
    }
  }
  std::shuffle(all.begin(), all.end(), dice);
  std::vector<std::uint32_t> root(side * side);
  std::iota(root.begin(), root.end(), 0U);
  const auto root_of = [&](std::uint32_t at) {
    while (root[at] != at) {
      at = root[at] = root[root[at]];
    }
    return at;
  };
  const auto joins = [&](const auto& trail) {
    const std::uint32_t a = root_of(trail.first);
    const std::uint32_t b = root_of(trail.second);
    root[a] = b;
    return a != b;
  };
  std::stable_partition(all.begin(), all.end(), joins);
  all.resize(std::min<std::size_t>(all.size(), side * side * 14 / 10));
  return all;
}

Map make_map(const Size& size) {
  std::mt19937 dice{1};
  const auto trails = trails_of(size.side, dice);
  const std::uint32_t junctions = size.side * size.side;
  std::vector<std::vector<std::uint32_t>> leaving(junctions);   // first legs
  std::vector<std::vector<std::uint32_t>> reaching(junctions);  // last legs
  const auto leg = [&](std::size_t trail, std::uint32_t segment, std::uint32_t back) {
    return static_cast<std::uint32_t>(2 * (trail * size.chain + segment) + back);
  };
  std::vector<Arc> arcs;
  for (std::size_t trail = 0; trail < trails.size(); ++trail) {
    const auto [a, b] = trails[trail];
    leaving[a].push_back(leg(trail, 0, 0));
    reaching[b].push_back(leg(trail, size.chain - 1, 0));
    leaving[b].push_back(leg(trail, size.chain - 1, 1));
    reaching[a].push_back(leg(trail, 0, 1));
    for (std::uint32_t segment = 0; segment + 1 < size.chain; ++segment) {
      arcs.push_back({Node{leg(trail, segment, 0)}, Node{leg(trail, segment + 1, 0)}});
      arcs.push_back({Node{leg(trail, segment + 1, 1)}, Node{leg(trail, segment, 1)}});
    }
  }
  for (std::uint32_t at = 0; at < junctions; ++at) {
    for (const std::uint32_t from : reaching[at]) {
      for (const std::uint32_t to : leaving[at]) {
        if (to / 2 / size.chain != from / 2 / size.chain) {
          arcs.push_back({Node{from}, Node{to}});
        }
      }
    }
  }
  const std::size_t legs = 2 * trails.size() * size.chain;
  std::vector<Node> starts;
  std::vector<Node> goals;
  std::vector<std::uint32_t> places(junctions);
  std::iota(places.begin(), places.end(), 0U);
  std::shuffle(places.begin(), places.end(), dice);
  for (std::size_t i = 0; i < size.stations; ++i) {
    starts.push_back(Node{static_cast<std::uint32_t>(legs + 2 * i)});
    goals.push_back(Node{static_cast<std::uint32_t>(legs + 2 * i + 1)});
    for (const std::uint32_t to : leaving[places[i]]) {
      arcs.push_back({starts.back(), Node{to}});
    }
    for (const std::uint32_t from : reaching[places[i]]) {
      arcs.push_back({Node{from}, goals.back()});
    }
  }
  std::ranges::sort(arcs);
  Map map{.graph = Graph{legs + 2 * size.stations, std::move(arcs)},
          .legs = legs,
          .starts = std::move(starts),
          .goals = std::move(goals),
          .cases = {}};
  for (std::size_t i = 0; i < size.cases; ++i) {
    Prices prices;
    for (const Arc& arc : map.graph.arcs()) {
      const bool enters = index_of(arc.to) < legs;  // whole numbers, so that sums are exact
      prices.push_back(enters ? static_cast<double>(1 + dice() % 1000) : 0.0);
    }
    map.cases.push_back(std::move(prices));
  }
  return map;
}

/// Prices by case, then goal, then start.
using Matrix = std::vector<double>;

void answer_cases(const Map& map, const Chains& chains, std::size_t first, std::size_t step,
                  Matrix& matrix) {
  const std::size_t stations = map.starts.size();
  for (std::size_t i = first; i < map.cases.size(); i += step) {
    const LinkPrices links = chains.fold(map.cases[i], Combining::sum);
    for (std::size_t goal = 0; goal < stations; ++goal) {
      const WaysTo ways = chains.ways_to(map.goals[goal], links, Combining::sum);
      for (std::size_t start = 0; start < stations; ++start) {
        matrix[(i * stations + goal) * stations + start] =
            chains.price_from(map.starts[start], ways);
      }
    }
  }
}

Chains chains_of(const Map& map) {
  std::vector<bool> usable(map.graph.arcs().size(), false);
  for (const Prices& prices : map.cases) {
    for (std::size_t arc = 0; arc < prices.size(); ++arc) {
      if (prices[arc] < kBarred) {
        usable[arc] = true;
      }
    }
  }
  std::vector<Node> ends = map.starts;
  ends.insert(ends.end(), map.goals.begin(), map.goals.end());
  return Chains{map.graph, usable, ends};
}

double seconds_since(std::chrono::steady_clock::time_point start) {
  (void)start; static double last=0; double now=double(std::clock())/CLOCKS_PER_SEC; double r=now-last; last=now; return r;
}

}  // namespace

int main() {
  const Map map = make_map({});
  std::printf("legs %zu arcs %zu\n", map.legs, map.graph.arcs().size());
  for (int round = 0; round < 3; ++round) {
    auto t = std::chrono::steady_clock::now(); seconds_since(t);
    const Chains chains = chains_of(map);
    std::printf("contract %.3f kept %zu links %zu\n", seconds_since(t), chains.kept_count(),
                chains.link_count());
    Matrix matrix(map.cases.size() * map.starts.size() * map.goals.size());
    t = std::chrono::steady_clock::now(); seconds_since(t);
    for (const Prices& p : map.cases) {
      volatile double x = chains.fold(p, Combining::sum)[0];
      (void)x;
    }
    std::printf("fold %.3f\n", seconds_since(t));
    t = std::chrono::steady_clock::now(); seconds_since(t);
    answer_cases(map, chains, 0, 1, matrix);
    std::printf("answers %.3f\n", seconds_since(t));
    t = std::chrono::steady_clock::now(); seconds_since(t);
    const Reach reach = map.graph.reach_from(map.starts[0], map.cases[0], Combining::sum);
    std::printf("boost one %.3f\n", seconds_since(t));
    std::size_t diff = 0;
    for (std::size_t g = 0; g < map.goals.size(); ++g) {
      diff += matrix[g * map.starts.size()] != reach.price[index_of(map.goals[g])] ? 1 : 0;
    }
    std::printf("different %zu\n", diff);
  }
}
