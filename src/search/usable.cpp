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

bool lacks_words_alone(const passage::LegJudgement& judgement) {
  using passage::Stand;
  return judgement.verdict == Verdict::closed &&
         std::ranges::all_of(judgement.findings, [&](const passage::Finding& finding) {
           const Stand stand = passage::stand_of(finding, judgement.allowed_share);
           return stand == Stand::passes || stand == Stand::asks ||
                  (stand == Stand::missing && passage::is_of_the_day(finding.check));
         });
}

struct TwoNumbers {
  double a = 0.0;
  double b = 0.0;
};

bool same_number(const TwoNumbers& numbers) {
  return numbers.a == numbers.b || (std::isnan(numbers.a) && std::isnan(numbers.b));
}

double known_or_nan(const std::optional<double>& share) {
  return share.value_or(std::numeric_limits<double>::quiet_NaN());
}

}  // namespace

bool bars(const passage::Finding& finding) {
  using enum passage::Check;
  if (finding.check == heights_known) {
    return !finding.missing.empty();
  }
  return !finding.refused.empty() &&
         (finding.check == direction || finding.check == hours || finding.check == single_lane ||
          finding.check == order || finding.check == zone);
}

LegFacts facts_of(const passage::LegJudgement& judgement) {
  return {.verdict = judgement.verdict,
          .share = known_or_nan(judgement.share()),
          .allowed_share = judgement.allowed_share,
          .time_s = judgement.time.value(),
          .fuel_l = judgement.fuel.value(),
          .barred = std::ranges::any_of(judgement.findings, bars),
          .untold = lacks_words_alone(judgement)};
}

TurnFacts facts_of(const passage::TurnJudgement& judgement) {
  return {.verdict = judgement.verdict, .share = known_or_nan(judgement.binding.share)};
}

// Either way round. NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
bool are_same(const LegFacts& a, const LegFacts& b) {
  return a.verdict == b.verdict && same_number({a.share, b.share}) &&
         same_number({a.allowed_share, b.allowed_share}) && same_number({a.time_s, b.time_s}) &&
         same_number({a.fuel_l, b.fuel_l}) && a.barred == b.barred && a.untold == b.untold;
}

// Either way round. NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
bool are_same(const TurnFacts& a, const TurnFacts& b) {
  return a.verdict == b.verdict && same_number({a.share, b.share});
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

std::vector<Turn> turns_of(const trails::Network& network) {
  std::vector<std::vector<LegId>> leaving(network.junctions.size());
  for (std::uint32_t leg = 0; leg < network.legs.size(); ++leg) {
    leaving[static_cast<std::size_t>(network.legs[leg].from)].push_back(LegId{leg});
  }
  std::vector<Turn> turns;
  for (std::uint32_t from = 0; from < network.legs.size(); ++from) {
    for (const LegId to : leaving[static_cast<std::size_t>(network.legs[from].to)]) {
      turns.push_back({.from = LegId{from}, .to = to});
    }
  }
  return turns;
}

}  // namespace rimehaul::search
