// People and help: who rides, who is alone, when a rig is overdue, who tows it out.
#pragma once

#include <string>
#include <vector>

#include "card/route_card.h"

namespace rimehaul::card {

/// Who rides on this route and how, and whether the driver goes alone.
[[nodiscard]] std::vector<std::string> people_lines(const CardContext& context);

/// When the rig counts as overdue, and what the tow-out rig can do on this route: legs that it may
/// not drive itself, in the same snow and without a load, are named.
[[nodiscard]] std::vector<std::string> help_lines(const search::Route& route,
                                                  const CardContext& context);

}  // namespace rimehaul::card
