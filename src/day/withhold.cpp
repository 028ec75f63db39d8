#include "day/withhold.h"

#include <algorithm>
#include <cstdint>

#include "base/require.h"

namespace rimehaul::day {

std::vector<audit::PromisedLeg> promise_of(const search::Route& route,
                                           const trails::Network& network) {
  std::vector<audit::PromisedLeg> promise;
  for (std::size_t i = 0; i < route.legs.size(); ++i) {
    const search::RouteLeg& part = route.legs[i];
    const trails::Leg& leg = network.legs[static_cast<std::uint32_t>(part.leg)];
    const auto own = part.judgement.share();
    base::require(own.has_value(), "a route has a leg whose share is not known");
    double share = std::max(*own, part.turn_into.binding.share.value_or(0.0));
    bool restricted = part.judgement.verdict == passage::Verdict::restricted ||
                      part.turn_into.verdict == passage::Verdict::restricted;
    if (i + 1 < route.legs.size()) {
      const passage::TurnJudgement& out = route.legs[i + 1].turn_into;
      share = std::max(share, out.binding.share.value_or(0.0));
      restricted = restricted || out.verdict == passage::Verdict::restricted;
    }
    promise.push_back({.trail = network.trails[leg.trail].name,
                       .span = leg.span,
                       .way = leg.way,
                       .entry = part.entry,
                       .share = share,
                       .permitted = restricted,
                       .speed = part.judgement.slowest,
                       .time = part.judgement.time,
                       .fuel = part.judgement.fuel});
  }
  return promise;
}

void withhold_if_worse(const audit::Rewalk& rewalk) {
  std::string words;
  for (const audit::Discrepancy& discrepancy : rewalk.discrepancies) {
    words += words.empty() ? "" : "; ";
    words += "leg " + std::to_string(discrepancy.leg + 1) + ": " + discrepancy.what;
  }
  base::require(rewalk.discrepancies.empty(),
                "the route found is worse when walked again, and is withheld: " + words);
  base::require(rewalk.places_judged > 0, "walking the route again judged no place");
}

}  // namespace rimehaul::day
