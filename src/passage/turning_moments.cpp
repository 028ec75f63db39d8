#include "passage/turning_moments.h"

#include <algorithm>
#include <cstdint>

#include "snow/turning_moments.h"

namespace rimehaul::passage {

using units::Instant;
using units::Period;

namespace {

constexpr std::int64_t kSecondsPerDay = 86'400;
constexpr int kMinutesPerDay = 1'440;

class Moments {
 public:
  Moments(const Circumstances& now, Period during)
      : now_{now}, during_{during}, found_{now.snow.turning_moments(during)} {}

  /// Hours hold both for entering and for having left, their last second included. At midnight
  /// the day's seconds begin anew.
  void add_hours(const std::optional<trails::OpenHours>& hours) {
    if (!hours.has_value() || (hours->from.minutes == 0 && hours->to.minutes == kMinutesPerDay)) {
      return;
    }
    const std::int64_t offset_s = std::int64_t{60} * now_.scene.rules.utc_offset_minutes;
    const std::int64_t local_s = during_.from.seconds + offset_s;
    const std::int64_t into_day_s = ((local_s % kSecondsPerDay) + kSecondsPerDay) % kSecondsPerDay;
    for (std::int64_t midnight_s = during_.from.seconds - into_day_s;
         midnight_s <= during_.to.seconds; midnight_s += kSecondsPerDay) {
      found_.push_back({midnight_s});
      found_.push_back({midnight_s + std::int64_t{60} * hours->from.minutes});
      found_.push_back({midnight_s + std::int64_t{60} * hours->to.minutes + 1});
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
