// Findings: how a share comes about, what closes, and which of two binds.
#include "passage/finding.h"

#include <cmath>
#include <utility>

namespace rimehaul::passage {

namespace {

/// Closed for want of knowledge, closed by a rule, closed without a number, or a number.
enum class Rank { missing, refused, no_share, share };

bool has_share(const Finding& finding) {
  return finding.share && std::isfinite(*finding.share);
}

Rank rank_of(const Finding& finding) {
  if (!finding.missing.empty()) {
    return Rank::missing;
  }
  if (!finding.refused.empty()) {
    return Rank::refused;
  }
  return has_share(finding) ? Rank::share : Rank::no_share;
}

}  // namespace

// Demand before capacity, as in every table. NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
Finding compare(Check check, units::Amount demand, units::Amount capacity) {
  Finding finding;
  finding.check = check;
  finding.demand = demand;
  finding.capacity = capacity;
  if (!std::isfinite(demand.value) || !std::isfinite(capacity.value)) {
    finding.missing = "a number that this check works with";
    return finding;
  }
  if (!(capacity.value > 0.0)) {
    finding.refused = "nothing is left to hold against what is asked";
    return finding;
  }
  const double share = demand.value > 0.0 ? demand.value / capacity.value : 0.0;
  if (!std::isfinite(share)) {
    finding.refused = "next to nothing is left to hold against what is asked";
    return finding;
  }
  finding.share = share;
  return finding;
}

Finding unknown(Check check, std::string what_is_missing) {
  Finding finding;
  finding.check = check;
  finding.missing = std::move(what_is_missing);
  if (finding.missing.empty()) {
    finding.missing = "something that nobody named";  // empty would read as known
  }
  return finding;
}

Finding refusal(Check check, std::string why) {
  Finding finding;
  finding.check = check;
  finding.refused = std::move(why);
  if (finding.refused.empty()) {
    finding.refused = "refused without a reason";  // empty would read as kept
  }
  return finding;
}

Finding kept(Check check, std::string_view how) {
  Finding finding;
  finding.check = check;
  finding.measure = Measure::rule;
  finding.share = 0.0;
  finding.how = how;
  return finding;
}

// Demand before capacity, as in every table. NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
Finding held_to(Check check, units::Amount demand, units::Amount capacity,
                std::string why_refused) {
  Finding finding =
      demand.value <= capacity.value ? kept(check) : refusal(check, std::move(why_refused));
  finding.measure = Measure::rule;
  finding.demand = demand;
  finding.capacity = capacity;
  return finding;
}

Stand stand_of(const Finding& finding, double allowed_share) {
  const Rank rank = rank_of(finding);
  if (rank == Rank::refused) {
    return Stand::refused;
  }
  if (rank != Rank::share) {
    return Stand::missing;
  }
  const bool proven = *finding.share >= 0.0 && *finding.share <= allowed_share;
  if (!proven) {
    return Stand::exceeds;
  }
  return finding.asks.empty() ? Stand::passes : Stand::asks;
}

// Against the other. NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
bool tells_more(const Finding& a, const Finding& b) {
  Finding there = b;
  there.at = a.at;
  return std::isfinite(a.demand.value) && !std::isfinite(b.demand.value) &&
         !binds_before(there, a) && !binds_before(a, there);
}

// As `<` reads. NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
bool binds_before(const Finding& a, const Finding& b) {
  const Rank rank_a = rank_of(a);
  const Rank rank_b = rank_of(b);
  if (rank_a != rank_b) {
    return rank_a < rank_b;
  }
  if (rank_a == Rank::share && *a.share != *b.share) {
    return *a.share > *b.share;
  }
  if (a.asks.empty() != b.asks.empty()) {
    return !a.asks.empty();
  }
  return a.at < b.at;
}

}  // namespace rimehaul::passage
