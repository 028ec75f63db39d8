// Rules about the day: wind, rain, grooming, and the rig that tows others out.
#pragma once

#include "passage/finding.h"
#include "passage/rules.h"
#include "snow/snow.h"
#include "trails/trail.h"

namespace rimehaul::passage {

/// Wind at or under the lower of the site's and the trail's most; kept when neither sets one.
[[nodiscard]] Finding judge_wind(const snow::DayWeather& weather, const trails::Trail& trail,
                                 const Rules& rules);

/// No rain, where the rules close in rain.
[[nodiscard]] Finding judge_rain(const snow::DayWeather& weather, const Rules& rules);

/// A groomed trail has set for as long as the rules ask since its last grooming; kept where they
/// ask nothing.
[[nodiscard]] Finding judge_grooming(const trails::Trail& trail, const Rules& rules,
                                     const snow::SiteStatus& status, units::Instant entry);

/// The tow-out rig stands ready today, where the rules ask for it.
[[nodiscard]] Finding judge_tow_out(const Rules& rules, const snow::SiteStatus& status);

}  // namespace rimehaul::passage
