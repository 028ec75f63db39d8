// Site rules that need no ground: what was said of the trail, its direction, its hours, its sight.
#include "passage/site_rules.h"

#include <algorithm>
#include <cmath>

namespace rimehaul::passage {

using units::Metres;

namespace {

constexpr int kMinutesPerDay = 1'440;

/// How much later the clock shows when a rig leaves than when it enters; no less than the time
/// that passes, should the clock be put back meanwhile.
double shown_to_pass_s(Stay stay, const units::LocalClock& local_clock) {
  const units::Seconds lasting = stay.lasting.value_or(units::Seconds{0});
  const units::Instant leaves = units::after(stay.entry, lasting);
  return lasting.value() + std::max(0.0, local_clock.put_forward(stay.entry, leaves).value());
}

bool is_length(Metres metres) {
  return metres >= Metres{0} && std::isfinite(metres.value());
}

units::Amount minutes_amount(double minutes) {
  return {minutes, units::Unit::minutes_of_day};
}

}  // namespace

Finding judge_trail_attributes(const trails::Trail& trail) {
  std::vector<std::string> missing = trail.missing();
  const auto expect = [&missing](bool sound, const char* name) {
    if (!sound) {
      missing.emplace_back(name);
    }
  };
  expect(!trail.width.has_value() || is_length(*trail.width), "width_m that makes sense");
  expect(!trail.lanes.has_value() || *trail.lanes >= 1, "lanes that make sense");
  expect(!trail.line_error.has_value() || is_length(*trail.line_error), "error_m that makes sense");
  if (missing.empty()) {
    return kept(Check::trail_attributes, "all were given");
  }
  std::string names;
  for (const std::string& name : missing) {
    names += (names.empty() ? "" : ", ") + name;
  }
  return unknown(Check::trail_attributes, names + " of trail " + trail.name);
}

Finding judge_direction(const trails::Trail& trail, trails::Way way) {
  if (!trail.direction.has_value()) {
    return unknown(Check::direction, "direction of trail " + trail.name);
  }
  const trails::AllowedDirection wanted = way == trails::Way::as_drawn
                                              ? trails::AllowedDirection::forward
                                              : trails::AllowedDirection::backward;
  if (*trail.direction == trails::AllowedDirection::both || *trail.direction == wanted) {
    return kept(Check::direction, "the trail may be driven this way");
  }
  return refusal(Check::direction, "trail " + trail.name + " is one-way, the other way");
}

Finding held_to_hours(const HoursRule& rule, Stay stay, const Rules& rules) {
  const units::TimeOfDay from = rule.hours.from;
  const units::TimeOfDay to = rule.hours.to;
  const double entry_s = static_cast<double>(rules.local_clock.seconds_of_day(stay.entry));
  const bool always = from.minutes == 0 && to.minutes == kMinutesPerDay;
  const auto held = [&](double earlier_s, double later_s) {
    return held_to(rule.check, minutes_amount(earlier_s / 60.0), minutes_amount(later_s / 60.0),
                   rule.refused + " " + units::text_of(from) + " to " + units::text_of(to));
  };
  Finding finding =
      always ? kept(rule.check, rule.always)
      : entry_s < 60.0 * from.minutes
          ? held(60.0 * from.minutes, entry_s)
          : held(entry_s + shown_to_pass_s(stay, rules.local_clock), 60.0 * to.minutes);
  finding.inputs.add("open from", minutes_amount(from.minutes), rule.origin)
      .add("open to", minutes_amount(to.minutes), rule.origin)
      .add("entry", minutes_amount(entry_s / 60.0), Origin::derived);
  if (stay.lasting.has_value()) {
    finding.inputs.add("time on the trail", units::amount(*stay.lasting), Origin::derived);
  }
  return finding;
}

Finding judge_hours(const trails::Trail& trail, Stay stay, const Rules& rules) {
  if (!trail.hours.has_value()) {
    return unknown(Check::hours, "hours of trail " + trail.name);
  }
  return held_to_hours({.check = Check::hours,
                        .hours = *trail.hours,
                        .refused = "trail " + trail.name + " is open",
                        .always = "the trail is open all day",
                        .origin = Origin::trail},
                       stay, rules);
}

Metres sight_along(const trails::Trail& trail, const Rules& rules,
                   const snow::DayWeather& weather) {
  Metres sight = trail.sight.value_or(rules.sight);
  // Written so that a sight that is not a number stays one.
  if (weather.visibility.has_value() && !(sight <= *weather.visibility)) {
    sight = std::isnan(sight.value()) ? sight : *weather.visibility;
  }
  const bool one_way =
      trail.direction.has_value() && *trail.direction != trails::AllowedDirection::both;
  const bool room_to_pass = trail.lanes.has_value() && *trail.lanes >= 2;
  return one_way || room_to_pass ? sight : sight / 2;
}

}  // namespace rimehaul::passage
