#include "card/triggers.h"

#include <algorithm>
#include <cstdint>

#include "card/figures.h"
#include "card/words.h"

namespace rimehaul::card {

namespace {

const trails::Trail& trail_of(const trails::Network& network, const search::RouteLeg& part) {
  return network.trails[network.legs[static_cast<std::uint32_t>(part.leg)].trail];
}

/// The trail of the route whose hours end first.
const trails::Trail* first_to_close(const search::Route& route, const trails::Network& network) {
  const trails::Trail* first = nullptr;
  for (const search::RouteLeg& part : route.legs) {
    const trails::Trail& trail = trail_of(network, part);
    const bool closes = trail.hours && trail.hours->to < units::TimeOfDay{1440};
    if (closes && (first == nullptr || trail.hours->to < first->hours->to)) {
      first = &trail;
    }
  }
  return first;
}

/// Marks on the way that were told clear only until some time.
void add_statuses_that_run_out(const search::Route& route, const CardContext& context,
                               std::vector<std::string>& triggers) {
  const trails::Network& network = context.scene.network;
  for (const snow::MarkStatus& said : context.snow.weather().site.marks) {
    const auto mark = std::ranges::find(network.marks, said.mark, &trails::Mark::name);
    // What ends with the report is said of the report.
    if (!said.until || said.until == context.snow_valid_until || mark == network.marks.end()) {
      continue;
    }
    const bool on_the_way = std::ranges::any_of(route.legs, [&](const search::RouteLeg& part) {
      return span_on_leg(*mark, network, network.legs[static_cast<std::uint32_t>(part.leg)])
          .has_value();
    });
    if (on_the_way) {
      triggers.push_back(words::status_runs_out(
          {said.mark, local_text(*said.until, context.scene.rules.utc_offset_minutes)}));
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
  } else if (!(route.fuel * 2.0 + reserve <= aboard)) {
    warnings.push_back(words::no_fuel_to_return(route.fuel * 2.0 + reserve));
  }
  return warnings;
}

std::vector<std::string> turn_back_triggers(const search::Route& route,
                                            const CardContext& context) {
  const passage::Scene& scene = context.scene;
  std::vector<std::string> triggers{words::visibility_below(least_visibility(route, context)),
                                    words::snow_worse_than(snow_on(route))};
  if (scene.rules.most_wind) {
    triggers.push_back(words::wind_over(*scene.rules.most_wind));
  }
  if (scene.rules.closed_in_rain) {
    triggers.push_back(words::it_rains());
  }
  add_statuses_that_run_out(route, context, triggers);
  if (const trails::Trail* trail = first_to_close(route, scene.network)) {
    triggers.push_back(words::late_on_trail(trail->name, trail->hours->to));
  }
  if (context.snow_valid_until) {
    triggers.push_back(words::snow_report_runs_out(
        local_text(*context.snow_valid_until, scene.rules.utc_offset_minutes)));
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
