// The clock on the wall at the site: UTC and an offset, which summer time may change.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "units/clock.h"

namespace rimehaul::units {

/// From a moment on (included) local time is so many minutes ahead of UTC.
struct OffsetFrom {
  Instant from;
  int minutes = 0;

  friend bool operator==(const OffsetFrom&, const OffsetFrom&) = default;
};

/// No moment has this local time, since the clock was put forward over it; or two have.
enum class NoOneMoment { never, twice };

/// Local time as offsets from UTC, each in [-1440, 1440] minutes.
class LocalClock {
 public:
  /// The same offset always; 0 is UTC.
  explicit LocalClock(int offset_minutes = 0) : first_{offset_minutes} {}
  /// One offset up to the first change, then that of each change. Throws OurFault unless the
  /// changes come in order of time.
  LocalClock(int first_offset_minutes, std::vector<OffsetFrom> changes);

  [[nodiscard]] int offset_minutes(Instant moment) const;
  [[nodiscard]] TimeOfDay time_of_day(Instant moment) const;
  /// Seconds since midnight as the clock shows them, in [0, 86400).
  [[nodiscard]] std::int64_t seconds_of_day(Instant moment) const;
  /// How much the clock is put forward between two moments; less than 0: back.
  [[nodiscard]] Seconds put_forward(Instant from, Instant to) const;
  /// The first moment of the local day: midnight, or what comes next where the clock skips that.
  [[nodiscard]] Instant day_begins(Instant moment) const;
  /// The first moment of the next local day: 23, 24 or 25 hours on, where the clock is changed.
  [[nodiscard]] Instant next_day_begins(Instant moment) const;
  /// The moment at which the clock shows a time on the local day of another; 24:00 is the next
  /// day's 00:00.
  [[nodiscard]] std::variant<Instant, NoOneMoment> on_day_of(Instant day, TimeOfDay time) const;
  /// Where the offset changes after `from`, up to `to` included.
  [[nodiscard]] std::vector<Instant> changes_between(Instant from, Instant to) const;

  friend bool operator==(const LocalClock&, const LocalClock&) = default;

 private:
  [[nodiscard]] std::int64_t local_seconds(Instant moment) const;
  [[nodiscard]] std::vector<Instant> moments_showing(std::int64_t local_seconds) const;
  [[nodiscard]] Instant first_showing_at_least(std::int64_t local_seconds) const;

  int first_;
  std::vector<OffsetFrom> changes_;
};

}  // namespace rimehaul::units
