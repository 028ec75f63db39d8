// How fast trails are judged and walked again, in metres of trail per second of one core.
//
//   cmake -S . -B build -G Ninja -DRIMEHAUL_BENCH=ON && ninja -C build bench_judge
//   build/tests/bench/bench_judge
//
// `metres_per_second` is the figure. Needs the package libbenchmark-dev.
#include <benchmark/benchmark.h>

#include <cmath>

#include "audit/rewalk.h"
#include "passage/demo_scene.h"
#include "passage/judge.h"

using namespace rimehaul;
using namespace rimehaul::testing;

namespace {

/// A trail of a good kilometre that winds over rolling ground.
TestTrails winding_trail() {
  std::vector<geo::MapPoint> points;
  for (int i = 0; i <= 100; ++i) {
    points.push_back(place(10.0 * i, 300.0 + 60.0 * std::sin(i / 12.0)));
  }
  return {.trails = {plain_trail("Winding", points)},
          .stations = {plain_station("Start", points.front()), plain_station("End", points.back())},
          .zones = {},
          .marks = {}};
}

struct Site {
  explicit Site(rig::Rig of_rig)
      : scene{scene_of({.ground = rolling()}, winding_trail())},
        rig{std::move(of_rig)},
        judge{scene, rig, snow} {}

  passage::Scene scene;
  rig::Rig rig;
  snow::ConstantSnow snow = snow_of(snow::Wetness::dry);
  passage::Judge judge;
};

rig::Rig rig_numbered(std::int64_t trailers) {
  return trailers == 0 ? solo_rig() : towing_rig();
}

void report(benchmark::State& state, const Site& site) {
  const double metres = site.scene.network.legs[0].line.length().value();
  state.counters["metres_per_second"] = benchmark::Counter(
      metres * static_cast<double>(state.iterations()), benchmark::Counter::kIsRate);
}

void judge_a_leg(benchmark::State& state) {
  const Site site{rig_numbered(state.range(0))};
  for (auto round : state) {
    benchmark::DoNotOptimize(site.judge.judge(trails::LegId{0}, mid_morning()));
  }
  report(state, site);
}

void walk_a_leg_again(benchmark::State& state) {
  const Site site{rig_numbered(state.range(0))};
  const trails::Leg& leg = site.scene.network.legs[0];
  const std::vector<audit::PromisedLeg> promise{
      {.trail = "Winding", .span = leg.span, .way = leg.way, .entry = mid_morning(), .share = 1.0}};
  for (auto round : state) {
    benchmark::DoNotOptimize(audit::rewalk(site.scene, site.rig, site.snow, promise));
  }
  report(state, site);
}

BENCHMARK(judge_a_leg)->ArgName("trailers")->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);
BENCHMARK(walk_a_leg_again)->ArgName("trailers")->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);

}  // namespace

BENCHMARK_MAIN();
