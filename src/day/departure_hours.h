// The hours at which a trip may set out, as they are told.
#pragma once

#include <optional>

#include "units/time_spans.h"

namespace rimehaul::day {

/// Windows of departure, to the second; of there and back, where a way back was asked for.
struct Departures {
  units::Period hours;  ///< looked at; no trip leaves them
  units::Seconds late;  ///< that every window allows for
  units::TimeSpans out;
  std::optional<units::TimeSpans> back{};      ///< of setting out for the way back
  std::optional<units::Seconds> turn_round{};  ///< from arriving to setting out back, at the least
};

/// From the first to the last whole minute of a window, for clocks that show no seconds: never more
/// than the window; empty where it holds none.
[[nodiscard]] units::Period whole_minutes_in(units::Period window);

/// The latest whole minute of the windows, or their last second where they hold no whole minute;
/// nothing where they are empty.
[[nodiscard]] std::optional<units::Instant> latest(const units::TimeSpans& windows);

}  // namespace rimehaul::day
