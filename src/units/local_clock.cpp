#include "units/local_clock.h"

#include <algorithm>
#include <utility>

#include "base/require.h"

namespace rimehaul::units {

namespace {

constexpr std::int64_t kSecondsPerDay = 86'400;
constexpr std::int64_t kSecondsPerMinute = 60;

/// The local midnight at or before a local time, both in seconds of a clock that knows no zones.
std::int64_t midnight_before(std::int64_t local_seconds) {
  const std::int64_t into_day =
      ((local_seconds % kSecondsPerDay) + kSecondsPerDay) % kSecondsPerDay;
  return local_seconds - into_day;
}

}  // namespace

LocalClock::LocalClock(int first_offset_minutes, std::vector<OffsetFrom> changes)
    : first_{first_offset_minutes}, changes_{std::move(changes)} {
  base::require(std::ranges::is_sorted(changes_, {}, &OffsetFrom::from),
                "changes of the local clock come in order of time");
}

int LocalClock::offset_minutes(Instant moment) const {
  const auto later = std::ranges::upper_bound(changes_, moment, {}, &OffsetFrom::from);
  return later == changes_.begin() ? first_ : std::prev(later)->minutes;
}

std::int64_t LocalClock::local_seconds(Instant moment) const {
  return moment.seconds + kSecondsPerMinute * offset_minutes(moment);
}

std::int64_t LocalClock::seconds_of_day(Instant moment) const {
  const std::int64_t local = local_seconds(moment);
  return local - midnight_before(local);
}

TimeOfDay LocalClock::time_of_day(Instant moment) const {
  return TimeOfDay{static_cast<int>(seconds_of_day(moment) / kSecondsPerMinute)};
}

// From and to, as periods have them.
// NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
Seconds LocalClock::put_forward(Instant from, Instant to) const {
  return Seconds{
      static_cast<double>(kSecondsPerMinute * (offset_minutes(to) - offset_minutes(from)))};
}

std::vector<Instant> LocalClock::moments_showing(std::int64_t local_seconds) const {
  std::vector<int> offsets{first_};
  for (const OffsetFrom& change : changes_) {
    offsets.push_back(change.minutes);
  }
  std::ranges::sort(offsets);
  offsets.erase(std::unique(offsets.begin(), offsets.end()), offsets.end());
  std::vector<Instant> moments;
  for (const int minutes : offsets) {
    const Instant moment{local_seconds - kSecondsPerMinute * minutes};
    if (offset_minutes(moment) == minutes) {
      moments.push_back(moment);
    }
  }
  std::ranges::sort(moments);
  return moments;
}

Instant LocalClock::first_showing_at_least(std::int64_t local_seconds) const {
  const std::vector<Instant> moments = moments_showing(local_seconds);
  if (!moments.empty()) {
    return moments.front();
  }
  // The clock is put forward over it: the moment of that change is the first to show more.
  const auto change = std::ranges::find_if(changes_, [&](const OffsetFrom& later) {
    return later.from.seconds + kSecondsPerMinute * later.minutes > local_seconds;
  });
  base::require(change != changes_.end(), "only a change can leave a local time out");
  return change->from;
}

Instant LocalClock::day_begins(Instant moment) const {
  return first_showing_at_least(midnight_before(local_seconds(moment)));
}

Instant LocalClock::next_day_begins(Instant moment) const {
  return first_showing_at_least(midnight_before(local_seconds(moment)) + kSecondsPerDay);
}

std::variant<Instant, NoOneMoment> LocalClock::on_day_of(Instant day, TimeOfDay time) const {
  const std::int64_t shown = midnight_before(local_seconds(day)) + kSecondsPerMinute * time.minutes;
  const std::vector<Instant> moments = moments_showing(shown);
  if (moments.size() == 1) {
    return moments.front();
  }
  return moments.empty() ? NoOneMoment::never : NoOneMoment::twice;
}

// From and to, as periods have them.
// NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
std::vector<Instant> LocalClock::changes_between(Instant from, Instant to) const {
  std::vector<Instant> moments;
  for (const OffsetFrom& change : changes_) {
    if (from < change.from && change.from <= to) {
      moments.push_back(change.from);
    }
  }
  return moments;
}

}  // namespace rimehaul::units
