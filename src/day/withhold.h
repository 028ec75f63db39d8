// The last look before anything is printed: a route that is worse than promised is withheld.
#pragma once

#include <vector>

#include "audit/rewalk.h"
#include "search/route.h"

namespace rimehaul::day {

/// What is promised of a route, leg by leg, in words and numbers: each leg with the larger of its
/// own share and those of the turns into and out of it.
[[nodiscard]] std::vector<audit::PromisedLeg> promise_of(const search::Route& route,
                                                         const trails::Network& network);

/// Throws OurFault with every discrepancy's words when there is one, or when no place was judged.
void withhold_if_worse(const audit::Rewalk& rewalk);

}  // namespace rimehaul::day
