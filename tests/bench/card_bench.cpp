// What planning a route of the demo site to its card costs, as the program is run: processor time
// of the whole process, reading the site included.
//
//   cmake -S . -B build -G Ninja -DRIMEHAUL_BENCH=ON && ninja -C build bench_card
//   build/tests/bench/bench_card --benchmark_repetitions=7
//
// `cpu_s` is the figure, to be under half a second; `of_reference` is its ratio to the processor
// time in which gdaldem works out the slopes of the same heights, of the same run. Needs the
// packages libbenchmark-dev and gdal-bin.
#include <benchmark/benchmark.h>
#include <sys/resource.h>

#include <cstdlib>
#include <string>

namespace {

double seconds(const timeval& time) {
  return static_cast<double>(time.tv_sec) + static_cast<double>(time.tv_usec) * 1e-6;
}

/// Processor time of all children that have ended.
double spent() {
  rusage usage{};
  getrusage(RUSAGE_CHILDREN, &usage);
  return seconds(usage.ru_utime) + seconds(usage.ru_stime);
}

/// Below 0: it failed.
double cpu_of(const std::string& command) {
  const double before = spent();
  const int ended = std::system(("{ " + command + "\n} >/dev/null 2>&1").c_str());
  return ended == 0 ? spent() - before : -1.0;
}

const std::string kRoute = "'" RIMEHAUL_PROGRAM "' route '" RIMEHAUL_ROOT
                           "/routes/marrowfell' --rig 'Broadfoot with sled' --snow moist --load 40"
                           " --towed-load 60 --passengers 1 --visibility 400 --bulletin 2 --wind 18"
                           " --now 2026-02-01T17:00:00Z --from 'Cable House' --to 'Fell Lodge'";
const std::string kReference =
    "gdaldem slope -q '" RIMEHAUL_ROOT "/dem-samples/marrowfell.tif' /vsimem/slope.tif";

void route_to_card(benchmark::State& state) {
  double all = 0.0;
  double reference = 0.0;
  for (auto round : state) {
    const double route = cpu_of(kRoute);
    const double slopes = cpu_of(kReference);
    if (!(route > 0.0 && slopes > 0.0)) {
      state.SkipWithError("a command failed");
      return;
    }
    state.SetIterationTime(route);
    all += route;
    reference += slopes;
  }
  state.counters["cpu_s"] = all / static_cast<double>(state.iterations());
  state.counters["of_reference"] = all / reference;
}

BENCHMARK(route_to_card)->UseManualTime()->Unit(benchmark::kMillisecond);

}  // namespace

BENCHMARK_MAIN();
