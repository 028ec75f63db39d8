// What would open a way that is blocked: another load, no trailer, other snow.
#pragma once

#include "base/watcher.h"
#include "search/route.h"

namespace rimehaul::search {

/// Fills in the causes of a refusal, and what would open every obstacle, lift every cause, and open
/// the whole way that is nearest to open, all else as it stands: loads (see loads_that_open), the
/// rig without its trailer, and every wetness on every surface with the day's weather. Where that
/// way does not open, and another is found with no load, without the trailer or in other snow, the
/// other is told too (see other_ways_of). Legs and turns are judged for the hours at
/// which they were found to block, the whole way for the departure. What a named person has
/// permitted asks for nothing. Judges each of them anew, so it takes a while.
[[nodiscard]] NoRoute explain_obstacles(NoRoute none, const passage::Judge& judge,
                                        const RouteQuestion& question,
                                        base::Watcher* watcher = nullptr);

}  // namespace rimehaul::search
