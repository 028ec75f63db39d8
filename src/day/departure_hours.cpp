#include "day/departure_hours.h"

namespace rimehaul::day {

using units::Instant;
using units::Period;

namespace {

constexpr std::int64_t kMinute_s = 60;

std::int64_t into_minute(std::int64_t seconds) {
  return ((seconds % kMinute_s) + kMinute_s) % kMinute_s;
}

}  // namespace

Period whole_minutes_in(Period window) {
  const std::int64_t from_s = window.from.seconds + kMinute_s - 1;
  return {{from_s - into_minute(from_s)}, {window.to.seconds - into_minute(window.to.seconds)}};
}

std::optional<Instant> latest(const units::TimeSpans& windows) {
  for (std::size_t i = windows.periods().size(); i > 0; --i) {
    const Period minutes = whole_minutes_in(windows.periods()[i - 1]);
    if (minutes.from <= minutes.to) {
      return minutes.to;
    }
  }
  return windows.empty() ? std::nullopt : std::optional{windows.periods().back().to};
}

}  // namespace rimehaul::day
