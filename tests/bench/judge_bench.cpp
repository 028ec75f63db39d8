// How fast trails are judged and walked again, in metres of trail per second of one core.
//
//   cmake -S . -B build -G Ninja -DRIMEHAUL_BENCH=ON && ninja -C build bench_judge
//   build/tests/bench/bench_judge
//
// `metres_per_second` is the figure. `plan_demo_routes` asks for the best way between every two
// stations of the demo site; its `judged_part` is the length of legs judged over that of all legs,
// and what is below 1 is spared by judging only what the search comes to need. Needs the package
// libbenchmark-dev.
#include <benchmark/benchmark.h>

#include <chrono>
#include <cmath>
#include <set>

#include "app/load_site.h"
#include "app/question.h"
#include "audit/rewalk.h"
#include "passage/demo_scene.h"
#include "passage/judge.h"
#include "search/route.h"

using namespace rimehaul;
using namespace rimehaul::testing;

namespace {

/// A trail that winds over rolling ground, so many times 10 m to the east and some more.
TestTrails winding_trail(int tens) {
  std::vector<geo::MapPoint> points;
  for (int i = 0; i <= tens; ++i) {
    points.push_back(place(10.0 * i, 300.0 + 60.0 * std::sin(i / 12.0)));
  }
  return {.trails = {plain_trail("Winding", points)},
          .stations = {plain_station("Start", points.front()), plain_station("End", points.back())},
          .zones = {},
          .marks = {}};
}

struct Site {
  explicit Site(rig::Rig of_rig, int tens = 100)
      : scene{scene_of({.ground = rolling()}, winding_trail(tens))},
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

/// The exponent over length: 1 where metres per second stay the same.
void judge_legs_by_length(benchmark::State& state) {
  constexpr int kShort = 12;
  constexpr int kLong = 96;
  const auto seconds_for = [](const Site& site) {
    const auto start = std::chrono::steady_clock::now();
    for (int i = 0; i < 20; ++i) {
      benchmark::DoNotOptimize(site.judge.judge(trails::LegId{0}, mid_morning()));
    }
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
  };
  const Site small{solo_rig(), kShort};
  const Site large{solo_rig(), kLong};
  const auto length = [](const Site& site) {
    return site.scene.network.legs[0].line.length().value();
  };
  double exponent = 0.0;
  for (auto round : state) {
    exponent =
        std::log(seconds_for(large) / seconds_for(small)) / std::log(length(large) / length(small));
  }
  state.counters["exponent"] = exponent;
}

void walk_a_leg_again(benchmark::State& state) {
  const Site site{rig_numbered(state.range(0))};
  const trails::Leg& leg = site.scene.network.legs[0];
  const passage::LegJudgement judged = site.judge.judge(trails::LegId{0}, mid_morning());
  const std::vector<audit::PromisedLeg> promise{{.trail = "Winding",
                                                 .span = leg.span,
                                                 .way = leg.way,
                                                 .entry = mid_morning(),
                                                 .share = 1.0,
                                                 .permitted = false,
                                                 .speed = judged.slowest,
                                                 .time = judged.time,
                                                 .fuel = judged.fuel}};
  for (auto round : state) {
    benchmark::DoNotOptimize(audit::rewalk(site.scene, site.rig, site.snow, promise));
  }
  report(state, site);
}

/// Passes questions on and notes which legs were asked for, and how many metres in all.
class MeteredJudge : public passage::LegJudge {
 public:
  MeteredJudge(const passage::Judge& judge, const trails::Network& network)
      : judge_{&judge}, network_{&network} {}

  [[nodiscard]] passage::LegAtBest at_best(trails::LegId leg) const override {
    return judge_->at_best(leg);
  }
  [[nodiscard]] passage::LegJudgement judge(trails::LegId leg,
                                            units::Instant entry) const override {
    legs.insert(leg);
    metres += length_m(leg);
    return judge_->judge(leg, entry);
  }
  [[nodiscard]] passage::TurnJudgement judge_turn(trails::LegId from, trails::LegId to,
                                                  units::Instant entry) const override {
    return judge_->judge_turn(from, to, entry);
  }
  [[nodiscard]] std::vector<units::Instant> turning_moments(trails::LegId leg,
                                                            units::Period during) const override {
    return judge_->turning_moments(leg, during);
  }
  [[nodiscard]] std::vector<units::Instant> turning_moments(trails::LegId from, trails::LegId to,
                                                            units::Period during) const override {
    return judge_->turning_moments(from, to, during);
  }

  [[nodiscard]] double length_m(trails::LegId leg) const {
    return network_->legs[static_cast<std::size_t>(leg)].line.length().value();
  }

  mutable std::set<trails::LegId> legs;
  mutable double metres = 0.0;

 private:
  const passage::Judge* judge_;
  const trails::Network* network_;
};

/// From each station to each other.
std::vector<search::RouteQuestion> all_questions(std::size_t stations) {
  std::vector<search::RouteQuestion> questions;
  for (std::size_t from = 0; from < stations; ++from) {
    for (std::size_t to = 0; to < stations; ++to) {
      if (from != to) {
        questions.push_back({.stations = {from, to},
                             .prefer = search::Preference::safest,
                             .depart = mid_morning(),
                             .most_alternatives = 0,
                             .permitted_by = "N. Example"});
      }
    }
  }
  return questions;
}

void plan_demo_routes(benchmark::State& state) {
  const app::LoadedSite site = app::load_usable_site(RIMEHAUL_ROOT "/routes/marrowfell");
  const trails::Network& network = site.scene->network;
  const rig::Rig rig = app::rig_as_loaded(
      site,
      {.name = "Broadfoot with sled", .bed_kg = 40, .towed_kg = 60, .passengers = 1, .fuel_l = {}});
  snow::DayWeather weather = plain_weather();
  weather.bulletin_level = 2;
  const snow::ConstantSnow snow{{snow::Wetness::moist, snow::Surface::groomed}, weather, "bench"};
  const passage::Judge judge{*site.scene, rig, snow};
  const std::vector<search::RouteQuestion> questions = all_questions(network.stations.size());
  double legs_m = 0.0;
  for (const trails::Leg& leg : network.legs) {
    legs_m += leg.line.length().value();
  }
  double asked_m = 0.0;
  double judged_m = 0.0;
  double with_repeats_m = 0.0;
  for (auto round : state) {
    for (const search::RouteQuestion& question : questions) {
      const MeteredJudge metered{judge, network};
      benchmark::DoNotOptimize(search::find_routes(network, metered, question));
      asked_m += legs_m;
      with_repeats_m += metered.metres;
      for (const trails::LegId leg : metered.legs) {
        judged_m += metered.length_m(leg);
      }
    }
  }
  state.counters["judged_part"] = judged_m / asked_m;
  state.counters["metres_per_second"] =
      benchmark::Counter(with_repeats_m, benchmark::Counter::kIsRate);
}

BENCHMARK(judge_a_leg)->ArgName("trailers")->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);
BENCHMARK(walk_a_leg_again)->ArgName("trailers")->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);
BENCHMARK(judge_legs_by_length)->Unit(benchmark::kMillisecond)->Iterations(3);

BENCHMARK(plan_demo_routes)->Unit(benchmark::kMillisecond);

}  // namespace

BENCHMARK_MAIN();
