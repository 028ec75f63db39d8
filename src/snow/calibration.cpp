#include "snow/calibration.h"

#include <algorithm>

namespace rimehaul::snow {

namespace {

/// The hour of a day's forecast in which something was seen; nothing where the model is blind.
std::optional<SoftHour> foretold(const ForecastSnow& snow, const SeenWetness& seen) {
  const std::vector<SoftHour> hours = snow.hours_at(seen.where);
  const auto hour = hour_holding(hours, seen.where.when);
  return hour && hours[*hour].state ? std::optional{hours[*hour]} : std::nullopt;
}

SofteningSite with(SofteningSite site, double melt, units::Seconds off) {
  site.melt = melt;
  site.off = off;
  return site;
}

/// How many of what was seen a factor foretells, and how much it speaks of.
Calibration tried(const std::vector<SeenDay>& days, const SofteningSite& site) {
  Calibration found{.melt = site.melt};
  for (const SeenDay& day : days) {
    const ForecastSnow snow{day.report, site};
    const int before = found.seen;
    for (const SeenWetness& seen : day.seen) {
      if (const auto hour = foretold(snow, seen)) {
        ++found.seen;
        found.met += class_of(hour->water) == seen.wetness ? 1 : 0;
      }
    }
    found.days += found.seen > before ? 1 : 0;
  }
  return found;
}

bool is_enough(const std::vector<SeenDay>& days, const Calibration& found) {
  int wet = 0;
  for (const SeenDay& day : days) {
    wet += static_cast<int>(std::ranges::count_if(
        day.seen, [](const SeenWetness& seen) { return seen.wetness > Wetness::dry; }));
  }
  return found.seen >= kFewestSeen && found.days >= kFewestDays && wet >= kFewestWet;
}

/// Whether nothing was wetter than a rig would have been judged by.
bool holds_all(const std::vector<SeenDay>& days, const SofteningSite& site) {
  return std::ranges::all_of(days, [&](const SeenDay& day) {
    const ForecastSnow snow{day.report, site};
    return std::ranges::all_of(day.seen, [&](const SeenWetness& seen) {
      const auto judged = snow.at(seen.where);
      return !judged || judged->wetness >= seen.wetness;
    });
  });
}

}  // namespace

std::optional<Calibration> calibrated(const std::vector<SeenDay>& days, const SofteningSite& site) {
  constexpr double kFactorStep = 1.05;
  constexpr int kMostHoursOff = 6;
  Calibration best;
  double melt = kLeastMelt;
  while (melt <= kGreatestMelt) {
    const Calibration found = tried(days, with(site, melt, kHoursOff));
    best = found.met >= best.met ? found : best;
    melt *= kFactorStep;
  }
  if (!is_enough(days, best)) {
    return std::nullopt;
  }
  for (int hours = 2; hours <= kMostHoursOff; ++hours) {
    best.off = units::Seconds{static_cast<double>(hours * kSecondsInHour)};
    if (holds_all(days, with(site, best.melt, best.off))) {
      return best;
    }
  }
  return std::nullopt;
}

}  // namespace rimehaul::snow
