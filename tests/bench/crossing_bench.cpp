// How fast ways over open ground are found, in time and memory, beside Boost's searches over the
// same states as an implicit graph.
//
//   cmake -S . -B build -G Ninja -DRIMEHAUL_BENCH=ON && ninja -C build bench_crossing
//   build/tests/bench/bench_crossing                                   # a quarter of an hour
//   build/tests/bench/bench_crossing --benchmark_filter=side:1000      # three minutes
//
// The ground is a made-up fractal in cells of 5 m; moves steeper than 25 degrees along or 15 across
// are barred, which leaves about nine of ten. Each round runs ours and Boost's turn about; told are
// the medians of processor time, `ratio` ours over theirs, below 1 we are faster, and the most
// bytes on the heap that each took for itself, by state; `prices_B` is what both read, and `memory`
// is ours over theirs with it. The prices of all states, or of the way, must be equal, else the
// benchmark reports an error.
//   one_to_all      everything reached from a corner: Reach; dijkstra_shortest_paths
//   point_to_point  corner to corner: CostToGo and find_way; astar_search by straight distance.
//                   `ratio_same_heuristic` is over astar_search that is given our cost to go free.
// Needs the package libbenchmark-dev.
#include <benchmark/benchmark.h>
#include <malloc.h>

#include <algorithm>
#include <boost/graph/astar_search.hpp>
#include <boost/graph/dijkstra_shortest_paths.hpp>
#include <boost/graph/two_bit_color_map.hpp>
#include <cmath>
#include <cstdlib>
#include <ctime>
#include <limits>
#include <new>
#include <numbers>
#include <random>
#include <vector>

#include "crossing/find_way.h"
#include "crossing/implicit_graph.h"
#include "crossing/reach.h"

using namespace rimehaul;
using namespace rimehaul::crossing;
using rimehaul::testing::EdgePrice;
using rimehaul::testing::ImplicitGraph;

namespace {

std::size_t bytes_now = 0;   // NOLINT: what operator new and delete below count
std::size_t bytes_most = 0;  // NOLINT

void* counted(std::size_t size) {
  void* place = std::malloc(size);
  if (place == nullptr) {
    throw std::bad_alloc{};
  }
  bytes_now += malloc_usable_size(place);
  bytes_most = std::max(bytes_most, bytes_now);
  return place;
}

void uncounted(void* place) noexcept {
  bytes_now -= place == nullptr ? 0 : malloc_usable_size(place);
  std::free(place);
}

}  // namespace

void* operator new(std::size_t size) {
  return counted(size);
}
void operator delete(void* place) noexcept {
  uncounted(place);
}
void operator delete(void* place, std::size_t /*size*/) noexcept {
  uncounted(place);
}

namespace {

constexpr double kPitch_m = 5.0;

/// Heights of a square: waves of random height at each halving of their length (midpoints of a grid
/// filled in over and over), rougher the longer.
class Fractal {
 public:
  explicit Fractal(std::int32_t side) {
    while (size_ < side) {
      size_ *= 2;
    }
    heights_.assign(static_cast<std::size_t>(size_ + 1) * static_cast<std::size_t>(size_ + 1),
                    0.0F);
    for (std::int32_t step = size_; step > 1; step /= 2) {
      fill_in(step);
    }
  }
  [[nodiscard]] double at(std::int32_t column, std::int32_t row) const {
    const std::int32_t x = std::clamp(column, 0, size_);
    const std::int32_t y = std::clamp(row, 0, size_);
    return double{heights_[index(x, y)]};
  }

 private:
  [[nodiscard]] std::size_t index(std::int32_t x, std::int32_t y) const {
    return static_cast<std::size_t>(y) * static_cast<std::size_t>(size_ + 1) +
           static_cast<std::size_t>(x);
  }
  [[nodiscard]] float any(std::int32_t step) {
    const double share = static_cast<double>(dice_()) / 4294967296.0 - 0.5;
    return static_cast<float>(share * 0.42 * std::pow(step * kPitch_m, 0.95));
  }
  void fill_in(std::int32_t step) {
    const std::int32_t half = step / 2;
    for (std::int32_t y = half; y < size_; y += step) {
      for (std::int32_t x = half; x < size_; x += step) {
        heights_[index(x, y)] =
            (heights_[index(x - half, y - half)] + heights_[index(x + half, y - half)] +
             heights_[index(x - half, y + half)] + heights_[index(x + half, y + half)]) /
                4.0F +
            any(step);
      }
    }
    for (std::int32_t y = 0; y <= size_; y += half) {
      for (std::int32_t x = (y / half % 2 == 0) ? half : 0; x <= size_; x += step) {
        const double sum = at(x - half, y) + at(x + half, y) + at(x, y - half) + at(x, y + half);
        heights_[index(x, y)] = static_cast<float>(sum / 4.0) + any(half);
      }
    }
  }

  std::int32_t size_ = 4;
  std::mt19937 dice_{1};
  std::vector<float> heights_;
};

/// Prices rise with the grade; too steep along or across at either end is barred.
MovePrices fractal_prices(std::int32_t side) {
  const Fractal heights{side};
  MovePrices prices = all_barred({.north_west = {units::Metres{0.0}, units::Metres{0.0}},
                                  .pitch = units::Metres{kPitch_m},
                                  .columns = side,
                                  .rows = side});
  std::ranges::fill(prices.turns, kEveryTurn);
  const double along_limit = std::tan(25.0 * std::numbers::pi / 180.0);
  const double across_limit = std::tan(15.0 * std::numbers::pi / 180.0);
  for (std::uint32_t index = 0; index < prices.price.size(); ++index) {
    const State state = state_at(prices.lattice, index);
    const Cell from = state.cell;
    const CellStep step = step_of(state.heading);
    if (!holds(prices.lattice, from + step)) {
      continue;
    }
    const double east =
        (heights.at(from.column + 1, from.row) - heights.at(from.column - 1, from.row)) /
        (4.0 * kPitch_m);
    const double south =
        (heights.at(from.column, from.row + 1) - heights.at(from.column, from.row - 1)) /
        (4.0 * kPitch_m);
    const double pitches = std::hypot(step.columns, step.rows);
    const double along = (east * step.columns + south * step.rows) / pitches;
    const double across = (east * step.rows - south * step.columns) / pitches;
    if (std::abs(along) <= along_limit && std::abs(across) <= across_limit) {
      prices.price[index] =
          static_cast<std::uint8_t>(std::ceil(8.0 * pitches * (1.0 + 2.0 * std::max(0.0, along))));
    }
  }
  return prices;
}

/// Made once for each size.
const MovePrices& prices_of(std::int64_t side) {
  static MovePrices prices;
  if (prices.lattice.columns != side) {
    prices = {};
    prices = fractal_prices(static_cast<std::int32_t>(side));
  }
  return prices;
}

struct Ends {
  State start;
  State goal;
};

/// Towards opposite corners, and joined: corners may lie in pockets.
Ends ends_of(const MovePrices& prices) {
  const std::int32_t last = prices.lattice.columns - 1;
  const auto outward = Heading{6};
  for (std::int32_t in = 20; in < last / 2; ++in) {
    const Ends ends{{{in, in}, outward}, {{last - in, last - in}, outward}};
    if (Reach{prices, std::vector{ends.start}}.reached(ends.goal)) {
      return ends;
    }
  }
  return {};
}

struct Spent {
  double seconds = 0.0;
  double bytes = 0.0;
};

/// Processor time, so that a busy machine does not count, and the heap's peak above what was there.
template <class Work>
Spent spent(const Work& work) {
  const std::size_t before = bytes_now;
  bytes_most = bytes_now;
  const std::clock_t start = std::clock();
  work();
  return {static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC,
          static_cast<double>(bytes_most - before)};
}

double median(std::vector<Spent> all, double Spent::*member) {
  std::ranges::sort(all, {}, member);
  return all.empty() ? 0.0 : all[all.size() / 2].*member;
}

void tell(benchmark::State& state, const std::vector<Spent>& ours, const std::vector<Spent>& theirs,
          const MovePrices& prices) {
  const auto states = static_cast<double>(prices.price.size());
  state.counters["ours_s"] = median(ours, &Spent::seconds);
  state.counters["boost_s"] = median(theirs, &Spent::seconds);
  state.counters["ratio"] = median(ours, &Spent::seconds) / median(theirs, &Spent::seconds);
  state.counters["ours_B"] = median(ours, &Spent::bytes) / states;
  state.counters["boost_B"] = median(theirs, &Spent::bytes) / states;
  state.counters["prices_B"] =
      static_cast<double>(prices.price.size() + 2 * prices.turns.size()) / states;
  state.counters["memory"] = (median(ours, &Spent::bytes) / states + state.counters["prices_B"]) /
                             (median(theirs, &Spent::bytes) / states + state.counters["prices_B"]);
  state.counters["open"] = 1.0 - static_cast<double>(std::ranges::count(prices.price, 0)) / states;
}

using ByNumber = boost::typed_identity_property_map<std::uint32_t>;

std::vector<std::uint32_t> boost_one_to_all(const MovePrices& prices, std::uint32_t start) {
  const ImplicitGraph graph{prices};
  std::vector<std::uint32_t> found(prices.price.size());
  boost::dijkstra_shortest_paths(
      graph, start,
      boost::distance_map(boost::make_iterator_property_map(found.begin(), ByNumber{}))
          .predecessor_map(boost::dummy_property_map{})
          .weight_map(EdgePrice{prices.price.data()})
          .vertex_index_map(ByNumber{}));
  return found;
}

struct GoalReached {};

struct StopAtGoal : boost::default_astar_visitor {
  std::uint32_t goal = 0;
  void examine_vertex(std::uint32_t state, const ImplicitGraph& /*graph*/) const {
    if (state == goal) {
      throw GoalReached{};
    }
  }
};

template <class Heuristic>
std::uint32_t boost_point_to_point(const MovePrices& prices, std::uint32_t start,
                                   std::uint32_t goal, const Heuristic& heuristic) {
  const ImplicitGraph graph{prices};
  std::vector<std::uint32_t> paid(prices.price.size());
  std::vector<std::uint32_t> whole(prices.price.size());
  StopAtGoal visitor;
  visitor.goal = goal;
  try {
    boost::astar_search(
        graph, start, heuristic,
        boost::visitor(visitor)
            .distance_map(boost::make_iterator_property_map(paid.begin(), ByNumber{}))
            .rank_map(boost::make_iterator_property_map(whole.begin(), ByNumber{}))
            .predecessor_map(boost::dummy_property_map{})
            .color_map(boost::make_two_bit_color_map(prices.price.size(), ByNumber{}))
            .weight_map(EdgePrice{prices.price.data()})
            .vertex_index_map(ByNumber{}));
  } catch (const GoalReached&) {
    return paid[goal];
  }
  return std::numeric_limits<std::uint32_t>::max();
}

/// Whether the two reach the same states, and at the same price, looked at every so many states.
bool are_equal(const MovePrices& prices, const Reach& ours,
               const std::vector<std::uint32_t>& theirs) {
  for (std::uint32_t index = 0; index < theirs.size(); ++index) {
    const State state = state_at(prices.lattice, index);
    const bool reached = theirs[index] != std::numeric_limits<std::uint32_t>::max();
    if (ours.reached(state) != reached) {
      return false;
    }
    if (reached && index % 9973 == 0 && ours.way_to(state)->price != theirs[index]) {
      return false;
    }
  }
  return true;
}

void one_to_all(benchmark::State& state) {
  const MovePrices& prices = prices_of(state.range(0));
  const std::vector<State> starts{ends_of(prices).start};
  const std::uint32_t start = index_of(prices.lattice, starts[0]);
  std::vector<Spent> ours;
  std::vector<Spent> theirs;
  for (auto round : state) {
    std::optional<Reach> reach;
    ours.push_back(spent([&] { reach.emplace(prices, starts); }));
    std::vector<std::uint32_t> found;
    theirs.push_back(spent([&] { found = boost_one_to_all(prices, start); }));
    if (!are_equal(prices, *reach, found)) {
      state.SkipWithError("the two do not come to the same prices");
      return;
    }
    const auto reached =
        static_cast<double>(found.size()) -
        static_cast<double>(std::ranges::count(found, std::numeric_limits<std::uint32_t>::max()));
    state.counters["reached"] = reached;
    state.SetIterationTime(ours.back().seconds);
  }
  tell(state, ours, theirs, prices);
}

void point_to_point(benchmark::State& state) {
  const MovePrices& prices = prices_of(state.range(0));
  const Ends ends = ends_of(prices);
  const std::vector<State> starts{ends.start};
  const std::vector<State> goals{ends.goal};
  const std::uint32_t start = index_of(prices.lattice, starts[0]);
  const std::uint32_t goal = index_of(prices.lattice, goals[0]);
  const std::uint8_t cheapest = 8;  // no move costs less for a pitch
  const auto straight = [&](std::uint32_t at) {
    const Cell cell = state_at(prices.lattice, at).cell;
    return static_cast<std::uint32_t>(
        cheapest * std::hypot(cell.column - goals[0].cell.column, cell.row - goals[0].cell.row));
  };
  std::vector<Spent> ours;
  std::vector<Spent> heuristic_only;
  std::vector<Spent> theirs;
  std::vector<Spent> theirs_with_ours;
  for (auto round : state) {
    std::optional<CostToGo> to_go;
    std::variant<Way, NoWay> answer;
    heuristic_only.push_back(spent([&] { to_go.emplace(prices, goals); }));
    to_go.reset();
    ours.push_back(spent([&] {
      to_go.emplace(prices, goals);
      answer = find_way(starts, *to_go);
    }));
    std::uint32_t price = 0;
    std::uint32_t price_too = 0;
    theirs.push_back(spent([&] { price = boost_point_to_point(prices, start, goal, straight); }));
    theirs_with_ours.push_back(spent([&] {
      const auto ticks = to_go->by_cell();
      price_too = boost_point_to_point(prices, start, goal, [&](std::uint32_t at) {
        // Halved, so that a sum with what cannot be reached does not pass over the largest number.
        return std::min(ticks[at / kHeadings], CostToGo::kNoWay / 2);
      });
    }));
    const auto* way = std::get_if<Way>(&answer);
    if (way == nullptr || way->price != price || price != price_too) {
      state.SkipWithError("the two do not come to the same price");
      return;
    }
    state.counters["price"] = price;
    state.SetIterationTime(ours.back().seconds);
  }
  tell(state, ours, theirs, prices);
  state.counters["heuristic_s"] = median(heuristic_only, &Spent::seconds);
  state.counters["ratio_same_heuristic"] =
      median(ours, &Spent::seconds) / median(theirs_with_ours, &Spent::seconds);
}

BENCHMARK(one_to_all)
    ->ArgName("side")
    ->Arg(500)
    ->Arg(1000)
    ->Arg(2000)
    ->Iterations(5)
    ->UseManualTime()
    ->Unit(benchmark::kMillisecond);
BENCHMARK(point_to_point)
    ->ArgName("side")
    ->Arg(500)
    ->Arg(1000)
    ->Arg(2000)
    ->Iterations(5)
    ->UseManualTime()
    ->Unit(benchmark::kMillisecond);

}  // namespace

BENCHMARK_MAIN();
