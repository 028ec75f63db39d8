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
#include <malloc.h>

#include <algorithm>
#include <boost/graph/compressed_sparse_row_graph.hpp>
#include <boost/graph/dijkstra_shortest_paths.hpp>
#include <chrono>
#include <cmath>
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
  std::size_t sets = 30;  ///< of prices
};

constexpr std::size_t kRounds = 3;
constexpr std::size_t kSampled = 5;  ///< plain searches in each round

/// Each so many, from the first.
struct Part {
  std::size_t first = 0;
  std::size_t step = 1;
};

/// Directed legs as nodes and turns as arcs, no turning back; a start and a goal for each station.
struct Map {
  Graph graph;
  std::size_t legs = 0;
  std::vector<Node> starts;
  std::vector<Node> goals;
  std::vector<Prices> sets;
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
          .sets = {}};
  for (std::size_t i = 0; i < size.sets; ++i) {
    Prices prices;
    for (const Arc& arc : map.graph.arcs()) {
      const bool enters = index_of(arc.to) < legs;  // whole numbers, so that sums are exact
      prices.push_back(enters ? static_cast<double>(1 + dice() % 1000) : 0.0);
    }
    map.sets.push_back(std::move(prices));
  }
  return map;
}

/// Prices by case, then goal, then start.
using Matrix = std::vector<double>;

std::size_t place_in_matrix(const Map& map, std::size_t set, std::size_t goal, std::size_t start) {
  return (set * map.goals.size() + goal) * map.starts.size() + start;
}

Chains chains_of(const Map& map) {
  std::vector<Node> ends = map.starts;
  ends.insert(ends.end(), map.goals.begin(), map.goals.end());
  return Chains{map.graph, std::vector<bool>(map.graph.arcs().size(), true), ends};
}

/// Every so many sets of prices: folded once, one search for each goal.
void answer_some(const Map& map, const Chains& chains, Part part, Matrix& matrix) {
  for (std::size_t set = part.first; set < map.sets.size(); set += part.step) {
    const LinkPrices links = chains.fold(map.sets[set], Combining::sum);
    for (std::size_t goal = 0; goal < map.goals.size(); ++goal) {
      const WaysTo ways = chains.ways_to(map.goals[goal], links, Combining::sum);
      for (std::size_t start = 0; start < map.starts.size(); ++start) {
        matrix[place_in_matrix(map, set, goal, start)] = chains.price_from(map.starts[start], ways);
      }
    }
  }
}

/// Ours, from the bare graph to all prices. Each core takes every so many sets.
Matrix answer_all(const Map& map, std::size_t cores) {
  Matrix matrix(map.sets.size() * map.goals.size() * map.starts.size());
  const Chains chains = chains_of(map);
  std::vector<std::future<void>> parts;
  for (std::size_t core = 0; core < cores; ++core) {
    parts.push_back(std::async(cores == 1 ? std::launch::deferred : std::launch::async, [&, core] {
      answer_some(map, chains, {.first = core, .step = cores}, matrix);
    }));
  }
  for (std::future<void>& part : parts) {
    part.get();
  }
  return matrix;
}

/// Arcs by the node they leave, as a plain search wants them.
struct Rows {
  std::vector<std::uint32_t> first;
  std::vector<std::uint32_t> to;
};

Rows rows_of(const Graph& graph) {
  Rows rows{.first = std::vector<std::uint32_t>(graph.node_count() + 1, 0), .to = {}};
  for (const Arc& arc : graph.arcs()) {
    ++rows.first[index_of(arc.from) + 1];
    rows.to.push_back(static_cast<std::uint32_t>(index_of(arc.to)));
  }
  std::partial_sum(rows.first.begin(), rows.first.end(), rows.first.begin());
  return rows;
}

/// The naive search: from one start to every node.
std::vector<double> plain_prices(const Rows& rows, Node start, const Prices& prices) {
  std::vector<double> price(rows.first.size() - 1, kBarred);
  using Reached = std::pair<double, std::uint32_t>;
  std::priority_queue<Reached, std::vector<Reached>, std::greater<>> waiting;
  price[index_of(start)] = 0.0;
  waiting.emplace(0.0, static_cast<std::uint32_t>(index_of(start)));
  while (!waiting.empty()) {
    const auto [reached, node] = waiting.top();
    waiting.pop();
    if (reached > price[node]) {
      continue;
    }
    for (std::uint32_t arc = rows.first[node]; arc < rows.first[node + 1]; ++arc) {
      const double through = reached + prices[arc];
      if (through < price[rows.to[arc]]) {
        price[rows.to[arc]] = through;
        waiting.emplace(through, rows.to[arc]);
      }
    }
  }
  return price;
}

using BoostRows =
    boost::compressed_sparse_row_graph<boost::directedS, boost::no_property, boost::no_property,
                                       boost::no_property, std::uint32_t, std::uint32_t>;

BoostRows boost_rows_of(const Graph& graph) {
  std::vector<std::pair<std::size_t, std::size_t>> pairs;
  for (const Arc& arc : graph.arcs()) {
    pairs.emplace_back(index_of(arc.from), index_of(arc.to));
  }
  return {boost::edges_are_sorted, pairs.begin(), pairs.end(),
          static_cast<std::uint32_t>(graph.node_count())};
}

std::vector<double> boost_prices(const BoostRows& rows, Node start, const Prices& prices) {
  std::vector<double> price(boost::num_vertices(rows), kBarred);
  const auto index = get(boost::vertex_index, rows);
  boost::dijkstra_shortest_paths(
      rows, static_cast<std::uint32_t>(index_of(start)),
      boost::distance_map(boost::make_iterator_property_map(price.begin(), index))
          .weight_map(
              boost::make_iterator_property_map(prices.begin(), get(boost::edge_index, rows)))
          .distance_inf(kBarred));
  return price;
}

template <class Work>
double seconds(const Work& work) {
  const auto start = std::chrono::steady_clock::now();
  work();
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

double bytes_in_use() {
  const struct mallinfo2 memory = mallinfo2();
  return static_cast<double>(memory.uordblks + memory.hblkhd);
}

double median(std::vector<double> values) {
  std::ranges::sort(values);
  return values[values.size() / 2];
}

/// Ours on one core, of three runs.
double our_seconds(const Size& size) {
  const Map map = make_map(size);
  std::vector<double> taken;
  for (int round = 0; round < 3; ++round) {
    taken.push_back(seconds([&] { answer_all(map, 1); }));
  }
  return median(taken);
}

/// Of our time, when what is counted grows by this much.
double exponent(double time, double time_of_more, double growth) {
  return std::log(time_of_more / time) / std::log(growth);
}

std::size_t different_prices(const Map& map, const Matrix& ours, std::size_t set, std::size_t start,
                             const std::vector<double>& plain) {
  std::size_t different = 0;
  for (std::size_t goal = 0; goal < map.goals.size(); ++goal) {
    const double price = plain[index_of(map.goals[goal])];
    different += ours[place_in_matrix(map, set, goal, start)] == price && price < kBarred ? 0 : 1;
  }
  return different;
}

bool compare_with_plain(const Map& map) {
  const Rows rows = rows_of(map.graph);
  const BoostRows boost_rows = boost_rows_of(map.graph);
  std::vector<double> one_core;
  std::vector<double> two_cores;
  std::vector<double> plain_one;
  std::vector<double> boost_one;
  std::size_t compared = 0;
  std::size_t different = 0;
  for (std::size_t round = 0; round < kRounds; ++round) {
    Matrix ours;
    one_core.push_back(seconds([&] { ours = answer_all(map, 1); }));
    Matrix by_two;
    two_cores.push_back(seconds([&] { by_two = answer_all(map, 2); }));
    different += ours == by_two ? 0 : 1;
    for (std::size_t i = 0; i < kSampled; ++i) {
      const std::size_t set = (round * kSampled + i) * 7 % map.sets.size();
      const std::size_t start = (round * kSampled + i) * 11 % map.starts.size();
      std::vector<double> price;
      plain_one.push_back(
          seconds([&] { price = plain_prices(rows, map.starts[start], map.sets[set]); }));
      different += different_prices(map, ours, set, start, price);
      boost_one.push_back(
          seconds([&] { price = boost_prices(boost_rows, map.starts[start], map.sets[set]); }));
      different += different_prices(map, ours, set, start, price);
      compared += 2 * map.goals.size();
    }
  }
  const double searches = static_cast<double>(map.starts.size() * map.sets.size());
  const double plain = searches * median(plain_one);
  const double theirs = searches * median(boost_one);
  std::printf("%zu legs, %zu turns, %zu stations, %zu sets of prices\n", map.legs,
              map.graph.arcs().size(), map.starts.size(), map.sets.size());
  const double before = bytes_in_use();
  const Chains chains = chains_of(map);
  const double taken = bytes_in_use() - before;
  std::printf("folded into %zu links between %zu nodes, %.1f bytes a leg\n", chains.link_count(),
              chains.kept_count(), taken / static_cast<double>(map.legs));
  std::printf("all answers, ours:          %9.3f s on one core, %.3f s on two\n", median(one_core),
              median(two_cores));
  std::printf("plain one-to-alls, binary heap: %5.1f s  (%zu timed, times %.0f)\n", plain,
              plain_one.size(), searches);
  std::printf("Boost one-to-alls, CSR:         %5.1f s  (%zu timed, times %.0f)\n", theirs,
              boost_one.size(), searches);
  std::printf("ratio to plain: 1/%.0f on one core, 1/%.0f on two\n", plain / median(one_core),
              plain / median(two_cores));
  std::printf("ratio to Boost: 1/%.0f on one core, 1/%.0f on two\n", theirs / median(one_core),
              theirs / median(two_cores));
  std::printf("%zu prices compared with both: %zu differ\n", compared, different);
  return different == 0;
}

}  // namespace

int main() {
  const Size full;
  const bool same = compare_with_plain(make_map(full));
  const double all = our_seconds(full);
  Size fewer = full;
  fewer.side = full.side / 4;
  std::printf("exponent of our time over junctions: %.2f\n",
              exponent(our_seconds(fewer), all, 16.0));
  fewer = full;
  fewer.chain = full.chain / 10;
  std::printf("exponent over legs, longer chains:   %.2f\n",
              exponent(our_seconds(fewer), all, 10.0));
  fewer = full;
  fewer.stations = full.stations / 4;
  std::printf("exponent over stations:              %.2f\n",
              exponent(our_seconds(fewer), all, 4.0));
  fewer = full;
  fewer.sets = full.sets / 3;
  std::printf("exponent over sets of prices:        %.2f\n",
              exponent(our_seconds(fewer), all, 3.0));
  return same ? 0 : 1;
}
