#include "day/round_plan.h"

#include <algorithm>

#include "base/require.h"
#include "day/fuel.h"
#include "day/round_hops.h"
#include "day/withhold.h"

namespace rimehaul::day {

using search::Hop;
using search::StopSet;
using units::Instant;

namespace {

class Planner {
 public:
  Planner(const passage::Judge& judge, const RoundQuestion& question)
      : judge_{judge}, question_{question}, hops_{judge, question} {}

  [[nodiscard]] std::variant<RoundPlan, NoRound> plan() {
    if (question_.watcher != nullptr) {
      question_.watcher->parts_to_come(question_.stops.sets_on_the_way().size());
    }
    const units::Litres spare = fuel_to_spare(judge_.rig(), judge_.scene().rules);
    const auto answer =
        search::best_order(hops_, {.after = question_.stops.after,
                                   .comes_to_an_end = question_.stops.end.has_value(),
                                   .depart = question_.hours.from,
                                   .halt = question_.halt,
                                   .prefer = question_.prefer,
                                   .fuel = spare});
    if (const auto* none = std::get_if<search::NoOrder>(&answer)) {
      return NoRound{.farthest = driven(none->farthest),
                     .unreached = unreached_after(none->farthest),
                     .fuel_to_spare = spare,
                     .not_ruled_out = none->farthest.not_ruled_out};
    }
    const auto& order = std::get<search::StopOrder>(answer);
    RoundPlan plan{
        .hops = driven(order), .fuel_to_spare = spare, .not_ruled_out = order.not_ruled_out};
    for (RoundHop& hop : plan.hops) {
      hop.places_rewalked = walk_again(hop);
      plan.fuel = plan.fuel + hop.route.fuel;
    }
    base::require(plan.fuel <= spare, "a round takes more fuel than there is");
    return plan;
  }

 private:
  [[nodiscard]] std::vector<RoundHop> driven(const search::StopOrder& order) {
    std::vector<RoundHop> driven;
    Hop hop;
    for (std::size_t i = 0; i < order.hops.size(); ++i) {
      hop.to = i < order.stops.size() ? std::optional{order.stops[i]} : std::nullopt;
      driven.push_back(drive(hop, order.hops[i]));
      if (hop.to.has_value()) {
        hop.called |= StopSet{1} << *hop.to;
      }
      hop.from = hop.to;
    }
    return driven;
  }

  [[nodiscard]] RoundHop drive(const Hop& hop, const search::HopDriven& promised) {
    search::RouteAnswer answer = hops_.answer(hop, promised.departs);
    auto* routes = std::get_if<std::vector<search::Route>>(&answer);
    base::require(routes != nullptr &&
                      units::after(promised.departs, routes->front().time) == promised.arrives,
                  "a hop of a round is not as it was found when it is asked for again");
    return {.hop = hop,
            .departs = promised.departs,
            .arrives = promised.arrives,
            .rig = hops_.judge_on(hop).rig(),
            .route = std::move(routes->front())};
  }

  [[nodiscard]] std::vector<UnreachedStop> unreached_after(const search::StopOrder& order) {
    Hop hop;
    Instant ready = question_.hours.from;
    for (std::size_t i = 0; i < order.stops.size(); ++i) {
      hop.from = order.stops[i];
      hop.called |= StopSet{1} << order.stops[i];
      ready = units::after(order.hops[i].arrives, question_.halt);
    }
    std::vector<UnreachedStop> unreached;
    for (std::size_t stop = 0; stop < question_.stops.after.size(); ++stop) {
      const bool is_called = ((hop.called >> stop) & 1U) != 0;
      if (!is_called && (question_.stops.after[stop] & ~hop.called) == 0) {
        hop.to = stop;
        unreached.push_back(refused(hop, ready));
      }
    }
    if (unreached.empty()) {
      hop.to.reset();
      unreached.push_back(refused(hop, ready));
    }
    return unreached;
  }

  [[nodiscard]] UnreachedStop refused(const Hop& hop, Instant ready) {
    UnreachedStop stop{.hop = hop, .rig = hops_.judge_on(hop).rig(), .ready = ready, .none = {}};
    if (ready <= question_.hours.to) {
      search::RouteAnswer answer = hops_.answer(hop, ready);
      if (auto* none = std::get_if<search::NoRoute>(&answer); none != nullptr) {
        stop.none = std::move(*none);
      }
    }
    return stop;
  }

  [[nodiscard]] std::size_t walk_again(const RoundHop& hop) {
    const passage::Scene& scene = judge_.scene();
    const audit::Rewalk rewalk =
        question_.rewalk(scene, hop.rig, judge_.snow(), promise_of(hop.route, scene.network));
    withhold_if_worse(rewalk);
    return rewalk.places_judged;
  }

  const passage::Judge& judge_;
  const RoundQuestion& question_;
  RoundHops hops_;
};

}  // namespace

std::variant<RoundPlan, NoRound> plan_round(const passage::Judge& judge,
                                            const RoundQuestion& question) {
  return Planner{judge, question}.plan();
}

}  // namespace rimehaul::day
