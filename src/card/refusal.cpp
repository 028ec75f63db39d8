#include "card/refusal.h"

#include <algorithm>
#include <cstdint>

#include "card/figures.h"
#include "card/notices.h"
#include "card/words.h"
#include "search/snow_at_start.h"

namespace rimehaul::card {

namespace {

using passage::Stand;
using passage::Verdict;

double allowed_in(const RefusalContext& context) {
  return passage::allowed_share_for(context.scene.rules, context.rig.driver_level).value_or(0.0);
}

std::string remedy_for(const passage::Finding& finding, Stand stand) {
  return stand == Stand::missing ? words::where_to_say(finding) : std::string{};
}

RefusedLeg refused_leg(const search::Obstacle& obstacle, const RefusalContext& context) {
  const trails::Network& network = context.scene.network;
  const trails::Leg& leg = network.legs[static_cast<std::uint32_t>(obstacle.leg)];
  const double allowed = allowed_in(context);
  RefusedLeg refused;
  refused.trail = network.trails[leg.trail].name;
  refused.from = name_of(network, leg.from);
  refused.to = name_of(network, leg.to);
  refused.span = leg.span;
  refused.way = leg.way;
  if (obstacle.turn_from) {
    const trails::Leg& before = network.legs[static_cast<std::uint32_t>(*obstacle.turn_from)];
    refused.turn_from = network.trails[before.trail].name;
  }
  refused.finding = obstacle.finding;
  refused.stand = passage::stand_of(obstacle.finding, allowed);
  refused.remedy = remedy_for(refused.finding, refused.stand);
  for (const passage::Finding& finding : obstacle.findings) {
    refused.findings.push_back({finding, passage::stand_of(finding, allowed)});
  }
  if (refused.findings.empty()) {
    refused.findings.push_back({refused.finding, refused.stand});
  }
  refused.opens = obstacle.opens;
  refused.opens_it = words::openings(obstacle.opens);
  if (!obstacle.decision.empty()) {
    refused.opens_it.push_back(words::opens_by_decision(obstacle.decision));
  }
  const bool restricted = refused.stand == Stand::asks || obstacle.opens.loads.any();
  refused.verdict = restricted ? Verdict::restricted : Verdict::closed;
  return refused;
}

std::string counted(std::size_t count, const std::string& what) {
  return std::to_string(count) + " " + what + (count == 1 ? "" : "s");
}

std::string name_of(const RefusedLeg& leg) {
  return (leg.turn_from.empty() ? "" : "turn from " + leg.turn_from + " into ") + leg.trail + ", " +
         leg.from + " to " + leg.to;
}

/// "on all 3 legs and 2 turns", or the place itself where there is one alone.
std::string where_of(const RefusalCause& cause, const Refusal& refusal, std::size_t legs_in_all) {
  const auto legs = static_cast<std::size_t>(std::ranges::count_if(
      cause.places, [&](std::size_t index) { return refusal.legs[index].turn_from.empty(); }));
  const std::size_t turns = cause.places.size() - legs;
  const RefusedLeg& worst = refusal.legs[cause.worst];
  if (cause.places.size() == 1) {
    const bool is_leg = worst.turn_from.empty();
    const units::Metres at = cause.finding.at;
    return (is_leg ? "on " : "at the ") + name_of(worst) +
           (is_leg && words::has_place(cause.finding.check)
                ? ", " + where_text({at, at}, worst.span.to - worst.span.from)
                : "");
  }
  if (legs == 0) {
    return "at " + counted(turns, "turn");
  }
  std::string where = "on ";
  if (legs_in_all == 0 || legs_in_all == 1) {
    where += counted(legs, "leg");
  } else if (legs == legs_in_all) {
    where += "all " + counted(legs, "leg");
  } else {
    where += std::to_string(legs) + " of " + counted(legs_in_all, "leg");
  }
  return turns == 0 ? where : where + " and " + counted(turns, "turn");
}

RefusalCause refusal_cause(const search::Cause& cause, const Refusal& refusal,
                           std::size_t legs_in_all) {
  RefusalCause told;
  told.finding = cause.finding;
  told.stand = passage::stand_of(cause.finding, refusal.allowed_share);
  told.places = cause.obstacles;
  told.worst = cause.worst;
  told.where = where_of(told, refusal, legs_in_all);
  told.remedy = remedy_for(told.finding, told.stand);
  told.lifts = cause.lifts;
  told.lifted_by = words::openings(cause.lifts);
  if (told.stand == Stand::asks) {
    told.lifted_by.push_back(words::opens_by_decision());
  }
  const std::string otherwise = words::opens_otherwise(cause.finding.check);
  if (told.stand == Stand::refused && !otherwise.empty()) {
    told.lifted_by.push_back(otherwise);
  }
  return told;
}

/// Every decision that some leg asks for, each once.
std::string decisions_in(const Refusal& refusal) {
  std::vector<std::string> decisions;
  for (const RefusalCause& cause : refusal.causes) {
    const std::string& asks = cause.finding.asks;
    if (!asks.empty() && std::ranges::find(decisions, asks) == decisions.end()) {
      decisions.push_back(asks);
    }
  }
  std::string all;
  for (const std::string& decision : decisions) {
    all += (all.empty() ? "" : "; ") + decision;
  }
  return all;
}

std::string snow_at_departure(const RefusalContext& context) {
  const auto state = search::snow_at_start(context.scene, context.snow, context.question);
  return state ? words::snow_state(*state) : "unknown";
}

void add_what_blocks(const search::NoRoute& answer, const RefusalContext& context,
                     Refusal& refusal) {
  const trails::Network& network = context.scene.network;
  for (const search::Obstacle& obstacle : answer.obstacles) {
    refusal.legs.push_back(refused_leg(obstacle, context));
  }
  for (const search::Cause& cause : answer.causes) {
    refusal.causes.push_back(refusal_cause(cause, refusal, answer.way.size()));
  }
  refusal.nearest = {trails_along(answer.way, network), answer.opens,
                     words::openings(answer.opens)};
  if (refusal.only_by_decision()) {
    refusal.nearest.opens_it.push_back(words::opens_by_decision(decisions_in(refusal)));
  }
  for (const search::OtherWay& other : answer.other_ways) {
    refusal.other_ways.push_back(
        {trails_along(other.legs, network), other.opens, words::openings(other.opens)});
  }
}

}  // namespace

std::string title_of(const trails::Network& network, const search::RouteQuestion& question) {
  const auto& stations = question.stations;
  std::string title =
      network.stations[stations.front()].name + " to " + network.stations[stations.back()].name;
  for (std::size_t i = 1; i + 1 < stations.size(); ++i) {
    title += (i == 1 ? " via " : ", ") + network.stations[stations[i]].name;
  }
  return title;
}

bool Refusal::only_by_decision() const {
  return !legs.empty() &&
         std::ranges::all_of(legs, [](const RefusedLeg& leg) { return leg.stand == Stand::asks; });
}

Verdict Refusal::verdict() const {
  const bool by_load =
      nearest.opens.loads.any() ||
      std::ranges::any_of(other_ways, [](const RefusedWay& way) { return way.opens.loads.any(); });
  return by_load || only_by_decision() ? Verdict::restricted : Verdict::closed;
}

Refusal make_refusal(const search::NoRoute& answer, const RefusalContext& context) {
  Refusal refusal;
  refusal.site = context.scene.site_name;
  refusal.title = title_of(context.scene.network, context.question);
  refusal.rig = context.rig.name;
  refusal.towing = context.rig.trailer.has_value();
  refusal.load =
      words::load(context.rig.load, refusal.towing ? context.rig.trailer->name : std::string{});
  refusal.snow = snow_at_departure(context);
  refusal.snow_told_by = context.snow.told_by();
  refusal.depart = context.question.depart;
  refusal.departures = context.departures;
  refusal.local_clock = context.scene.rules.local_clock;
  refusal.allowed_share = allowed_in(context);
  refusal.why = answer.why;
  refusal.made_from = context.made_from;
  add_what_blocks(answer, context, refusal);
  return refusal;
}

std::string not_enough_fuel(const rig::Rig& rig, const passage::Rules& rules, units::Litres route) {
  return words::fuel_short({rig.load.fuel, route + rig.carrier.tank * rules.fuel_reserve});
}

}  // namespace rimehaul::card
