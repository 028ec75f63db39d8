// When there is no way: what stands in the one that is nearest to open.
#pragma once

#include <span>

#include "search/outlook.h"
#include "search/route.h"
#include "search/timing.h"

namespace rimehaul::search {

/// A question's answer when nothing may be driven: of all ways, driven or not, the one with the
/// fewest legs that no other load, trailer or snow opens, then the fewest closed legs and turns,
/// then the fewest legs of which somebody has only to say what the day is like, then the fewest
/// legs and turns that wait for a decision, then the least share above what is allowed, then the
/// shortest; and what blocks it, nearest to open first. The outlook must be for the departure.
[[nodiscard]] NoRoute what_blocks(const trails::Network& network, const passage::LegJudge& judge,
                                  Outlook& outlook, const RouteQuestion& question,
                                  std::span<const trails::JunctionId> stops);

/// The answer for one way of which something may not be driven at its hours: what, nearest to open
/// first.
[[nodiscard]] NoRoute what_stands_in(std::span<const TimedLeg> way, const passage::LegJudge& judge,
                                     Permission permission);

/// The answer when ways are open at the departure and close before they are reached.
[[nodiscard]] NoRoute closed_by_the_hour(const trails::Network& network,
                                         const RouteQuestion& question,
                                         const std::vector<Blocked>& blocked);

}  // namespace rimehaul::search
