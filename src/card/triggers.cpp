#include "card/triggers.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <optional>
#include <string_view>

#include "card/figures.h"
#include "card/snow_runs.h"
#include "card/words.h"
#include "day/fuel.h"
#include "passage/mark_rules.h"
#include "units/rounding.h"

namespace rimehaul::card {

namespace {

const trails::Trail& trail_of(const trails::Network& network, const search::RouteLeg& part) {
  return network.trails[network.legs[static_cast<std::uint32_t>(part.leg)].trail];
}

/// The least wind that closes any trail of the route, by the site's rule or the trail's own.
std::optional<units::MetresPerSecond> least_closing_wind(const search::Route& route,
                                                         const CardContext& context) {
  std::optional<units::MetresPerSecond> least = context.scene.rules.most_wind;
  for (const search::RouteLeg& part : route.legs) {
    const std::optional<units::MetresPerSecond> own =
        trail_of(context.scene.network, part).most_wind;
    if (own && (!least || *own < *least)) {
      least = own;
    }
  }
  return least;
}

/// When a trail closes on the day it is entered; nothing where it never does.
std::optional<units::Instant> closing_of(const trails::Trail& trail, units::Instant entry,
                                         const units::LocalClock& local_clock) {
  const bool always = trail.hours && trail.hours->from == units::TimeOfDay{0} &&
                      trail.hours->to == units::TimeOfDay{1440};
  if (!trail.hours || always) {
    return std::nullopt;
  }
  const int minutes_left = trail.hours->to.minutes - local_clock.time_of_day(entry).minutes;
  return units::Instant{entry.seconds - entry.seconds % 60 + std::int64_t{60} * minutes_left};
}

/// When to be off which trail, in driving order. Whoever is off a trail in time was off those
/// before it, so only what closes before all that follow is told.
void add_closing_hours(const search::Route& route, const CardContext& context,
                       std::vector<std::string>& triggers) {
  std::optional<units::Instant> earliest;
  std::vector<std::string> last_first;
  for (auto part = route.legs.rbegin(); part != route.legs.rend(); ++part) {
    const trails::Trail& trail = trail_of(context.scene.network, *part);
    const auto closes = closing_of(trail, part->entry, context.scene.rules.local_clock);
    if (closes && (!earliest || *closes < *earliest)) {
      earliest = closes;
      last_first.push_back(words::late_on_trail(trail.name, trail.hours->to));
    }
  }
  triggers.insert(triggers.end(), last_first.rbegin(), last_first.rend());
}

void add_end_of_driver_hours(const CardContext& context, std::vector<std::string>& triggers) {
  const auto& levels = context.scene.rules.driver_levels;
  const auto level =
      std::ranges::find(levels, context.rig.driver_level, &passage::DriverLevel::name);
  if (level != levels.end() && level->hours && level->hours->to != units::TimeOfDay{1440}) {
    triggers.push_back(words::late_for_driver(level->name, level->hours->to));
  }
}

/// The driest class and the least slippery surface of all.
snow::SnowState best_of(const std::vector<snow::SnowState>& states) {
  snow::SnowState best = states.front();
  for (const snow::SnowState& state : states) {
    best.wetness = std::min(best.wetness, state.wetness);
    best.surface = std::min(best.surface, state.surface);
  }
  return best;
}

/// A part of a leg, and the snow that is told for it.
struct ToldPart {
  units::Metres to;
  snow::SnowState state;
};

// As the names read. NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
bool allows_worse(const snow::SnowState& state, const snow::SnowState& than) {
  return state.wetness > than.wetness || state.surface > than.surface;
}

/// Where a part has several states the best of them is told for it.
std::vector<ToldPart> parts_of(const passage::LegJudgement& leg) {
  std::vector<ToldPart> parts;
  for (const SnowRun& run : snow_runs_of(leg)) {
    const snow::SnowState state = best_of(run.states);
    if (parts.empty() || parts.back().state != state) {
      parts.push_back({run.span.to, state});
    }
    parts.back().to = run.span.to;
  }
  return parts;
}

/// The parts of a leg that were judged in different snow. The metre in which one ends counts to
/// that of both which allows less.
void add_parts(int number, const std::vector<ToldPart>& parts,
               std::vector<words::LegsInSnow>& groups) {
  const auto metres = [](double length) {
    return units::text_of(length, 0, units::Round::nearest) + " m";
  };
  double from_m = 0.0;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const bool is_last = i + 1 == parts.size();
    const double end_m = parts[i].to.value();
    const bool later = !is_last && allows_worse(parts[i + 1].state, parts[i].state);
    const double to_m = later ? std::ceil(end_m) : std::floor(end_m);
    groups.push_back({{parts[i].state},
                      {number},
                      " from " + metres(from_m) + (is_last ? " on" : " to " + metres(to_m))});
    from_m = to_m;
  }
}

/// Legs by the snow that they were judged in, those of the first leg first. A leg with several is
/// told part by part, or where they change often by the best of them.
std::vector<words::LegsInSnow> legs_by_snow(const search::Route& route) {
  constexpr std::size_t kMostParts = 4;
  std::vector<words::LegsInSnow> groups;
  int number = 0;
  for (const search::RouteLeg& part : route.legs) {
    ++number;
    if (part.judgement.snow.size() > 1) {
      const std::vector<ToldPart> parts = parts_of(part.judgement);
      if (!parts.empty() && parts.size() <= kMostParts) {
        add_parts(number, parts, groups);
      } else {
        groups.push_back({{best_of(part.judgement.snow)}, {number}});
      }
      continue;
    }
    auto group = std::ranges::find_if(groups, [&](const words::LegsInSnow& known) {
      return known.part.empty() && known.judged == part.judgement.snow;
    });
    if (group == groups.end()) {
      groups.push_back({part.judgement.snow, {}});
      group = groups.end() - 1;
    }
    group->legs.push_back(number);
  }
  return groups;
}

/// Whether the judge asks of a mark of that name on some leg of the route.
bool is_asked_of(std::string_view mark, const search::Route& route,
                 const trails::Network& network) {
  return std::ranges::any_of(route.legs, [&](const search::RouteLeg& part) {
    const trails::Leg& leg = network.legs[static_cast<std::uint32_t>(part.leg)];
    return std::ranges::any_of(
        passage::marks_on(network, {leg.trail, leg.span, leg.way, leg.line}),
        [&](const passage::MarkOnStretch& placed) { return placed.mark->name == mark; });
  });
}

/// Marks on the way that were told clear only until some time.
void add_statuses_that_run_out(const search::Route& route, const CardContext& context,
                               std::vector<std::string>& triggers) {
  for (const snow::MarkStatus& said : context.snow.weather().site.marks) {
    // What ends with the report is said of the report.
    const bool ends = said.until && said.until != context.snow_valid_until;
    if (ends && is_asked_of(said.mark, route, context.scene.network)) {
      triggers.push_back(words::status_runs_out(
          {said.mark, local_text(*said.until, context.scene.rules.local_clock)}));
    }
  }
}

}  // namespace

units::Metres least_visibility(const search::Route& route, const CardContext& context) {
  const passage::Rules& rules = context.scene.rules;
  const auto seen = context.snow.weather().visibility;
  units::Metres least{0};
  for (const search::RouteLeg& part : route.legs) {
    const trails::Trail& trail = trail_of(context.scene.network, part);
    least = std::max(least, trail.least_visibility.value_or(units::Metres{0}));
    if (trail.marker_spacing) {
      least = std::max(least, *trail.marker_spacing * rules.markers_in_sight);
    }
    const units::Metres sight = trail.sight.value_or(rules.sight);
    least = std::max(least, seen ? std::min(sight, *seen) : sight);
  }
  return least;
}

std::vector<snow::SnowState> snow_on(const search::Route& route) {
  std::vector<snow::SnowState> states;
  for (const search::RouteLeg& part : route.legs) {
    states.insert(states.end(), part.judgement.snow.begin(), part.judgement.snow.end());
  }
  std::ranges::sort(states);
  states.erase(std::unique(states.begin(), states.end()), states.end());
  return states;
}

units::Litres fuel_reserve(const CardContext& context) {
  return context.rig.carrier.tank * context.scene.rules.fuel_reserve;
}

std::vector<std::string> fuel_warnings(const search::Route& route, const CardContext& context) {
  const units::Litres reserve = fuel_reserve(context);
  const units::Litres aboard = context.rig.load.fuel;
  std::vector<std::string> warnings;
  if (!(route.fuel + reserve <= aboard)) {
    warnings.push_back(words::fuel_short({aboard, route.fuel + reserve}));
  } else if (!context.fuel_back) {
    warnings.push_back(words::no_way_back());
  } else if (!(route.fuel + *context.fuel_back + reserve <= aboard)) {
    warnings.push_back(
        words::no_fuel_to_return(route.fuel + *context.fuel_back + reserve,
                                 day::fuel_stations_on(route, context.scene.network)));
  }
  return warnings;
}

std::vector<std::string> turn_back_triggers(const search::Route& route,
                                            const CardContext& context) {
  const passage::Scene& scene = context.scene;
  std::vector<std::string> triggers{words::visibility_below(least_visibility(route, context)),
                                    words::snow_worse_than(legs_by_snow(route))};
  if (const auto wind = least_closing_wind(route, context)) {
    triggers.push_back(words::wind_over(*wind));
  }
  if (scene.rules.closed_in_rain) {
    triggers.push_back(words::it_rains());
  }
  add_statuses_that_run_out(route, context, triggers);
  add_closing_hours(route, context, triggers);
  add_end_of_driver_hours(context, triggers);
  if (context.snow_valid_until) {
    triggers.push_back(words::snow_report_runs_out(
        local_text(*context.snow_valid_until, scene.rules.local_clock)));
  } else {
    triggers.push_back(words::overdue_past(
        local_text(units::after(context.question.depart, route.time + scene.rules.overdue),
                   scene.rules.local_clock)));
  }
  const units::Litres reserve = fuel_reserve(context);
  triggers.push_back(words::fuel_below({route.fuel + reserve, reserve}));
  if (const auto level = context.snow.weather().bulletin_level) {
    triggers.push_back(words::bulletin_above(*level));
  }
  for (std::string& always : words::always_turn_back()) {
    triggers.push_back(std::move(always));
  }
  return triggers;
}

}  // namespace rimehaul::card
