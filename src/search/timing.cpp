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

/// Adds the next leg to a route, or says what blocks it.
std::optional<Blocked> Timekeeper::drive_on(Route& route, const TimedLeg& next,
                                            Permission permission) {
  RouteLeg leg{.leg = next.leg, .entry = next.entry};
  const LegId before = route.legs.empty() ? leg.leg : route.legs.back().leg;
  leg.judgement = judged(leg.leg, leg.entry);
  leg.turn_into =
      route.legs.empty() ? setting_out() : judge_->judge_turn(before, leg.leg, leg.entry);
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
                   .turn_from = before,
                   .entry = leg.entry,
                   .finding = leg.turn_into.binding,
                   .decision = leg.turn_into.binding.asks};
  }
  add_to(route, std::move(leg));
  return std::nullopt;
}

std::variant<Route, Blocked> Timekeeper::drive(std::span<const LegId> legs, Permission permission) {
  base::require(!legs.empty(), "a way has no legs");
  Route route;
  for (const LegId leg : legs) {
    auto blocked = drive_on(route, {leg, units::after(depart_, route.time)}, permission);
    if (blocked.has_value()) {
      return std::move(*blocked);
    }
  }
  return route;
}

std::variant<Route, Blocked> Timekeeper::drive_at_hours(std::span<const TimedLeg> legs,
                                                        Permission permission) {
  base::require(!legs.empty() && legs.front().entry == depart_,
                "a way does not set out at its departure");
  Route route;
  for (const TimedLeg& leg : legs) {
    const units::Instant reached = units::after(depart_, route.time);
    base::require(reached <= leg.entry, "a leg is entered before it is reached");
    route.time = leg.entry.since(depart_);
    auto blocked = drive_on(route, leg, permission);
    if (blocked.has_value()) {
      return std::move(*blocked);
    }
    route.legs.back().waits_before = leg.entry.since(reached);
    route.waits += leg.entry.since(reached);
  }
  return route;
}

}  // namespace rimehaul::search
