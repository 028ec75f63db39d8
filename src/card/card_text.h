// The route card as text for a terminal or a plain printer.
#pragma once

#include <string>

#include "card/layout.h"
#include "card/route_card.h"

namespace rimehaul::card {

/// The whole card, no line longer than `columns` (60 or more): driving in front; checks, parking
/// and what it was made from behind. Nothing is left out, long names go on below. Demands are
/// rounded up, capacities down. The same card gives the same bytes.
[[nodiscard]] std::string text_of(const RouteCard& card, int columns);

}  // namespace rimehaul::card
