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

/// What holds for every start up to the latest.
class Reckoning {
 public:
  Reckoning(const trails::Network& network, const DeparturesQuestion& question)
      : network_{network}, question_{question} {}

  [[nodiscard]] TimeSpans windows(search::LegHours& hours, std::vector<JunctionId> stops,
                                  Instant arrive_by) const {
    const search::TimedWays::Trip trip{
        .permission = search::permission_of(question_.trip),
        .arrivals_allowed = TimeSpans{{{question_.hours.from, arrive_by}}}};
    return search::TimedWays{network_, hours, stops}.windows(trip).lasting(
        whole_seconds(question_.late));
  }

 private:
  const trails::Network& network_;
  const DeparturesQuestion& question_;
};

}  // namespace

Departures departures_of(const trails::Network& network, search::LegHours& out,
                         const DeparturesQuestion& question, const std::optional<WayBack>& back) {
  Departures found{.hours = question.hours, .late = question.late, .out = {}};
  const auto stops = search::stops_of(network, question.trip);
  const auto* there = std::get_if<std::vector<JunctionId>>(&stops);
  const Reckoning reckoning{network, question};
  Instant arrive_by = question.trip.arrive_by.value_or(question.hours.to);
  if (back.has_value()) {
    found.turn_round = back->turn_round;
    found.back.emplace();
  }
  if (there == nullptr) {
    return found;
  }
  if (back.has_value()) {
    search::LegHours hours{back->judge, question.hours};
    *found.back = reckoning.windows(hours, {there->rbegin(), there->rend()}, question.hours.to);
    if (found.back->empty()) {
      return found;
    }
    const Instant last_back = found.back->periods().back().to;
    arrive_by = std::min(arrive_by, {last_back.seconds - whole_seconds(back->turn_round)});
  }
  found.out = reckoning.windows(out, *there, arrive_by);
  return found;
}

}  // namespace rimehaul::day
