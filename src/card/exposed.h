// Where on a route a rig stands exposed to avalanches, by a decision that permits it.
#pragma once

#include <vector>

#include "card/route_card.h"

namespace rimehaul::card {

/// By leg, along it, in order and merged: where no part of the rig may stop, because the leg is
/// driven there by a decision on avalanches. A rig's length is added before and behind, also where
/// that reaches into the next leg; ends are widened to whole metres.
[[nodiscard]] std::vector<std::vector<geo::Span>> exposed_spans(const search::Route& route,
                                                                const rig::Rig& rig);

/// How much of a leg they cover together.
[[nodiscard]] units::Metres metres_of(const std::vector<geo::Span>& spans);

}  // namespace rimehaul::card
