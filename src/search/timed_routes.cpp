#include "search/timed_routes.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "base/require.h"
#include "search/differing_ways.h"
#include "search/stops.h"
#include "search/windows.h"

namespace rimehaul::search {

using trails::LegId;
using units::Instant;
using units::Period;

namespace {

/// When the tail of a rig has left the last leg.
Instant left_at(const Route& route) {
  const RouteLeg& last = route.legs.back();
  const units::Seconds staying = last.judgement.hours.staying.value_or(last.judgement.time);
  return units::after(last.entry, staying);
}

DrivenWay way_of(const Route& route) {
  DrivenWay way;
  for (const RouteLeg& leg : route.legs) {
    way.legs.push_back(leg.leg);
  }
  return way;
}

/// The best way, and after it those of the others that truly differ.
std::vector<Route> best_of_all(const trails::Network& network, Route best,
                               std::vector<Route> others, std::size_t most_others) {
  std::vector<DrivenWay> told{way_of(best)};
  std::vector<Route> routes{std::move(best)};
  for (Route& other : others) {
    const DrivenWay way = way_of(other);
    if (routes.size() <= most_others && truly_differs(network, way, told)) {
      told.push_back(way);
      routes.push_back(std::move(other));
    }
  }
  return routes;
}

}  // namespace

bool something_turns(const trails::Network& network, const passage::LegJudge& judge,
                     Period during) {
  for (std::uint32_t leg = 0; leg < network.legs.size(); ++leg) {
    if (!judge.turning_moments(LegId{leg}, during).empty()) {
      return true;
    }
  }
  return false;
}

TimedWays::TimedWays(const trails::Network& network, LegHours& hours,
                     std::span<const trails::JunctionId> stops)
    : turns_{turns_of(network)},
      legs_{make_leg_graph(network, stops, turns_)},
      ends_at_station_{legs_to_stations(network)},
      hours_{&hours} {}

TimedWays::TimedWays(const trails::Network& network, LegHours& hours, const FixedWay& way)
    : legs_{make_leg_graph(way.legs)}, hours_{&hours} {
  const std::vector<bool> to_stations = legs_to_stations(network);
  for (std::size_t i = 0; i < way.legs.size(); ++i) {
    ends_at_station_.push_back(to_stations[static_cast<std::size_t>(way.legs[i])]);
    if (i > 0) {
      turns_.push_back({.from = way.legs[i - 1], .to = way.legs[i]});
    }
  }
}

units::TimeSpans TimedWays::windows(const Trip& trip) {
  StepHours steps{{legs_, turns_, ends_at_station_}, *hours_, trip.permission};
  const Departures departures{steps, trip.arrivals_allowed};
  return windows_from(departures, legs_.starts.front());
}

std::optional<Route> TimedWays::best(const Trip& trip, Instant depart, Preference prefer) {
  StepHours steps{{legs_, turns_, ends_at_station_}, *hours_, trip.permission};
  const Departures departures{steps, trip.arrivals_allowed};
  const std::vector<TimedLeg> legs =
      TimedSearch{departures}.best(legs_.starts.front(), depart, prefer);
  if (legs.empty()) {
    return std::nullopt;
  }
  auto driven = Timekeeper{hours_->judge(), depart}.drive_at_hours(legs, trip.permission);
  base::require(std::holds_alternative<Route>(driven),
                "a way found through the hours is closed at its hours");
  return std::get<Route>(std::move(driven));
}

namespace {

bool arrives_in_time(const Route& route, const RouteQuestion& question) {
  return !question.arrive_by || units::after(question.depart, route.time) <= *question.arrive_by;
}

/// Whether what was found for the departure is the answer through the hours too: nothing turns
/// before its best way is left, or, where there is none, at all.
bool is_settled(const trails::Network& network, const LegHours& hours,
                const RouteQuestion& question, const std::vector<Route>& routes) {
  const bool holds = !routes.empty() && std::ranges::all_of(routes, [&](const Route& route) {
    return arrives_in_time(route, question);
  });
  const Instant until = holds ? left_at(routes.front()) : hours.horizon().to;
  return (holds || !question.arrive_by) &&
         !something_turns(network, hours.judge(), {question.depart, until});
}

/// The best way through the hours; with a named person's decisions only where nothing is open
/// without them, at the departure either.
std::optional<Route> best_through(TimedWays& ways, const LegHours& hours,
                                  const RouteQuestion& question, const std::vector<Route>& routes) {
  const Instant arrive_by = question.arrive_by.value_or(hours.horizon().to);
  TimedWays::Trip trip{.permission = Permission::nobody,
                       .arrivals_allowed = units::TimeSpans{{{question.depart, arrive_by}}}};
  std::optional<Route> best = ways.best(trip, question.depart, question.prefer);
  const bool open_at_departure = !routes.empty() && !routes.front().needs_permission;
  if (!best.has_value() && !open_at_departure) {
    trip.permission = permission_of(question);
    best = ways.best(trip, question.depart, question.prefer);
  }
  return best;
}

}  // namespace

std::vector<Route> open_routes_through(const trails::Network& network, LegHours& hours,
                                       const RouteQuestion& question) {
  base::require(hours.horizon().from <= question.depart,
                "the hours of a question begin after its departure");
  std::vector<Route> routes = open_routes(network, hours.judge(), question);
  const auto stops = stops_of(network, question);
  if (!std::holds_alternative<std::vector<trails::JunctionId>>(stops) ||
      is_settled(network, hours, question, routes)) {
    return routes;
  }
  TimedWays ways{network, hours, std::get<std::vector<trails::JunctionId>>(stops)};
  std::optional<Route> best = best_through(ways, hours, question, routes);
  std::erase_if(routes, [&](const Route& route) { return !arrives_in_time(route, question); });
  if (best.has_value()) {
    return best_of_all(network, std::move(*best), std::move(routes), question.most_alternatives);
  }
  return routes;
}

RouteAnswer find_routes_through(const trails::Network& network, LegHours& hours,
                                const RouteQuestion& question) {
  std::vector<Route> routes = open_routes_through(network, hours, question);
  if (!routes.empty()) {
    return routes;
  }
  RouteAnswer at_departure = find_routes(network, hours.judge(), question);
  if (std::holds_alternative<NoRoute>(at_departure)) {
    return at_departure;
  }
  return NoRoute{.why = "no way arrives by the hour asked for", .obstacles = {}};
}

}  // namespace rimehaul::search
