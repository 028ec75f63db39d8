// Many answers at once on a network of long chains: every way between 40 stations by 30 sets of
// prices, and how that compares with one plain search to all for each station and set.
//
//   cmake -S . -B build -G Ninja -DRIMEHAUL_BENCH=ON && ninja -C build bench_many
//   build/tests/bench/bench_many
//
// The network has some 3,600 junctions and 5,040 trails of 100 legs, driven both ways: a million
// legs. Ours runs from the bare graph and its prices to all prices between stations, on one core
// and on two; the same by plain searches from each station to all nodes, with a binary heap over
// compressed rows, and by Boost's own Dijkstra, are timed on a sample and scaled, as the output
// says. Seconds are of processor time, so that a busy machine does not count, but for the speed-up
// by two cores, which is of wall time. All prices of the sample must be the same to the last digit,
// and all on two cores those on one, else the benchmark ends with 1. Below stand the exponents of
// our time over junctions, legs, stations and sets of prices, and the memory that the links take.
#include <malloc.h>

#include <algorithm>
#include <boost/graph/compressed_sparse_row_graph.hpp>
#include <boost/graph/dijkstra_shortest_paths.hpp>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <ctime>
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

/// Processor time of all cores, and wall time.
struct Taken {
  double processor_s = 0.0;
  double wall_s = 0.0;
};

template <class Work>
Taken taken_by(const Work& work) {
  const std::clock_t processor = std::clock();
  const auto wall = std::chrono::steady_clock::now();
  work();
  return {.processor_s = static_cast<double>(std::clock() - processor) / CLOCKS_PER_SEC,
          .wall_s = std::chrono::duration<double>(std::chrono::steady_clock::now() - wall).count()};
}

double bytes_in_use() {
  const struct mallinfo2 memory = mallinfo2();
  return static_cast<double>(memory.uordblks + memory.hblkhd);
}

double median(const std::vector<Taken>& all, double Taken::*time) {
  std::vector<double> values;
  for (const Taken& one : all) {
    values.push_back(one.*time);
  }
  std::ranges::sort(values);
  return values[values.size() / 2];
}

/// Ours on one core, of three runs.
double our_seconds(const Size& size) {
  const Map map = make_map(size);
  std::vector<Taken> taken;
  for (std::size_t round = 0; round < kRounds; ++round) {
    taken.push_back(taken_by([&] { answer_all(map, 1); }));
  }
  return median(taken, &Taken::processor_s);
}

/// Of our time, when what is counted grows by this much.
double exponent(double time, double time_of_more, double growth) {
  return std::log(time_of_more / time) / std::log(growth);
}

struct Search {
  std::size_t set = 0;
  std::size_t start = 0;
};

std::size_t different_prices(const Map& map, const Matrix& ours, Search search,
                             const std::vector<double>& plain) {
  std::size_t different = 0;
  for (std::size_t goal = 0; goal < map.goals.size(); ++goal) {
    const double price = plain[index_of(map.goals[goal])];
    const bool same = ours[place_in_matrix(map, search.set, goal, search.start)] == price;
    different += same && price < kBarred ? 0 : 1;
  }
  return different;
}

struct Measured {
  std::vector<Taken> one_core;
  std::vector<Taken> two_cores;
  std::vector<Taken> plain;  ///< one search
  std::vector<Taken> boost;  ///< one search
  std::size_t compared = 0;
  std::size_t different = 0;
};

Measured measure(const Map& map) {
  const Rows rows = rows_of(map.graph);
  const BoostRows boost_rows = boost_rows_of(map.graph);
  Measured measured;
  for (std::size_t round = 0; round < kRounds; ++round) {
    Matrix ours;
    measured.one_core.push_back(taken_by([&] { ours = answer_all(map, 1); }));
    Matrix by_two;
    measured.two_cores.push_back(taken_by([&] { by_two = answer_all(map, 2); }));
    measured.different += ours == by_two ? 0 : 1;
    for (std::size_t i = 0; i < kSampled; ++i) {
      const std::size_t set = (round * kSampled + i) * 7 % map.sets.size();
      const std::size_t start = (round * kSampled + i) * 11 % map.starts.size();
      std::vector<double> price;
      measured.plain.push_back(
          taken_by([&] { price = plain_prices(rows, map.starts[start], map.sets[set]); }));
      measured.different += different_prices(map, ours, {set, start}, price);
      measured.boost.push_back(
          taken_by([&] { price = boost_prices(boost_rows, map.starts[start], map.sets[set]); }));
      measured.different += different_prices(map, ours, {set, start}, price);
      measured.compared += 2 * map.goals.size();
    }
  }
  return measured;
}

void print_links(const Map& map) {
  const double before = bytes_in_use();
  const Chains chains = chains_of(map);
  std::printf("folded into %zu links between %zu nodes, %.1f bytes a leg\n", chains.link_count(),
              chains.kept_count(), (bytes_in_use() - before) / static_cast<double>(map.legs));
}

void print(const Map& map, const Measured& measured) {
  const auto searches = static_cast<double>(map.starts.size() * map.sets.size());
  const double ours = median(measured.one_core, &Taken::processor_s);
  const double plain = searches * median(measured.plain, &Taken::processor_s);
  const double boost = searches * median(measured.boost, &Taken::processor_s);
  const double speed_up =
      median(measured.one_core, &Taken::wall_s) / median(measured.two_cores, &Taken::wall_s);
  const std::size_t timed = measured.plain.size();
  std::printf("all prices, ours, one core      %8.3f s\n", ours);
  std::printf("plain searches, binary heap     %8.1f s, ours is 1/%.0f (%zu timed, times %.0f)\n",
              plain, plain / ours, timed, searches / static_cast<double>(timed));
  std::printf("Boost's Dijkstra, CSR           %8.1f s, ours is 1/%.0f (%zu timed, times %.0f)\n",
              boost, boost / ours, timed, searches / static_cast<double>(timed));
  std::printf("two cores, wall time            %8.2f times as fast as one: 1/%.0f of plain\n",
              speed_up, speed_up * plain / ours);
  std::printf("prices compared with both: %zu, different: %zu\n", measured.compared,
              measured.different);
}

}  // namespace

int main() {
  const Size full;
  std::size_t different = 0;
  {
    const Map map = make_map(full);
    std::printf("%zu legs, %zu turns, %zu stations, %zu sets of prices\n", map.legs,
                map.graph.arcs().size(), map.starts.size(), map.sets.size());
    print_links(map);
    const Measured measured = measure(map);
    print(map, measured);
    different = measured.different;
  }
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
  return different == 0 ? 0 : 1;
}
