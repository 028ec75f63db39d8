// The site's rule on sight: how many marker spacings a driver must see.
#pragma once

#include "passage/finding.h"
#include "passage/rules.h"
#include "snow/snow.h"
#include "trails/trail.h"

namespace rimehaul::passage {

/// Kept when the visibility reaches over so many marker spacings as the rules ask, or when they ask
/// for none (0). Visibility or spacing unknown: closed.
[[nodiscard]] Finding judge_visibility(const snow::DayWeather& weather, const trails::Trail& trail,
                                       const Rules& rules);

}  // namespace rimehaul::passage
