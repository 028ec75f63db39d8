// The rules a site starts from: cautious defaults, and which of them are no more than estimates.
#include "passage/rules.h"

#include <algorithm>

#include "units/rounding.h"

namespace rimehaul::passage {

namespace {

using units::Metres;
using units::Round;
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

std::vector<DriverLevel> default_driver_levels() {
  return {{.name = "new",
           .allowed_share = 0.5,
           .may_tow = false,
           .may_carry_passengers = false,
           .wettest_towing = snow::Wetness::dry},
          {.name = "seasoned",
           .allowed_share = 0.7,
           .may_tow = true,
           .may_carry_passengers = true,
           .wettest_towing = snow::Wetness::wet}};
}

std::string whole(double value) {
  return units::text_of(value, 0, Round::nearest);
}

std::string in_tenths(double value) {
  return units::text_of(value, 1, Round::nearest);
}

std::string in_hundredths(double value) {
  return units::text_of(value, 2, Round::nearest);
}

/// A rule in words, and the key under which a site says it.
struct RuleWords {
  std::string_view key;
  double value;
  double by_default;
  std::string words;
};

std::vector<RuleWords> numbers_in_words(const Rules& rules) {
  const Rules defaults = default_rules();
  const auto degrees = [](Slope slope) { return units::text_of(slope, Round::nearest); };
  return {
      {"allowed_share", rules.allowed_share, defaults.allowed_share,
       "allowed share " + in_hundredths(rules.allowed_share) + " of each limit"},
      {"roll_over_reserve", rules.roll_over_reserve, defaults.roll_over_reserve,
       "roll-over reserve: " + in_hundredths(rules.roll_over_reserve) + " of the static tip angle"},
      {"low_side_sinkage_m", rules.low_side_sinkage.value(), defaults.low_side_sinkage.value(),
       "low side sinks " + in_hundredths(rules.low_side_sinkage.value()) + " m deeper"},
      {"articulation_deg", rules.articulation.ratio(), defaults.articulation.ratio(),
       "braking with carrier and trailer at " + degrees(rules.articulation)},
      {"reaction_s", rules.reaction.value(), defaults.reaction.value(),
       "reaction time " + in_tenths(rules.reaction.value()) + " s"},
      {"sight_m", rules.sight.value(), defaults.sight.value(),
       "sight " + whole(rules.sight.value()) + " m where a trail says nothing else"},
      {"setback_m", rules.setback.value(), defaults.setback.value(),
       "setback " + in_tenths(rules.setback.value()) + " m from drops"},
      {"cornice_setback_m", rules.cornice_setback.value(), defaults.cornice_setback.value(),
       "setback " + in_tenths(rules.cornice_setback.value()) + " m from cornices"},
      {"strap_check_m", rules.strap_check.value(), defaults.strap_check.value(),
       "straps looked at again after " + whole(rules.strap_check.value()) + " m"},
      {"overdue_min", rules.overdue.value(), defaults.overdue.value(),
       "a rig is looked for " + whole(rules.overdue.value() / 60.0) + " min after its time"},
      {"markers_in_sight", rules.markers_in_sight, defaults.markers_in_sight,
       "visibility of " + in_tenths(rules.markers_in_sight) + " marker spacings"},
      {"passenger_kg", rules.passenger_mass.value(), defaults.passenger_mass.value(),
       "passenger with gear " + whole(rules.passenger_mass.value()) + " kg"},
      {"fuel_reserve", rules.fuel_reserve, defaults.fuel_reserve,
       "fuel reserve " + whole(rules.fuel_reserve * 100.0) + " % of the tank"},
      {"start_slope_wet_deg", rules.start_slope_wet.ratio(), defaults.start_slope_wet.ratio(),
       "moist or wetter snow may release from " + degrees(rules.start_slope_wet) + " on"},
  };
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

std::vector<std::string> estimates_in(const Rules& rules) {
  std::vector<std::string> estimates;
  const auto said = [&rules](std::string_view key) {
    return std::ranges::find(rules.said, key) != rules.said.end();
  };
  for (const RuleWords& rule : numbers_in_words(rules)) {
    if (rule.value == rule.by_default && !said(rule.key)) {
      estimates.push_back(rule.words);
    }
  }
  if (rules.bulletin == default_bulletin()) {
    estimates.emplace_back("distances kept off steep ground at each bulletin level");
  }
  if (rules.driver_levels == default_driver_levels()) {
    estimates.emplace_back("what a new and a seasoned driver may do");
  }
  if (rules.passengers.wettest == snow::Wetness::wet && !said("passengers.wettest")) {
    estimates.emplace_back("no passengers in snow wetter than wet");
  }
  if (rules.wettest_creek_bridge == snow::Wetness::dry && !said("wettest_creek_bridge")) {
    estimates.emplace_back("snow bridges over creeks carry in dry snow only");
  }
  estimates.emplace_back("bends ask at most 0.1 of the weight sideways");
  estimates.emplace_back("3 cm of new snow make a groomed surface a fresh one");
  estimates.emplace_back(rules.grip.measured().empty()
                             ? "grip: all but dry traction on groomed snow and ice"
                             : "grip, where the site has not measured it: all but dry traction on "
                               "groomed snow and ice");
  return estimates;
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
