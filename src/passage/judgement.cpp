// What the findings of a leg come to: its verdict and its share.
#include "passage/judgement.h"

#include <algorithm>
#include <cmath>

namespace rimehaul::passage {

const char* words_for(Verdict verdict) {
  switch (verdict) {
    case Verdict::open:
      return "open";
    case Verdict::restricted:
      return "restricted";
    case Verdict::closed:
      return "closed";
  }
  return "closed";
}

std::optional<double> LegJudgement::share() const {
  if (findings.empty()) {
    return std::nullopt;
  }
  double largest = 0.0;
  for (const Finding& finding : findings) {
    const bool known = finding.share && std::isfinite(*finding.share) && finding.missing.empty() &&
                       finding.refused.empty();
    if (!known) {
      return std::nullopt;
    }
    largest = std::max(largest, *finding.share);
  }
  return largest;
}

Verdict verdict_of(const std::vector<Finding>& findings, double allowed_share) {
  if (findings.empty()) {
    return Verdict::closed;
  }
  Verdict verdict = Verdict::open;
  for (const Finding& finding : findings) {
    const Stand stand = stand_of(finding, allowed_share);
    if (stand == Stand::asks) {
      verdict = Verdict::restricted;
    } else if (stand != Stand::passes) {
      return Verdict::closed;
    }
  }
  return verdict;
}

}  // namespace rimehaul::passage
