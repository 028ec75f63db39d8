// Where on a route to stop and look at the straps again.
#pragma once

#include <vector>

#include "card/route_card.h"

namespace rimehaul::card {

/// Puts the stop at which the straps are looked at again on its leg. Only with a load or a trailer.
///
/// The stop is the first place, from a fifth of the rules' distance on and no farther than it (on a
/// short route, than half-way), where a rig may stand as far as anybody knows: a rig's length and
/// 10 m to both sides lie on one leg, off all marks but those made for stopping, not exposed to
/// avalanches (`exposed` on each leg is asked), in no bend under 40 m, on ground proven to be no
/// steeper than 8 % either way; and another rig can pass, unless the trail is one-way. Where there
/// is no such place the first leg says so.
void add_strap_stop(const search::Route& route, const CardContext& context,
                    std::vector<CardLeg>& legs);

}  // namespace rimehaul::card
