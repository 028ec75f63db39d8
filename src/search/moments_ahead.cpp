#include "search/moments_ahead.h"

#include <algorithm>
#include <cmath>
#include <iterator>

namespace rimehaul::search {

using units::Instant;

namespace {

/// How long after the hour of entry anything was asked for.
std::vector<std::int64_t> hours_asked(const passage::HoursOnLeg& hours, Instant entry) {
  std::vector<std::int64_t> later{0};
  for (const Instant asked : hours.asked) {
    later.push_back(asked.seconds - entry.seconds);
  }
  if (hours.staying.has_value() && std::isfinite(hours.staying->value())) {
    later.push_back(units::after(entry, *hours.staying).seconds - entry.seconds);
  }
  return later;
}

}  // namespace

MomentsAhead::MomentsAhead(const passage::LegJudge& judge, trails::LegId leg, units::Period horizon)
    : judge_{&judge}, leg_{leg}, horizon_{horizon}, looked_until_{horizon.from} {
  look_until(horizon_.to);
}

Instant MomentsAhead::next_entry(const passage::HoursOnLeg& hours, Instant entry) {
  Instant next{horizon_.to.seconds + 1};
  for (const std::int64_t later : hours_asked(hours, entry)) {
    look_until({horizon_.to.seconds + later});
    const auto turn = std::ranges::upper_bound(moments_, Instant{entry.seconds + later});
    if (turn != moments_.end()) {
      next = std::min(next, Instant{turn->seconds - later});
    }
  }
  return next;
}

Instant MomentsAhead::first_entry(const passage::HoursOnLeg& hours, Instant entry) {
  Instant first = horizon_.from;
  for (const std::int64_t later : hours_asked(hours, entry)) {
    look_until({horizon_.to.seconds + later});
    const auto turn = std::ranges::upper_bound(moments_, Instant{entry.seconds + later});
    if (turn != moments_.begin()) {
      first = std::max(first, Instant{std::prev(turn)->seconds - later});
    }
  }
  return first;
}

void MomentsAhead::look_until(Instant until) {
  if (looked_until_ < until) {
    looked_until_ = until;
    moments_ = judge_->turning_moments(leg_, {horizon_.from, until});
  }
}

}  // namespace rimehaul::search
