// How fast routes are found on networks of a thousand to a million legs, and how that compares with
// Boost's own Dijkstra over its adjacency list.
//
//   cmake -S . -B build -G Ninja -DRIMEHAUL_BENCH=ON && ninja -C build bench_search
//   build/tests/bench/bench_search
//
// `one_to_all` runs both on the same graph of legs and turns, turn about, and reports the median of
// each in milliseconds of processor time and `ratio`, ours over theirs; below 1 we are faster. The
// two must come to the same prices, else the benchmark reports an error. `find_a_route` is one
// whole question, from judged legs to a timed route, with a judge that costs nothing. Needs the
// package libbenchmark-dev.
#include <benchmark/benchmark.h>

#include <algorithm>
#include <boost/graph/adjacency_list.hpp>
#include <boost/graph/dijkstra_shortest_paths.hpp>
#include <cmath>
#include <ctime>
#include <limits>

#include "search/fake_judge.h"
#include "search/graph.h"
#include "search/leg_graph.h"

using namespace rimehaul;
using namespace rimehaul::search;
using namespace rimehaul::testing;

namespace {

/// A square lattice of junctions that has about so many legs.
trails::Network lattice(std::int64_t legs) {
  const auto side =
      static_cast<std::uint32_t>(std::lround(std::sqrt(static_cast<double>(legs) / 4) + 0.5));
  std::vector<Edge> edges;
  for (std::uint32_t row = 0; row < side; ++row) {
    for (std::uint32_t column = 0; column < side; ++column) {
      const std::uint32_t here = row * side + column;
      if (column + 1 < side) {
        edges.push_back({here, here + 1});
      }
      if (row + 1 < side) {
        edges.push_back({here, here + side});
      }
    }
  }
  return network_of(side * side, edges);
}

FakeJudge uneven_judge(const trails::Network& network) {
  Dice dice{1};
  FakeJudge judge{network};
  for (FakeLeg& leg : judge.legs) {
    leg.time_s = 10.0 + dice.below(1000);
    leg.share = 0.01 * dice.below(70);
  }
  return judge;
}

struct LegsAndTurns {
  LegGraph legs;
  Prices prices;
};

LegsAndTurns legs_and_turns(std::int64_t count) {
  const trails::Network network = lattice(count);
  const FakeJudge judge = uneven_judge(network);
  const std::vector<trails::JunctionId> stops{
      trails::JunctionId{0},
      trails::JunctionId{static_cast<std::uint32_t>(network.junctions.size() - 1)}};
  std::vector<Turn> turns = turns_of(network);
  std::erase_if(turns, [](const Turn& turn) { return turn.to == trails::opposite_of(turn.from); });
  LegsAndTurns made{make_leg_graph(network, stops, turns), {}};
  for (const Step& step : made.legs.steps) {
    made.prices.push_back(
        step.leg.has_value() ? judge.legs[static_cast<std::size_t>(*step.leg)].time_s : 0.0);
  }
  return made;
}

using Adjacency =
    boost::adjacency_list<boost::vecS, boost::vecS, boost::directedS, boost::no_property,
                          boost::property<boost::edge_weight_t, double>>;

Adjacency adjacency_of(const LegsAndTurns& map) {
  Adjacency graph(map.legs.graph.node_count());
  for (std::size_t arc = 0; arc < map.prices.size(); ++arc) {
    const Arc ends = map.legs.graph.arcs()[arc];
    boost::add_edge(index_of(ends.from), index_of(ends.to), map.prices[arc], graph);
  }
  return graph;
}

/// Of processor time, so that a busy machine does not count.
template <class Work>
double milliseconds(const Work& work) {
  const std::clock_t start = std::clock();
  work();
  return 1000.0 * static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
}

double median(std::vector<double> values) {
  std::ranges::sort(values);
  return values.empty() ? 0.0 : values[values.size() / 2];
}

void one_to_all(benchmark::State& state) {
  const LegsAndTurns map = legs_and_turns(state.range(0));
  const Adjacency theirs = adjacency_of(map);
  const std::size_t start = index_of(map.legs.journey().from);
  std::vector<double> our_ms;
  std::vector<double> their_ms;
  for (auto round : state) {
    Reach reach;
    our_ms.push_back(milliseconds([&] {
      reach = map.legs.graph.reach_from(map.legs.journey().from, map.prices, Combining::sum);
    }));
    std::vector<double> price(boost::num_vertices(theirs));
    std::vector<std::size_t> before(price.size());
    their_ms.push_back(milliseconds([&] {
      boost::dijkstra_shortest_paths(
          theirs, start, boost::distance_map(price.data()).predecessor_map(before.data()));
    }));
    for (std::size_t node = 0; node < price.size(); ++node) {
      const bool reached = price[node] < std::numeric_limits<double>::max();
      if (reached ? price[node] != reach.price[node] : reach.price[node] < kBarred) {
        state.SkipWithError("the two do not come to the same prices");
        return;
      }
    }
    state.SetIterationTime(our_ms.back() / 1000.0);
  }
  state.counters["ours_ms"] = median(our_ms);
  state.counters["boost_ms"] = median(their_ms);
  state.counters["ratio"] = median(our_ms) / median(their_ms);
  state.counters["turns"] = static_cast<double>(map.prices.size());
}

void find_a_route(benchmark::State& state) {
  const trails::Network network = lattice(state.range(0));
  const FakeJudge judge = uneven_judge(network);
  RouteQuestion question;
  question.stations = {0, network.stations.size() - 1};
  question.most_alternatives = static_cast<std::size_t>(state.range(1));
  for (auto round : state) {
    const RouteAnswer answer = find_routes(network, judge, question);
    if (!std::holds_alternative<std::vector<Route>>(answer)) {
      state.SkipWithError("no route");
      return;
    }
    state.counters["routes"] = static_cast<double>(std::get<std::vector<Route>>(answer).size());
  }
}

BENCHMARK(one_to_all)
    ->ArgName("legs")
    ->RangeMultiplier(10)
    ->Range(1'000, 1'000'000)
    ->Iterations(9)
    ->UseManualTime()
    ->Unit(benchmark::kMillisecond);
BENCHMARK(find_a_route)
    ->ArgNames({"legs", "alternatives"})
    ->Args({1'000, 0})
    ->Args({1'000, 3})
    ->Args({10'000, 0})
    ->Args({10'000, 3})
    ->Args({100'000, 0})
    ->Args({1'000'000, 0})
    ->Unit(benchmark::kMillisecond);

}  // namespace

BENCHMARK_MAIN();
