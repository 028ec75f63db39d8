// Whether an order of a named person lets a rig go.
#pragma once

#include <string>
#include <vector>

#include "passage/site_rules.h"

namespace rimehaul::passage {

/// One finding for each order that bears on the rig, on the trail by its name or on the hours; none
/// where nothing was ordered.
[[nodiscard]] std::vector<Finding> judge_orders(const std::string& trail, const std::string& rig,
                                                Stay stay, const Rules& rules);

}  // namespace rimehaul::passage
