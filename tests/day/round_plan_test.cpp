// Rounds on real ground against driving every order of their stops, trip after trip.
#include "day/round_plan.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <numeric>
#include <tuple>

#include "base/require.h"
#include "day/other_rewalks.h"
#include "passage/demo_scene.h"
#include "passage/turning_snow.h"
#include "search/timed_routes.h"

namespace rimehaul::day {

namespace {

using search::Preference;
using search::StopSet;
using units::Instant;
using units::Kilograms;
using units::Seconds;

const Instant kMorning = testing::mid_morning();

Instant after_minutes(std::int64_t minutes) {
  return {kMorning.seconds + 60 * minutes};
}

/// The two ways with stations at the ford and the col as well.
passage::Scene five_stations() {
  testing::TestTrails all = testing::two_ways();
  all.stations.push_back(testing::plain_station("Ford", testing::place(300, 120)));
  all.stations.push_back(testing::plain_station("Col", testing::place(400, 420)));
  return testing::scene_of({.ground = testing::rolling()}, all);
}

rig::Rig empty_rig() {
  rig::Rig rig = testing::solo_rig();
  rig.load.bed = Kilograms{0};
  return rig;
}

Errand bed(const std::string& from, const std::string& to, double kg) {
  return {.what = "sacks", .from = from, .to = to, .bed = Kilograms{kg}};
}

/// A round on that ground, in some snow.
struct Trial {
  explicit Trial(Round asked, const snow::SnowAt& snow_there)
      : round{std::move(asked)}, snow{snow_there} {}
  Trial(const Trial&) = delete;
  Trial& operator=(const Trial&) = delete;

  Round round;
  const snow::SnowAt& snow;
  passage::Scene scene = five_stations();
  rig::Rig rig = empty_rig();
  passage::Judge judge{scene, rig, snow};
  RoundStops stops = std::get<RoundStops>(stops_of(round, scene.network));
  RoundQuestion question{.round = round,
                         .stops = stops,
                         .hours = {kMorning, after_minutes(300)},
                         .halt = Seconds{600},
                         .permitted_by = ""};

  [[nodiscard]] std::variant<RoundPlan, NoRound> plan() const {
    return plan_round(judge, question);
  }
};

struct Result {
  double share = 0.0;
  std::int64_t end = 0;
  double fuel = 0.0;

  [[nodiscard]] std::tuple<double, double> key(Preference prefer) const {
    const auto hour = static_cast<double>(end);
    switch (prefer) {
      case Preference::quickest:
        return {hour, share};
      case Preference::least_fuel:
        return {fuel, hour};
      case Preference::safest:
        break;
    }
    return {share, hour};
  }
};

/// Does the last part first.
class Backwards final : public base::Crew {
 public:
  void do_all(base::Work& work, std::size_t parts) override {
    most_at_once = std::max(most_at_once, parts);
    for (std::size_t left = parts; left > 0; --left) {
      work.do_part(left - 1);
    }
  }
  std::size_t most_at_once = 0;
};

class Counted final : public base::Watcher {
 public:
  void parts_to_come(std::size_t parts) override { wanted += parts; }
  void part_done() override { ++done; }
  std::size_t wanted = 0;
  std::size_t done = 0;
};

/// The load by adding up what was taken on and what was put off, station by station, the start
/// first: nothing is put off there.
rig::Load load_after(const Trial& trial, const std::vector<std::string>& called) {
  rig::Load load = trial.rig.load;
  for (const Errand& errand : trial.round.errands) {
    const bool is_on = std::ranges::find(called, errand.from) != called.end();
    const bool is_off = std::find(called.begin() + 1, called.end(), errand.to) != called.end();
    if (is_on && !is_off) {
      load.bed = load.bed + errand.bed;
      load.passengers += errand.passengers;
    }
  }
  return load;
}

/// Drives the stations in one order, each trip asked as a route of its own; no waiting.
std::optional<Result> drive(const Trial& trial, const std::vector<std::string>& stations) {
  Result result;
  Instant ready = kMorning;
  std::vector<std::string> called{stations.front()};
  for (std::size_t i = 1; i < stations.size(); ++i) {
    for (const Errand& errand : trial.round.errands) {
      const bool too_early = stations[i] == errand.to && i + 1 < stations.size() &&
                             std::ranges::find(called, errand.from) == called.end();
      if (too_early) {
        return std::nullopt;
      }
    }
    rig::Rig rig = trial.rig;
    rig.load = load_after(trial, called);
    const passage::Judge judge = trial.judge.with_rig(rig);
    search::LegHours hours{judge, trial.question.hours};
    const auto answer = search::find_routes_through(
        trial.scene.network, hours,
        {.stations = {*trial.scene.network.station_named(stations[i - 1]),
                      *trial.scene.network.station_named(stations[i])},
         .prefer = trial.question.prefer,
         .depart = ready,
         .most_alternatives = 0,
         .permitted_by = ""});
    const auto* routes = std::get_if<std::vector<search::Route>>(&answer);
    if (routes == nullptr) {
      return std::nullopt;
    }
    const search::Route& route = routes->front();
    result.share = std::max(result.share, route.worst_share);
    result.fuel += route.fuel.value();
    result.end = units::after(ready, route.time).seconds;
    ready = units::after({result.end}, trial.question.halt);
    if (i + 1 < stations.size()) {
      called.push_back(stations[i]);
    }
  }
  return result;
}

std::vector<std::string> stations_in(const Trial& trial, const std::vector<std::size_t>& order) {
  std::vector<std::string> stations{trial.round.start};
  for (const std::size_t stop : order) {
    stations.push_back(trial.scene.network.stations[trial.stops.stations[stop]].name);
  }
  if (!trial.round.end.empty()) {
    stations.push_back(trial.round.end);
  }
  return stations;
}

std::optional<Result> best_of_all_orders(const Trial& trial) {
  std::vector<std::size_t> order(trial.stops.stations.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::optional<Result> best;
  do {
    const auto result = drive(trial, stations_in(trial, order));
    const Preference prefer = trial.question.prefer;
    if (result.has_value() && (!best.has_value() || result->key(prefer) < best->key(prefer))) {
      best = result;
    }
  } while (std::ranges::next_permutation(order).found);
  return best;
}

Result result_of(const RoundPlan& plan) {
  Result result{.end = plan.hops.back().arrives.seconds, .fuel = plan.fuel.value()};
  for (const RoundHop& hop : plan.hops) {
    result.share = std::max(result.share, hop.route.worst_share);
  }
  return result;
}

std::vector<std::string> called_at(const RoundPlan& plan, const Trial& trial) {
  std::vector<std::string> stations;
  for (const RoundHop& hop : plan.hops) {
    stations.push_back(trial.scene.network.stations[trial.stops.reached(hop.hop)].name);
  }
  return stations;
}

}  // namespace

TEST_CASE("a round is the best of all orders, each trip with what is aboard on it") {
  const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry);
  for (const Preference prefer :
       {Preference::safest, Preference::quickest, Preference::least_fuel}) {
    CAPTURE(static_cast<int>(prefer));
    Trial trial{{.start = "Depot",
                 .end = "Depot",
                 .errands = {bed("Depot", "Hut", 90), bed("Ford", "Lodge", 80),
                             bed("Lodge", "Depot", 40), bed("Depot", "Col", 50)}},
                snow};
    trial.question.prefer = prefer;
    const auto answer = trial.plan();
    const auto& plan = std::get<RoundPlan>(answer);
    const auto best = best_of_all_orders(trial);
    REQUIRE(best.has_value());
    CHECK(std::get<0>(result_of(plan).key(prefer)) ==
          doctest::Approx(std::get<0>(best->key(prefer))).epsilon(1e-12));
    CHECK(result_of(plan).end == best->end);
    std::vector<std::string> called{"Depot"};
    for (const RoundHop& hop : plan.hops) {
      CHECK(hop.rig.load == load_after(trial, called));
      CHECK(hop.places_rewalked > 0);
      called.push_back(trial.scene.network.stations[trial.stops.reached(hop.hop)].name);
    }
  }
}

TEST_CASE("loads judged in any order by a crew make the same round, and each is told of") {
  const testing::TurningSnow turning{testing::plain_weather(),
                                     {after_minutes(60), after_minutes(90)}};
  const snow::ConstantSnow steady = testing::snow_of(snow::Wetness::dry);
  for (const snow::SnowAt* snow :
       {static_cast<const snow::SnowAt*>(&turning), static_cast<const snow::SnowAt*>(&steady)}) {
    // What goes from stop to stop makes one load of several sets of stops.
    Trial trial{
        {.start = "Depot",
         .end = "Depot",
         .errands = {bed("Ford", "Hut", 60), bed("Hut", "Lodge", 30), bed("Depot", "Col", 45)}},
        *snow};
    const auto alone = trial.plan();
    Backwards crew;
    Counted counted;
    trial.question.crew = &crew;
    trial.question.watcher = &counted;
    const auto answer = trial.plan();
    const auto& plan = std::get<RoundPlan>(answer);
    CHECK(called_at(plan, trial) == called_at(std::get<RoundPlan>(alone), trial));
    CHECK(result_of(plan).key(Preference::safest) ==
          result_of(std::get<RoundPlan>(alone)).key(Preference::safest));
    CHECK(crew.most_at_once > 1);
    // With the ford before the hut before the lodge: 4 sets of these, with and without the col.
    // Where the snow turns, some are driven on from again for the proof that no order is better.
    CHECK(counted.wanted == counted.done);
    CHECK((snow == &steady ? counted.wanted == 8 : counted.wanted > 8));
  }
}

TEST_CASE("what is too much at once is taken one after the other, though that is longer") {
  const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry);
  // The bed takes 175 kg, 0.7 of its rating: the ford lies on the way to the hut, and is passed by
  // until the hut has its 160 kg.
  const Trial heavy{{.start = "Depot",
                     .end = "Lodge",
                     .errands = {bed("Depot", "Hut", 160), bed("Ford", "Lodge", 150)}},
                    snow};
  const auto answer = heavy.plan();
  CHECK(called_at(std::get<RoundPlan>(answer), heavy) ==
        std::vector<std::string>{"Hut", "Ford", "Lodge"});
  Trial light{{.start = "Depot",
               .end = "Lodge",
               .errands = {bed("Depot", "Hut", 20), bed("Ford", "Lodge", 15)}},
              snow};
  light.question.prefer = Preference::quickest;
  const auto lighter = light.plan();
  CHECK(called_at(std::get<RoundPlan>(lighter), light) ==
        std::vector<std::string>{"Ford", "Hut", "Lodge"});
}

TEST_CASE("a load that no order can carry is told with how far the round gets") {
  const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry);
  const Trial trial{{.start = "Depot",
                     .end = "Depot",
                     .errands = {bed("Depot", "Ford", 40), bed("Col", "Hut", 400)}},
                    snow};
  const auto answer = trial.plan();
  const auto& none = std::get<NoRound>(answer);
  REQUIRE(none.farthest.size() == 2);
  REQUIRE(none.unreached.size() == 1);
  CHECK(trial.stops.reached(none.unreached[0].hop) == *trial.scene.network.station_named("Hut"));
  CHECK(none.unreached[0].rig.load.bed == Kilograms{400});
  CHECK(none.unreached[0].none.has_value());
}

TEST_CASE("where slush closes the way the rig waits at its stop until that has frozen") {
  const testing::TurningSnow snow{testing::plain_weather(), {after_minutes(8), after_minutes(90)}};
  const Trial trial{{.start = "Depot", .end = "Depot", .errands = {bed("Depot", "Lodge", 150)}},
                    snow};
  const auto answer = trial.plan();
  const auto& plan = std::get<RoundPlan>(answer);
  REQUIRE(plan.hops.size() == 2);
  CHECK(plan.hops[0].departs == kMorning);
  CHECK(plan.hops[0].arrives < after_minutes(8));
  // Ready ten minutes after arriving, in the midst of the slush, which is over a second after 90.
  CHECK(plan.hops[1].departs == Instant{after_minutes(90).seconds + 1});
}

TEST_CASE("through turning snow a round is no better than the best of all orders, and holds") {
  const testing::TurningSnow snow{testing::plain_weather(), {after_minutes(60), after_minutes(90)}};
  for (const Preference prefer : {Preference::safest, Preference::quickest}) {
    Trial trial{
        {.start = "Depot",
         .end = "Depot",
         .errands = {bed("Depot", "Hut", 90), bed("Ford", "Lodge", 80), bed("Depot", "Col", 50)}},
        snow};
    trial.question.prefer = prefer;
    const auto answer = trial.plan();
    const auto& plan = std::get<RoundPlan>(answer);
    const auto best = best_of_all_orders(trial);
    REQUIRE(best.has_value());
    CHECK(result_of(plan).key(prefer) == best->key(prefer));
    CHECK_FALSE(plan.not_ruled_out.has_value());
  }
}

TEST_CASE("too little fuel, or too little day, makes no round") {
  const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry);
  Trial trial{{.start = "Depot",
               .end = "Depot",
               .errands = {bed("Depot", "Hut", 20), bed("Depot", "Lodge", 20)}},
              snow};
  const auto full = trial.plan();
  const units::Litres needed = std::get<RoundPlan>(full).fuel;
  rig::Rig nearly = trial.rig;
  nearly.load.fuel =
      nearly.carrier.tank * trial.scene.rules.fuel_reserve + needed - units::Litres{0.01};
  const auto short_of_fuel = plan_round(trial.judge.with_rig(nearly), trial.question);
  REQUIRE(std::holds_alternative<NoRound>(short_of_fuel));
  CHECK(std::get<NoRound>(short_of_fuel).farthest.size() == 2);
  CHECK_FALSE(std::get<NoRound>(short_of_fuel).unreached.front().none.has_value());

  const Instant end = std::get<RoundPlan>(full).hops.back().arrives;
  trial.question.hours.to = end;
  CHECK(std::holds_alternative<RoundPlan>(trial.plan()));
  trial.question.hours.to = {end.seconds - 1};
  CHECK(std::holds_alternative<NoRound>(trial.plan()));
}

TEST_CASE("a trip that is worse when walked again withholds the round") {
  const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry);
  Trial trial{{.start = "Depot", .end = "", .errands = {bed("Depot", "Hut", 20)}}, snow};
  trial.question.rewalk = testing::finds_fault;
  CHECK_THROWS_AS((void)trial.plan(), base::OurFault);
}

}  // namespace rimehaul::day
