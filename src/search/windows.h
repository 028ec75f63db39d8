// Windows of departure: the hours at which a way can be set out on, no leg of it driven twice.
#pragma once

#include "search/departures.h"

namespace rimehaul::search {

/// The hours of setting out from a start from which some way of different legs (in each stage of
/// the journey) holds to the goal, every leg open from the nose entering until the tail has left. A
/// way is found for an hour, and all hours of that way are taken; then one for an hour that is
/// left, until none is. Where no way is found within a bound of tries, a minute is left out: what
/// is told is true, and what is left out would have to pass the time by driving round, but for
/// networks that hold very many dead ends.
[[nodiscard]] units::TimeSpans windows_from(const Departures& departures, Node start);

}  // namespace rimehaul::search
