#include "passage/estimates.h"

#include <algorithm>
#include <string_view>

#include "units/rounding.h"

namespace rimehaul::passage {

namespace {

using units::Round;
using units::Slope;

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
  bool towing_alone = false;  ///< bears on rigs with a trailer alone
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
       "braking with carrier and trailer at " + degrees(rules.articulation), true},
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

bool grip_is_estimated(const EstimatesAsked& asked) {
  const snow::Runners runners =
      asked.towing == Towing::yes ? snow::Runners::towed : snow::Runners::none;
  return asked.snow.empty() || !std::ranges::all_of(asked.snow, [&](const snow::SnowState& state) {
           return asked.rules.grip.all_measured(state, runners);
         });
}

}  // namespace

std::vector<std::string> estimates_in(const EstimatesAsked& asked) {
  const Rules& rules = asked.rules;
  std::vector<std::string> estimates;
  const auto said = [&rules](std::string_view key) {
    return std::ranges::find(rules.said, key) != rules.said.end();
  };
  for (const RuleWords& rule : numbers_in_words(rules)) {
    const bool counts = asked.towing == Towing::yes || !rule.towing_alone;
    if (counts && rule.value == rule.by_default && !said(rule.key)) {
      estimates.push_back(rule.words);
    }
  }
  if (rules.bulletin == default_rules().bulletin) {
    estimates.emplace_back("distances kept off steep ground at each bulletin level");
  }
  if (rules.driver_levels == default_rules().driver_levels) {
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
  if (grip_is_estimated(asked)) {
    estimates.emplace_back(
        rules.grip.measured().empty()
            ? "grip: all but dry traction on groomed snow and ice"
            : "grip, where the site has not measured it: all but dry traction on "
              "groomed snow and ice");
  }
  return estimates;
}

}  // namespace rimehaul::passage
