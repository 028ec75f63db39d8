// When to set out and when to wait, in local times.
#pragma once

#include <string>
#include <vector>

#include "card/labelled_line.h"
#include "day/departure_hours.h"
#include "units/local_clock.h"

namespace rimehaul::card {

/// Windows, the departure that is planned, and the site's local time.
struct DepartureHours {
  const day::Departures& departures;
  units::Instant depart;
  const units::LocalClock& local_clock;
};

/// Under "Hours": "last safe departure 10:40; again from 17:20 to 19:00; up to 15 min late allowed
/// for; trips over by 23:59 looked at"; and where there is a way back, its hours under "Way back".
/// Minutes are rounded into the window.
[[nodiscard]] std::vector<LabelledLine> departure_lines(const DepartureHours& hours);

/// Why there is no route by an hour of arrival, in one line.
[[nodiscard]] std::string no_departure_arrives_in_time();

struct Wait {
  std::string station;
  units::Instant until;
  const units::LocalClock& local_clock;
};
/// "wait at Col Hut until 18:41": rounded up to the minute.
[[nodiscard]] std::string wait_words(const Wait& wait);

}  // namespace rimehaul::card
