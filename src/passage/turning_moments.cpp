#include "passage/turning_moments.h"

#include <algorithm>
#include <cstdint>

#include "snow/turning_moments.h"

namespace rimehaul::passage {

using units::Instant;
using units::Period;

namespace {

constexpr std::int64_t kSecondsPerDay = 86'400;
constexpr std::int64_t kSecondsPerMinute = 60;
constexpr int kMinutesPerDay = 1'440;

class Moments {
 public:
  Moments(const Circumstances& now, Period during)
      : now_{now}, during_{during}, found_{now.snow.turning_moments(during)} {}

  /// Hours hold both for entering and for having left, their last second included. At midnight
  /// the day's seconds begin anew. Where the clock is changed, every offset counts for all days.
  void add_hours(const std::optional<trails::OpenHours>& hours) {
    if (!hours.has_value() || (hours->from.minutes == 0 && hours->to.minutes == kMinutesPerDay)) {
      return;
    }
    const units::LocalClock& local_clock = now_.scene.rules.local_clock;
    const Instant day_before{during_.from.seconds - kSecondsPerDay};
    add_hours_at(*hours, local_clock.offset_minutes(day_before));
    for (const Instant change :
         local_clock.changes_between(day_before, {during_.to.seconds + kSecondsPerDay})) {
      found_.push_back(change);
      add_hours_at(*hours, local_clock.offset_minutes(change));
    }
  }

  /// Ordered hours as the trail's own; leave holds to its last second, for who is gone by then.
  void add_orders(const std::string& trail) {
    for (const TrailOrder& order : now_.scene.rules.orders.trails) {
      if (order.trail == trail) {
        add_hours(order.hours);
      }
    }
    for (const Leave& leave : now_.scene.rules.orders.leaves) {
      found_.push_back({leave.until.seconds + 1});
    }
  }

  void add_grooming(const trails::Trail& trail) {
    const auto finished = now_.snow.weather().site.groomed(trail.name);
    if (finished.has_value() && now_.scene.rules.grooming_set.has_value()) {
      found_.push_back(units::after(*finished, *now_.scene.rules.grooming_set));
    }
  }

  void add_surveys(const trails::Trail& trail) {
    for (const trails::Mark& mark : now_.scene.network.marks) {
      if (mark.trail == trail.name && mark.survey.has_value()) {
        found_.push_back(mark.survey->surveyed);
        found_.push_back(mark.survey->inspected.value_or(mark.survey->surveyed));
      }
    }
  }

  [[nodiscard]] std::vector<Instant> in_order() && {
    return snow::in_order_within(std::move(found_), during_);
  }

 private:
  void add_hours_at(const trails::OpenHours& hours, int offset_minutes) {
    const std::int64_t local_s = during_.from.seconds + kSecondsPerMinute * offset_minutes;
    const std::int64_t into_day_s = ((local_s % kSecondsPerDay) + kSecondsPerDay) % kSecondsPerDay;
    for (std::int64_t midnight_s = during_.from.seconds - into_day_s;
         midnight_s <= during_.to.seconds; midnight_s += kSecondsPerDay) {
      found_.push_back({midnight_s});
      found_.push_back({midnight_s + kSecondsPerMinute * hours.from.minutes});
      found_.push_back({midnight_s + kSecondsPerMinute * hours.to.minutes + 1});
    }
  }

  const Circumstances& now_;
  Period during_;
  std::vector<Instant> found_;
};

}  // namespace

std::vector<Instant> turning_moments_of_trail(const Circumstances& now, std::size_t trail,
                                              Period during) {
  const trails::Trail& there = now.scene.network.trails.at(trail);
  Moments moments{now, during};
  moments.add_hours(there.hours);
  moments.add_orders(there.name);
  for (const DriverLevel& level : now.scene.rules.driver_levels) {
    if (level.name == now.rig.driver_level) {
      moments.add_hours(level.hours);
    }
  }
  moments.add_grooming(there);
  moments.add_surveys(there);
  return std::move(moments).in_order();
}

std::vector<Instant> turning_moments_of_turn(const Circumstances& now, TrailsThatMeet trails,
                                             Period during) {
  Moments moments{now, during};
  moments.add_surveys(now.scene.network.trails.at(trails.before));
  moments.add_surveys(now.scene.network.trails.at(trails.after));
  return std::move(moments).in_order();
}

}  // namespace rimehaul::passage
