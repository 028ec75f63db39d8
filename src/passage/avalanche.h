// Exposure to avalanches against the site's bulletin policy. "Not flagged" is not "safe".
#pragma once

#include <optional>

#include "hazard/exposure.h"
#include "passage/finding.h"
#include "passage/rules.h"
#include "snow/snow.h"

namespace rimehaul::passage {

/// What may not be known of it, by the words of the finding.
inline constexpr const char* kNoBulletin = "today's bulletin level, 1 to 5";
inline constexpr const char* kNoKeepOff = "distance to keep off at this bulletin level";
inline constexpr const char* kNoHeightsAround = "heights of the ground around";

/// Whether the lower start slope of wet snow counts: from moist on, on the safe side.
[[nodiscard]] bool releases_wet(snow::Wetness wetness);

/// The slope from which ground counts as able to release in that snow.
[[nodiscard]] units::Slope start_slope_for(snow::Wetness wetness, const Rules& rules);

/// One piece against the policy of the day's level. `exposure` must have been asked with
/// start_slope_for(wetness, rules). Kept when the piece is proven to keep off as far as the policy
/// says; a place steep itself, in a release area or in a runout is no distance off. Nearer: asks
/// for a decision where the policy lets one, else refused. No level, no slope, no distance: closed.
[[nodiscard]] Finding judge_avalanche(const hazard::Exposure& exposure,
                                      std::optional<int> bulletin_level, snow::Wetness wetness,
                                      const Rules& rules);

}  // namespace rimehaul::passage
