#include "passage/rule_changes.h"

#include <algorithm>
#include <array>
#include <limits>

namespace rimehaul::passage {

namespace {

/// Where a rule is not set, nothing is asked: as loose as can be.
constexpr double kNoLimit = std::numeric_limits<double>::infinity();

double as_number(snow::Wetness wetness) {
  return static_cast<double>(wetness);
}

/// A rule as one number: the larger, the looser.
struct OpenRule {
  std::string_view key;
  double (*looseness)(const Rules& rules);
};

constexpr std::array<OpenRule, 15> kOpenRules{{
    {"alone.allowed", [](const Rules& rules) { return rules.alone.allowed ? 1.0 : 0.0; }},
    {"alone.longest_dead_zone_m",
     [](const Rules& rules) { return rules.alone.longest_dead_zone.value(); }},
    {"closed_in_rain", [](const Rules& rules) { return rules.closed_in_rain ? 0.0 : 1.0; }},
    {"cornice_setback_m", [](const Rules& rules) { return -rules.cornice_setback.value(); }},
    {"fuel_reserve", [](const Rules& rules) { return -rules.fuel_reserve; }},
    {"grooming_set_min",
     [](const Rules& rules) {
       return rules.grooming_set ? -rules.grooming_set->value() : kNoLimit;
     }},
    {"markers_in_sight", [](const Rules& rules) { return -rules.markers_in_sight; }},
    {"most_wind_kmh",
     [](const Rules& rules) { return rules.most_wind ? rules.most_wind->value() : kNoLimit; }},
    {"passengers.wettest", [](const Rules& rules) { return as_number(rules.passengers.wettest); }},
    {"passengers.with_trailer",
     [](const Rules& rules) { return rules.passengers.with_trailer ? 1.0 : 0.0; }},
    {"setback_m", [](const Rules& rules) { return -rules.setback.value(); }},
    {"single_lane_m",
     [](const Rules& rules) {
       return rules.longest_single_lane ? rules.longest_single_lane->value() : kNoLimit;
     }},
    {"tow_out.must_be_ready",
     [](const Rules& rules) { return rules.tow_out.must_be_ready ? 0.0 : 1.0; }},
    {"wettest_creek_bridge",
     [](const Rules& rules) { return as_number(rules.wettest_creek_bridge); }},
    {"wettest_towing", [](const Rules& rules) { return as_number(rules.wettest_towing); }},
}};

}  // namespace

// Before and after, as time goes.
// NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
std::optional<Leaning> leaning_of(std::string_view key, const Rules& before, const Rules& after) {
  const auto* rule = std::ranges::find(kOpenRules, key, &OpenRule::key);
  if (rule == kOpenRules.end()) {
    return std::nullopt;
  }
  const double was = rule->looseness(before);
  const double is = rule->looseness(after);
  if (is == was) {
    return Leaning::same;
  }
  return is < was ? Leaning::tighter : Leaning::looser;
}

std::vector<std::string_view> keys_open_to_orders() {
  std::vector<std::string_view> keys;
  keys.reserve(kOpenRules.size());
  for (const OpenRule& rule : kOpenRules) {
    keys.push_back(rule.key);
  }
  return keys;
}

}  // namespace rimehaul::passage
