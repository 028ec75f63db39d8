// What a site's own record of wetness says of the melt that is reckoned with.
#pragma once

#include <optional>
#include <vector>

#include "snow/forecast_snow.h"

namespace rimehaul::snow {

/// The class that somebody found at a place and hour.
struct SeenWetness {
  PlaceAndHour where;
  Wetness wetness = Wetness::dry;
};

/// A day with its report and forecast, and what was seen later that day.
struct SeenDay {
  SnowReport report;
  std::vector<SeenWetness> seen;
};

// So much must have been seen before anything is made of it: estimates.
inline constexpr int kFewestSeen = 20;  ///< in hours that the model knows
inline constexpr int kFewestWet = 5;    ///< of these, moist or wetter
inline constexpr int kFewestDays = 5;

/// Factors are tried in steps of 5 % from a quarter to one and a half.
inline constexpr double kLeastMelt = 0.25;
inline constexpr double kGreatestMelt = 1.5;

struct Calibration {
  double melt = 1.0;               ///< factor on kMostMelt
  units::Seconds off = kHoursOff;  ///< never under two hours
  int seen = 0;
  int days = 0;
  int met = 0;  ///< of those seen, in the class that the factor foretells for their hour
};

/// A class is an interval of water, so each observation holds for an interval of factors. The
/// factor in most of them is taken, of several the greatest; then the fewest whole hours from two
/// to six so that nothing was wetter than judged. Nothing where too little was seen, or where not
/// even six hours hold it all: then the site stays uncalibrated.
[[nodiscard]] std::optional<Calibration> calibrated(const std::vector<SeenDay>& days,
                                                    const SofteningSite& site);

}  // namespace rimehaul::snow
