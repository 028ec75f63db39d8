#include "day/departures.h"

#include <algorithm>
#include <cmath>

#include "base/require.h"
#include "search/stops.h"

namespace rimehaul::day {

using trails::JunctionId;
using units::Instant;
using units::Seconds;
using units::TimeSpans;

namespace {

std::int64_t whole_seconds(Seconds lasting) {
  base::require(lasting >= Seconds{0} && std::isfinite(lasting.value()),
                "a time of waiting is below nothing");
  return units::after({}, lasting).seconds;
}

/// Nothing where a station is none or has no trail.
std::optional<search::TimedWays> ways_of(const trails::Network& network, search::LegHours& hours,
                                         const Trip& trip) {
  if (const auto* way = std::get_if<search::FixedWay>(&trip)) {
    return search::TimedWays{network, hours, *way};
  }
  search::RouteQuestion question;
  question.stations = std::get<Stops>(trip).stations;
  const auto stops = search::stops_of(network, question);
  const auto* there = std::get_if<std::vector<JunctionId>>(&stops);
  return there == nullptr ? std::nullopt : std::optional{search::TimedWays{network, hours, *there}};
}

/// No trip that sets out so much late arrives after the last hour.
TimeSpans windows_of(search::TimedWays& ways, const DeparturesQuestion& question,
                     Instant arrive_by) {
  return ways
      .windows({.permission = question.permission,
                .arrivals_allowed = TimeSpans{{{question.hours.from, arrive_by}}}})
      .lasting(whole_seconds(question.late));
}

}  // namespace

Departures departures_of(const trails::Network& network, search::LegHours& out,
                         const DeparturesQuestion& question, const std::optional<WayBack>& back) {
  Departures found{.hours = question.hours, .late = question.late, .out = {}};
  Instant arrive_by = question.arrive_by.value_or(question.hours.to);
  if (back.has_value()) {
    found.turn_round = back->turn_round;
    found.back.emplace();
  }
  std::optional<search::TimedWays> there = ways_of(network, out, question.trip);
  if (!there.has_value()) {
    return found;
  }
  if (back.has_value()) {
    search::LegHours hours{back->judge, question.hours};
    auto ways_back = ways_of(network, hours, back_of(question.trip));
    *found.back = windows_of(*ways_back, question, question.hours.to);
    if (found.back->empty()) {
      return found;
    }
    const Instant last_back = found.back->periods().back().to;
    arrive_by = std::min(arrive_by, {last_back.seconds - whole_seconds(back->turn_round)});
  }
  found.out = windows_of(*there, question, arrive_by);
  return found;
}

}  // namespace rimehaul::day
