#include "units/time_spans.h"

#include <algorithm>

namespace rimehaul::units {

namespace {

/// The first period that does not end before a moment.
auto not_over_before(const std::vector<Period>& periods, Instant moment) {
  return std::ranges::lower_bound(periods, moment, {}, &Period::to);
}

}  // namespace

TimeSpans::TimeSpans(std::vector<Period> periods) {
  std::erase_if(periods, [](const Period& period) { return period.to < period.from; });
  std::ranges::sort(periods, {}, &Period::from);
  for (const Period& period : periods) {
    if (!periods_.empty() && period.from.seconds <= periods_.back().to.seconds + 1) {
      periods_.back().to = std::max(periods_.back().to, period.to);
    } else {
      periods_.push_back(period);
    }
  }
}

bool TimeSpans::contains(Instant moment) const {
  return around(moment).has_value();
}

std::optional<Instant> TimeSpans::first_from(Instant moment) const {
  const auto next = not_over_before(periods_, moment);
  return next == periods_.end() ? std::nullopt : std::optional{std::max(next->from, moment)};
}

std::optional<Period> TimeSpans::around(Instant moment) const {
  const auto next = not_over_before(periods_, moment);
  const bool inside = next != periods_.end() && next->from <= moment;
  return inside ? std::optional{*next} : std::nullopt;
}

TimeSpans TimeSpans::united_with(const TimeSpans& other) const {
  std::vector<Period> all = periods_;
  all.insert(all.end(), other.periods_.begin(), other.periods_.end());
  return TimeSpans{std::move(all)};
}

TimeSpans TimeSpans::shared_with(const TimeSpans& other) const {
  std::vector<Period> shared;
  auto own = periods_.begin();
  auto its = other.periods_.begin();
  while (own != periods_.end() && its != other.periods_.end()) {
    shared.push_back({std::max(own->from, its->from), std::min(own->to, its->to)});
    if (own->to < its->to) {
      ++own;
    } else {
      ++its;
    }
  }
  return TimeSpans{std::move(shared)};
}

TimeSpans TimeSpans::gaps_in(Period whole) const {
  std::vector<Period> gaps;
  Instant next = whole.from;
  for (const Period& period : periods_) {
    gaps.push_back({next, {std::min(period.from.seconds - 1, whole.to.seconds)}});
    next = std::max(next, Instant{period.to.seconds + 1});
  }
  gaps.push_back({next, whole.to});
  return TimeSpans{std::move(gaps)};
}

TimeSpans TimeSpans::later_by(std::int64_t seconds) const {
  TimeSpans moved = *this;
  for (Period& period : moved.periods_) {
    period.from.seconds += seconds;
    period.to.seconds += seconds;
  }
  return moved;
}

TimeSpans TimeSpans::lasting(std::int64_t seconds) const {
  std::vector<Period> left = periods_;
  for (Period& period : left) {
    period.to.seconds -= seconds;
  }
  return TimeSpans{std::move(left)};
}

}  // namespace rimehaul::units
