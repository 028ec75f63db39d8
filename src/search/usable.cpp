#include "search/usable.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace rimehaul::search {

using passage::Verdict;
using trails::LegId;

namespace {

bool permitted(Verdict verdict, Permission permission) {
  return verdict == Verdict::open ||
         (verdict == Verdict::restricted && permission == Permission::named_person);
}

double known_or_nan(const std::optional<double>& share) {
  return share.value_or(std::numeric_limits<double>::quiet_NaN());
}

}  // namespace

LegFacts facts_of(const passage::LegJudgement& judgement) {
  return {.verdict = judgement.verdict,
          .share = known_or_nan(judgement.share()),
          .allowed_share = judgement.allowed_share,
          .time_s = judgement.time.value(),
          .fuel_l = judgement.fuel.value()};
}

TurnFacts facts_of(Turn turn, const passage::TurnJudgement& judgement) {
  return {
      .turn = turn, .verdict = judgement.verdict, .share = known_or_nan(judgement.binding.share)};
}

std::vector<LegFacts> judge_legs(const trails::Network& network, const passage::LegJudge& judge,
                                 units::Instant entry) {
  std::vector<LegFacts> facts;
  facts.reserve(network.legs.size());
  for (std::uint32_t leg = 0; leg < network.legs.size(); ++leg) {
    facts.push_back(facts_of(judge.judge(LegId{leg}, entry)));
  }
  return facts;
}

bool may_drive(const LegFacts& leg, Permission permission) {
  return permitted(leg.verdict, permission) && 0.0 <= leg.share && leg.share <= leg.allowed_share &&
         0.0 < leg.time_s && std::isfinite(leg.time_s) && 0.0 <= leg.fuel_l &&
         std::isfinite(leg.fuel_l);
}

bool may_turn(const TurnFacts& turn, const LegFacts& into, Permission permission) {
  return permitted(turn.verdict, permission) && 0.0 <= turn.share &&
         turn.share <= into.allowed_share;
}

passage::Finding blocking_finding(const passage::LegJudgement& judgement) {
  if (judgement.verdict == Verdict::closed) {
    return judgement.bind();
  }
  const auto asks = std::ranges::find_if(
      judgement.findings, [](const passage::Finding& finding) { return !finding.asks.empty(); });
  if (judgement.verdict == Verdict::restricted && asks != judgement.findings.end()) {
    return *asks;
  }
  return passage::unknown(passage::Check::heights_known, "heights to tell time and fuel by");
}

std::string decisions_for(const passage::LegJudgement& judgement) {
  std::string decisions;
  if (judgement.verdict != Verdict::restricted) {
    return decisions;
  }
  for (const passage::Finding& finding : judgement.findings) {
    if (!finding.asks.empty()) {
      decisions += (decisions.empty() ? "" : "; ") + finding.asks;
    }
  }
  return decisions;
}

std::vector<TurnFacts> judge_turns(const trails::Network& network, const passage::LegJudge& judge,
                                   units::Instant entry, const std::vector<bool>& drivable) {
  std::vector<std::vector<LegId>> leaving(network.junctions.size());
  for (std::uint32_t leg = 0; leg < network.legs.size(); ++leg) {
    if (drivable[leg]) {
      leaving[static_cast<std::size_t>(network.legs[leg].from)].push_back(LegId{leg});
    }
  }
  std::vector<TurnFacts> turns;
  for (std::uint32_t from = 0; from < network.legs.size(); ++from) {
    if (!drivable[from]) {
      continue;
    }
    for (const LegId to : leaving[static_cast<std::size_t>(network.legs[from].to)]) {
      const Turn turn{.from = LegId{from}, .to = to};
      turns.push_back(facts_of(turn, judge.judge_turn(turn.from, turn.to, entry)));
    }
  }
  return turns;
}

}  // namespace rimehaul::search
