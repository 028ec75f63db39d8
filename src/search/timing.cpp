#include "search/timing.h"

#include <algorithm>

#include "base/require.h"

namespace rimehaul::search {

using trails::LegId;

namespace {

/// Nobody turns into the first leg: the rig stands in it.
passage::TurnJudgement setting_out() {
  return {.verdict = passage::Verdict::open, .binding = passage::kept(passage::Check::turning)};
}

void add_to(Route& route, RouteLeg leg) {
  const LegFacts facts = facts_of(leg.judgement);
  route.worst_share = std::max({route.worst_share, facts.share, *leg.turn_into.binding.share});
  route.time += leg.judgement.time;
  route.fuel += leg.judgement.fuel;
  route.length += leg.judgement.length;
  route.needs_permission = route.needs_permission ||
                           leg.judgement.verdict == passage::Verdict::restricted ||
                           leg.turn_into.verdict == passage::Verdict::restricted;
  route.legs.push_back(std::move(leg));
}

}  // namespace

Permission permission_of(const RouteQuestion& question) {
  return question.permitted_by.empty() ? Permission::nobody : Permission::named_person;
}

Timekeeper::Timekeeper(const passage::LegJudge& judge, units::Instant depart)
    : judge_{&judge}, depart_{depart} {}

const passage::LegJudgement& Timekeeper::judged(LegId leg, units::Instant entry) {
  const auto key = std::pair{leg, entry};
  auto found = known_.find(key);
  if (found == known_.end()) {
    found = known_.emplace(key, judge_->judge(leg, entry)).first;
    base::require(found->second.binding < found->second.findings.size(),
                  "a leg was judged without a finding");
  }
  return found->second;
}

std::variant<Route, Blocked> Timekeeper::drive(std::span<const LegId> legs, Permission permission) {
  base::require(!legs.empty(), "a way has no legs");
  Route route;
  for (std::size_t i = 0; i < legs.size(); ++i) {
    RouteLeg leg{.leg = legs[i], .entry = units::after(depart_, route.time)};
    leg.judgement = judged(leg.leg, leg.entry);
    leg.turn_into = i == 0 ? setting_out() : judge_->judge_turn(legs[i - 1], leg.leg, leg.entry);
    const LegFacts facts = facts_of(leg.judgement);
    if (!may_drive(facts, permission)) {
      return Blocked{.leg = leg.leg,
                     .turn_from = {},
                     .entry = leg.entry,
                     .finding = blocking_finding(leg.judgement),
                     .decision = decisions_for(leg.judgement)};
    }
    if (!may_turn(facts_of(leg.turn_into), facts, permission)) {
      return Blocked{.leg = leg.leg,
                     .turn_from = legs[i == 0 ? 0 : i - 1],
                     .entry = leg.entry,
                     .finding = leg.turn_into.binding,
                     .decision = leg.turn_into.binding.asks};
    }
    add_to(route, std::move(leg));
  }
  return route;
}

}  // namespace rimehaul::search
