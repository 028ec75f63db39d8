// The rules a site starts from: cautious defaults.
#include "passage/rules.h"

#include <algorithm>

namespace rimehaul::passage {

namespace {

using units::Metres;
using units::Slope;

/// Slab avalanches start on slopes over 30 degrees: 96 % of more than 1000 cases in one national
/// record lay at 30 to 50 degrees, and wet snow is reckoned from 25 degrees on (the two pages on
/// slope angle in docs/references.md).
constexpr double kStartDryDeg = 30.0;
constexpr double kStartWetDeg = 25.0;

/// How far to keep off ground that may release, by level of the bulletin. Estimates: nearer than 20
/// to 30 m a rig may itself release the slope from below; from level 3 on from afar.
std::array<BulletinStep, 5> default_bulletin() {
  return {{{.keep_off = Metres{10}, .decision_may_permit = true, .all_closed = false},
           {.keep_off = Metres{30}, .decision_may_permit = true, .all_closed = false},
           {.keep_off = Metres{100}, .decision_may_permit = true, .all_closed = false},
           {.keep_off = Metres{300}, .decision_may_permit = false, .all_closed = false},
           {.keep_off = Metres{300}, .decision_may_permit = false, .all_closed = true}}};
}

/// By day alone, where it is short: an estimate.
constexpr trails::OpenHours kHoursOfNewDrivers{.from = {8 * 60}, .to = {16 * 60}};

std::vector<DriverLevel> default_driver_levels() {
  return {{.name = "new",
           .allowed_share = 0.5,
           .may_tow = false,
           .may_carry_passengers = false,
           .wettest_towing = snow::Wetness::dry,
           .hours = kHoursOfNewDrivers},
          {.name = "seasoned",
           .allowed_share = 0.7,
           .may_tow = true,
           .may_carry_passengers = true,
           .wettest_towing = snow::Wetness::wet}};
}

}  // namespace

Rules default_rules() {
  Rules rules;
  rules.start_slope_dry = Slope::from_degrees(kStartDryDeg);
  rules.start_slope_wet = Slope::from_degrees(kStartWetDeg);
  rules.bulletin = default_bulletin();
  rules.driver_levels = default_driver_levels();
  return rules;
}

void lower_allowed_share(Rules& rules, double share) {
  const auto lower = [share](double& allowed) {
    // Written so that what is no number closes everything.
    allowed = allowed <= share ? allowed : share;
  };
  lower(rules.allowed_share);
  for (DriverLevel& level : rules.driver_levels) {
    lower(level.allowed_share);
  }
}

std::optional<double> allowed_share_for(const Rules& rules, const std::string& driver_level) {
  const auto level = std::ranges::find(rules.driver_levels, driver_level, &DriverLevel::name);
  if (level == rules.driver_levels.end()) {
    return std::nullopt;
  }
  const auto is_share = [](double share) { return share > 0.0 && share <= 1.0; };
  if (!is_share(rules.allowed_share) || !is_share(level->allowed_share)) {
    return std::nullopt;
  }
  return std::min(rules.allowed_share, level->allowed_share);
}

}  // namespace rimehaul::passage
