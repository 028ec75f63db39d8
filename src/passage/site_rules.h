// Site rules that need no ground: what was said of the trail, its direction, its hours, its sight.
#pragma once

#include <optional>

#include "passage/finding.h"
#include "passage/rules.h"
#include "snow/snow.h"
#include "trails/network.h"
#include "units/clock.h"

namespace rimehaul::passage {

/// Everything that bears on safety was said of the trail, and makes sense; what was not is named.
[[nodiscard]] Finding judge_trail_attributes(const trails::Trail& trail);

/// The trail may be driven this way.
[[nodiscard]] Finding judge_direction(const trails::Trail& trail, trails::Way way);

/// When a rig is on a trail: from its nose entering to its tail leaving. Nothing: something else
/// closes the trail, so that no time comes about and the entry alone is judged.
struct Stay {
  units::Instant entry;
  std::optional<units::Seconds> lasting;
};

/// Daily hours that entering and leaving are held to, and what they are the hours of.
struct HoursRule {
  Check check;
  trails::OpenHours hours;
  std::string refused;      ///< who is open or drives: "trail Low Way is open"
  std::string_view always;  ///< constant text: how it is kept where they are the whole day
  Origin origin;
};
[[nodiscard]] Finding held_to_hours(const HoursRule& rule, Stay stay, const Rules& rules);

/// The rig enters and leaves within the trail's hours; both ends of the hours are allowed.
[[nodiscard]] Finding judge_hours(const trails::Trail& trail, Stay stay, const Rules& rules);

/// The sight that a rig may count on along a trail: the trail's own or the site's, no further than
/// one can see today, and half of it where others may come towards it on the only lane. Unknown
/// lanes or direction count as that. Visibility that nobody gave is left to its own check.
[[nodiscard]] units::Metres sight_along(const trails::Trail& trail, const Rules& rules,
                                        const snow::DayWeather& weather);

}  // namespace rimehaul::passage
