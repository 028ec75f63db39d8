// The best order of stops against driving every order, and a round's loads judged on all cores
// against one.
//
//   cmake -S . -B build -G Ninja -DRIMEHAUL_BENCH=ON && ninja -C build bench_round
//   build/tests/bench/bench_round
//
// Hops drawn by lot, another for every set of stops that have been called at, as a load makes them.
// Ours keeps what no other way to have called at the same stops beats; the reference drives all
// orders, stop after stop, and leaves off where a hop cannot be driven. A drawn hop costs next to
// nothing; one on a mountain costs a search, so what counts is how many are asked for. Times are of
// the processor for these and of the wall for the cores, medians. Answers that differ end it
// with 1.
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <ctime>
#include <random>

#include "app/crew_on_cores.h"
#include "day/round_plan.h"
#include "passage/demo_scene.h"

using namespace rimehaul;
using search::Hop;
using search::HopDriven;
using search::StopSet;
using units::Instant;

namespace {

constexpr int kRounds = 5;

template <class Run>
double median_s(const Run& run, int rounds, double (*now)()) {
  std::vector<double> times;
  for (int round = 0; round < rounds; ++round) {
    const double before = now();
    run();
    times.push_back(now() - before);
  }
  std::ranges::sort(times);
  return times[times.size() / 2];
}

double processor_s() {
  return static_cast<double>(std::clock()) / CLOCKS_PER_SEC;
}

double wall_s() {
  return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch()).count();
}

/// One in twenty cannot be driven.
class DrawnHops final : public search::Hops {
 public:
  explicit DrawnHops(std::size_t stops) : stops_{stops} {
    std::mt19937 draw{20261127};
    hops_.resize((std::size_t{1} << stops) * (stops + 1) * (stops + 1));
    for (HopDriven& hop : hops_) {
      const bool cannot = draw() % 20 == 0;
      hop.arrives = {cannot ? -1 : 60 * static_cast<std::int64_t>(1 + draw() % 30)};
      hop.worst_share = 0.001 * static_cast<double>(draw() % 700);
      hop.fuel = units::Litres{0.01 * static_cast<double>(draw() % 100)};
    }
  }

  std::optional<HopDriven> driven(const Hop& hop, Instant ready) override {
    ++asked;
    HopDriven driven =
        hops_[(hop.called * (stops_ + 1) + hop.from.value_or(stops_)) * (stops_ + 1) +
              hop.to.value_or(stops_)];
    if (driven.arrives.seconds < 0) {
      return std::nullopt;
    }
    driven.departs = ready;
    driven.arrives.seconds += ready.seconds;
    return driven;
  }

  std::optional<Instant> last_turn() const override { return {}; }
  std::optional<search::HopAtBest> at_best(const Hop& /*hop*/) override {
    return search::HopAtBest{};
  }

  std::size_t asked = 0;

 private:
  std::size_t stops_;
  std::vector<HopDriven> hops_;
};

using Key = std::pair<double, std::int64_t>;  // worst share, end

/// The best of all orders from here on that is better than the best so far.
void drive_all(DrawnHops& hops, const Hop& so_far, Key here, std::size_t stops, Key& best) {
  const StopSet all = (StopSet{1} << stops) - 1;
  for (std::size_t stop = 0; stop <= stops; ++stop) {
    const bool home = stop == stops;
    if (home ? so_far.called != all : ((so_far.called >> stop) & 1U) != 0) {
      continue;
    }
    Hop hop = so_far;
    hop.to = home ? std::nullopt : std::optional{stop};
    const auto driven = hops.driven(hop, {here.second});
    if (!driven.has_value()) {
      continue;
    }
    const Key there{std::max(here.first, driven->worst_share), driven->arrives.seconds};
    if (home) {
      best = std::min(best, there);
    } else {
      drive_all(hops, {so_far.called | (StopSet{1} << stop), stop, {}}, there, stops, best);
    }
  }
}

Key key_of(const std::variant<search::StopOrder, search::NoOrder>& answer) {
  Key key{1e9, 0};
  if (const auto* order = std::get_if<search::StopOrder>(&answer); order != nullptr) {
    key = {0.0, order->hops.back().arrives.seconds};
    for (const HopDriven& hop : order->hops) {
      key.first = std::max(key.first, hop.worst_share);
    }
  }
  return key;
}

int compare_orders(std::size_t stops) {
  DrawnHops hops{stops};
  const search::OrderQuestion question{.after = std::vector<StopSet>(stops, 0),
                                       .comes_to_an_end = true,
                                       .depart = {0},
                                       .fuel = units::Litres{1e6}};
  Key ours;
  Key theirs;
  const double ours_s =
      median_s([&] { ours = key_of(search::best_order(hops, question)); }, kRounds, processor_s);
  const double ours_asked = static_cast<double>(hops.asked) / kRounds;
  hops.asked = 0;
  const int rounds = stops < 10 ? kRounds : 1;
  const double theirs_s = median_s(
      [&] {
        theirs = {1e9, 0};
        drive_all(hops, {}, {0.0, 0}, stops, theirs);
      },
      rounds, processor_s);
  const double theirs_asked = static_cast<double>(hops.asked) / rounds;
  std::printf(
      "%2zu stops: ours %6.2f ms and %6.0f hops, every order %6.2f ms and %8.0f hops; ratios %.3f "
      "and %.4f; %s\n",
      stops, 1e3 * ours_s, ours_asked, 1e3 * theirs_s, theirs_asked, ours_s / theirs_s,
      ours_asked / theirs_asked, ours == theirs ? "the same order's worth" : "ANOTHER WORTH");
  return ours == theirs ? 0 : 1;
}

/// Walking the round again is one man's work and not what is compared.
audit::Rewalk not_walked_again(const passage::Scene& /*scene*/, const rig::Rig& /*rig*/,
                               const snow::SnowAt& /*snow*/,
                               const std::vector<audit::PromisedLeg>& /*promise*/) {
  return {.discrepancies = {}, .worst_share = 0.0, .places_judged = 1};
}

int compare_cores() {
  testing::TestTrails all = testing::two_ways();
  all.stations.push_back(testing::plain_station("Ford", testing::place(300, 120)));
  all.stations.push_back(testing::plain_station("Col", testing::place(400, 420)));
  const passage::Scene scene = testing::scene_of({.ground = testing::rolling()}, all);
  rig::Rig rig = testing::solo_rig();
  rig.load.bed = units::Kilograms{0};
  const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry);
  const passage::Judge judge{scene, rig, snow};
  day::Round round{.start = "Depot", .end = "Depot", .errands = {}};
  double kg = 10;
  for (const char* to : {"Hut", "Lodge", "Ford", "Col"}) {
    round.errands.push_back({.what = "sacks", .from = "Depot", .to = to});
    round.errands.back().bed = units::Kilograms{kg};
    kg *= 2;
  }
  const auto stops = std::get<day::RoundStops>(day::stops_of(round, scene.network));
  const Instant depart = testing::mid_morning();
  day::RoundQuestion question{.round = round,
                              .stops = stops,
                              .hours = {depart, {depart.seconds + 36'000}},
                              .permitted_by = "",
                              .rewalk = not_walked_again};
  units::Instant end_alone;
  units::Instant end_on_all;
  const auto plan = [&](units::Instant& end) {
    end = std::get<day::RoundPlan>(day::plan_round(judge, question)).hops.back().arrives;
  };
  const double alone_s = median_s([&] { plan(end_alone); }, kRounds, wall_s);
  app::CrewOnCores crew;
  question.crew = &crew;
  const double on_all_s = median_s([&] { plan(end_on_all); }, kRounds, wall_s);
  std::printf("16 loads judged: on %zu cores %.2f s, on one %.2f s; ratio %.2f; %s\n", app::hands(),
              on_all_s, alone_s, on_all_s / alone_s,
              end_alone == end_on_all ? "the same round" : "ANOTHER ROUND");
  return end_alone == end_on_all ? 0 : 1;
}

}  // namespace

int main() {
  int different = 0;
  for (const std::size_t stops : {std::size_t{6}, std::size_t{8}, std::size_t{10}}) {
    different += compare_orders(stops);
  }
  return different + compare_cores() == 0 ? 0 : 1;
}
