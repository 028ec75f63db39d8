// Ways beside the one that is nearest to open: found when another load, trailer or snow is tried.
#pragma once

#include <vector>

#include "search/inquiry.h"
#include "search/route.h"

namespace rimehaul::search {

/// Of a refusal whose obstacles and openings are told: what the rig finds without any load where no
/// load opens the way that is nearest to open; without its trailer where leaving that does not; and
/// in other snow where neither that way nor one of these opens in any. Snow tried is every wetness
/// from dry on, on the surface where the rig would leave and then on groomed snow, until a way is
/// found; where nothing at all opens, without the trailer too. A way that asks for a decision comes
/// after those that ask for none, and says so. None where every way is barred, or where decisions
/// alone are wanting and no other load or trailer finds another way.
[[nodiscard]] std::vector<OtherWay> other_ways_of(const NoRoute& none, Inquiry& inquiry,
                                                  const passage::Judge& judge,
                                                  const RouteQuestion& question);

}  // namespace rimehaul::search
