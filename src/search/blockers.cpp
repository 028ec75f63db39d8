#include "search/blockers.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>

namespace rimehaul::search {

using passage::Verdict;
using trails::LegId;

namespace {

// Prices in order of weight: up to a hundred of one never outweigh one of the next. A share above
// what is allowed is squeezed into [0, 1); a thousand kilometres weigh as much as a share of 0.001.
constexpr double kBarredLeg = 128.0;
constexpr double kClosed = 1.0;
constexpr double kUntold = kClosed / 128;
constexpr double kDecision = kUntold / 128;
constexpr double kOverShare = kDecision / 128;
constexpr double kMetre = kOverShare / 1e9;

/// A share and what it is held against.
struct ShareHeld {
  double share = 0.0;
  double allowed = 0.0;
};

/// Share above what is allowed, from 0 to 1; what nobody knows is the farthest away.
double squeezed_over_share(const ShareHeld& held) {
  const double over = held.share - held.allowed;
  if (over <= 0.0) {
    return 0.0;
  }
  return std::isfinite(over) ? over / (1.0 + over) : 1.0;
}

/// What it costs to take something that may not be driven.
double price_of_block(Verdict verdict, const ShareHeld& held) {
  return verdict == Verdict::restricted ? kDecision
                                        : kClosed + kOverShare * squeezed_over_share(held);
}

Prices prices_of(const LegGraph& legs, const trails::Network& network, const Outlook& outlook,
                 Permission permission) {
  Prices prices;
  prices.reserve(legs.steps.size());
  for (const Step& step : legs.steps) {
    prices.push_back(0.0);
    if (!step.leg.has_value()) {
      continue;
    }
    const auto index = static_cast<std::size_t>(*step.leg);
    const LegFacts& leg = outlook.leg(*step.leg);
    const TurnFacts turn = outlook.turn_into(step);
    prices.back() = kMetre * network.legs[index].line.length().value();
    if (!may_drive(leg, permission)) {
      prices.back() += leg.untold ? kUntold
                                  : price_of_block(leg.verdict, {leg.share, leg.allowed_share}) +
                                        (leg.barred ? kBarredLeg : 0.0);
    }
    if (!may_turn(turn, leg, permission)) {
      prices.back() += price_of_block(turn.verdict, {turn.share, leg.allowed_share});
    }
  }
  return prices;
}

std::string names_of(const trails::Network& network, const RouteQuestion& question) {
  std::string names;
  for (std::size_t i = 0; i < question.stations.size(); ++i) {
    const bool last = i + 1 == question.stations.size();
    names += i == 0 ? "" : (last ? " to " : " by ");
    names += network.stations[question.stations[i]].name;
  }
  return names;
}

double over_share_of(const Obstacle& obstacle) {
  return obstacle.finding.share.value_or(std::numeric_limits<double>::infinity());
}

/// Each once, nearest to open first: what waits for a decision, then the lower share, unknown last.
void sort_obstacles(std::vector<Obstacle>& obstacles) {
  std::set<std::pair<LegId, std::optional<LegId>>> listed;
  std::erase_if(obstacles, [&](const Obstacle& obstacle) {
    return !listed.emplace(obstacle.leg, obstacle.turn_from).second;
  });
  std::ranges::stable_sort(obstacles, [](const Obstacle& a, const Obstacle& b) {
    return std::pair{a.decision.empty(), over_share_of(a)} <
           std::pair{b.decision.empty(), over_share_of(b)};
  });
}

std::string counted(const std::vector<Obstacle>& obstacles) {
  const auto turns = static_cast<std::size_t>(std::ranges::count_if(
      obstacles, [](const Obstacle& obstacle) { return obstacle.turn_from.has_value(); }));
  const auto told = [](std::size_t count, const std::string& one) {
    return std::to_string(count) + " " + one + (count == 1 ? "" : "s");
  };
  const std::size_t legs = obstacles.size() - turns;
  const std::string both = legs > 0 && turns > 0 ? " and " : "";
  return (legs > 0 ? told(legs, "leg") : "") + both + (turns > 0 ? told(turns, "turn") : "") +
         (obstacles.size() == 1 ? " blocks" : " block");
}

/// Judges once more what a way is made of, and lists what may not be driven.
std::vector<Obstacle> obstacles_on(std::span<const TimedLeg> legs, const passage::LegJudge& judge,
                                   Permission permission) {
  std::vector<Obstacle> obstacles;
  for (std::size_t i = 0; i < legs.size(); ++i) {
    const units::Instant entry = legs[i].entry;
    const passage::LegJudgement leg = judge.judge(legs[i].leg, entry);
    const LegFacts facts = facts_of(leg);
    if (i > 0) {
      const Turn turn{.from = legs[i - 1].leg, .to = legs[i].leg};
      const passage::TurnJudgement turned = judge.judge_turn(turn.from, turn.to, entry);
      if (!may_turn(facts_of(turned), facts, permission)) {
        obstacles.push_back(
            {.leg = turn.to, .turn_from = turn.from, .entry = entry, .finding = turned.binding});
        obstacles.back().decision =
            turned.verdict == Verdict::restricted ? turned.binding.asks : "";
      }
    }
    if (!may_drive(facts, permission)) {
      obstacles.push_back(
          {.leg = legs[i].leg, .turn_from = {}, .entry = entry, .finding = blocking_finding(leg)});
      obstacles.back().decision = decisions_for(leg);
    }
  }
  return obstacles;
}

}  // namespace

NoRoute what_blocks(const trails::Network& network, const passage::LegJudge& judge,
                    Outlook& outlook, const RouteQuestion& question,
                    std::span<const trails::JunctionId> stops) {
  const LegGraph legs = make_leg_graph(network, stops, outlook.turns());
  const Permission permission = permission_of(question);
  const auto path = best_judged(legs, outlook, [&] {
    return cheapest_way(legs, prices_of(legs, network, outlook, permission));
  });
  const std::string names = names_of(network, question);
  if (!path.has_value()) {
    return {.why = "no trails lead from " + names + ", open or closed", .obstacles = {}};
  }
  NoRoute none{.why = {}, .obstacles = {}, .way = legs_of(legs, *path)};
  std::vector<TimedLeg> at_departure;
  for (const LegId leg : none.way) {
    at_departure.push_back({leg, question.depart});
  }
  none.obstacles = obstacles_on(at_departure, judge, permission);
  sort_obstacles(none.obstacles);
  none.why = "no open way from " + names + ": " + counted(none.obstacles) +
             " even the way that is nearest to open";
  return none;
}

NoRoute what_stands_in(std::span<const TimedLeg> way, const passage::LegJudge& judge,
                       Permission permission) {
  NoRoute none{.why = {}, .obstacles = obstacles_on(way, judge, permission)};
  sort_obstacles(none.obstacles);
  none.why = counted(none.obstacles) + " the way";
  for (const TimedLeg& leg : way) {
    none.way.push_back(leg.leg);
  }
  return none;
}

NoRoute closed_by_the_hour(const trails::Network& network, const RouteQuestion& question,
                           const std::vector<Blocked>& blocked) {
  NoRoute none{.why = "no way from " + names_of(network, question) +
                      " stays open until it is reached: too late a departure, or too early",
               .obstacles = {}};
  std::set<std::pair<LegId, std::optional<LegId>>> listed;
  for (const Blocked& one : blocked) {
    if (listed.emplace(one.leg, one.turn_from).second) {
      none.obstacles.push_back(
          {.leg = one.leg, .turn_from = one.turn_from, .entry = one.entry, .finding = one.finding});
      none.obstacles.back().decision = one.decision;
    }
  }
  sort_obstacles(none.obstacles);
  return none;
}

}  // namespace rimehaul::search
