// Which of the numbers in force nobody has measured, published or decided.
#pragma once

#include <string>
#include <vector>

#include "passage/check.h"
#include "passage/rules.h"

namespace rimehaul::passage {

struct EstimatesAsked {
  const Rules& rules;
  Towing towing = Towing::yes;
  std::vector<snow::SnowState> snow{};  ///< that is driven in; none: any
};

/// Words for every default or estimate in force that the site's rules do not say themselves, and
/// that bears on such a rig in such snow, for cards and audits: "reaction time 2 s".
[[nodiscard]] std::vector<std::string> estimates_in(const EstimatesAsked& asked);

}  // namespace rimehaul::passage
