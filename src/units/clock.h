// Moments and times of day as values. Nothing here reads a clock.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "units/quantities.h"

namespace rimehaul::units {

/// A moment, in whole seconds of UTC since 1970-01-01T00:00:00Z.
struct Instant {
  std::int64_t seconds = 0;

  /// From another moment to this one; negative when the other is later.
  [[nodiscard]] constexpr Seconds since(Instant other) const {
    return Seconds{static_cast<double>(seconds - other.seconds)};
  }

  friend auto operator<=>(const Instant&, const Instant&) = default;
};

/// A stretch of time, both ends included. Empty when it ends before it begins.
struct Period {
  Instant from;
  Instant to;

  friend bool operator==(const Period&, const Period&) = default;
};

/// The moment a while later, rounded up to the whole second. A while beyond all use, or one that is
/// no number, ends 10^12 s later.
[[nodiscard]] Instant after(Instant start, Seconds lasting);

/// Reads "2026-02-01T06:30:00Z", "2026-02-01T06:30Z" or the same with an offset "+01:00" (RFC
/// 3339). Nothing when it is not a moment of the Gregorian calendar.
[[nodiscard]] std::optional<Instant> parse_instant(std::string_view text);

/// "2026-02-01T06:30:00Z" (RFC 3339).
[[nodiscard]] std::string text_of(Instant moment);

/// Minutes after local midnight, in [0, 1440].
struct TimeOfDay {
  int minutes = 0;

  friend auto operator<=>(const TimeOfDay&, const TimeOfDay&) = default;
};

/// Reads "HH:MM", 00:00 to 24:00.
[[nodiscard]] std::optional<TimeOfDay> parse_time_of_day(std::string_view text);
[[nodiscard]] std::string text_of(TimeOfDay time);

}  // namespace rimehaul::units
