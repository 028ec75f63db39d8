// Rules about people: who drives, who rides, and who may be alone.
#pragma once

#include "passage/finding.h"
#include "passage/mark_rules.h"
#include "passage/rules.h"
#include "passage/site_rules.h"
#include "rig/rig.h"
#include "snow/snow.h"

namespace rimehaul::passage {

/// The driver's level is in the rules, and may tow when there is something to tow.
[[nodiscard]] Finding judge_driver_level(const rig::Rig& rig, const Rules& rules);

/// The rig enters and leaves a leg within the hours in which the driver's level drives.
[[nodiscard]] Finding judge_driver_hours(const rig::Rig& rig, Stay stay, const Rules& rules);

/// Snow no wetter than the rules and the driver's level allow with a trailer. Only with one.
[[nodiscard]] Finding judge_towing_in_wet_snow(const rig::Rig& rig, const Rules& rules,
                                               snow::SnowState state);

/// With passengers: the driver's level may carry them, and a trailer is no hindrance. Without,
/// kept.
[[nodiscard]] Finding judge_passengers(const rig::Rig& rig, const Rules& rules);
/// With passengers: snow no wetter than the rules allow.
[[nodiscard]] Finding judge_passengers_in_snow(const rig::Rig& rig, const Rules& rules,
                                               snow::SnowState state);

/// A rig that nobody accompanies is driven where the rules allow it at all, and through no stretch
/// without radio that is longer than they say. A dead zone marked as a point has no known length.
[[nodiscard]] Finding judge_alone(const rig::Rig& rig, const Rules& rules,
                                  const std::vector<MarkOnStretch>& marks);

}  // namespace rimehaul::passage
