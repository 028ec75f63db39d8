#include "passage/day_rules.h"

#include <algorithm>

#include "passage/tilt.h"

namespace rimehaul::passage {

Finding judge_wind(const snow::DayWeather& weather, const trails::Trail& trail,
                   const Rules& rules) {
  if (!rules.most_wind.has_value() && !trail.most_wind.has_value()) {
    return kept(Check::wind, "neither the site nor the trail sets a most wind");
  }
  if (!weather.wind.has_value()) {
    return unknown(Check::wind, "wind");
  }
  // A limit that is not a number is the lower one, so that it closes.
  const units::MetresPerSecond by_site = rules.most_wind ? *rules.most_wind : *trail.most_wind;
  const units::MetresPerSecond on_trail = trail.most_wind ? *trail.most_wind : *rules.most_wind;
  const units::MetresPerSecond most{smaller(by_site.value(), on_trail.value())};
  Finding finding = held_to(Check::wind, units::amount(*weather.wind), units::amount(most),
                            "more wind than the site or the trail allows");
  finding.inputs.add("wind", units::amount(*weather.wind), Origin::snow_report);
  if (rules.most_wind) {
    finding.inputs.add("most wind", units::amount(*rules.most_wind), Origin::rules);
  }
  if (trail.most_wind) {
    finding.inputs.add("most wind on this trail", units::amount(*trail.most_wind), Origin::trail);
  }
  return finding;
}

Finding judge_rain(const snow::DayWeather& weather, const Rules& rules) {
  if (!rules.closed_in_rain) {
    return kept(Check::rain, "the rules let rigs drive in rain");
  }
  if (!weather.rain.has_value()) {
    return unknown(Check::rain, "whether it rains");
  }
  return *weather.rain ? refusal(Check::rain, "nothing is driven in rain")
                       : kept(Check::rain, "it does not rain");
}

Finding judge_grooming(const trails::Trail& trail, const Rules& rules,
                       const snow::SiteStatus& status, units::Instant entry) {
  if (!rules.grooming_set.has_value() || !trail.groomed.value_or(false)) {
    return kept(Check::grooming, "the rules set no time, or the trail is not groomed");
  }
  const std::optional<units::Instant> finished = status.groomed(trail.name);
  if (!finished.has_value()) {
    return unknown(Check::grooming, "when trail " + trail.name + " was last groomed");
  }
  const units::Seconds setting = entry.since(*finished);
  Finding finding =
      held_to(Check::grooming, units::amount(*rules.grooming_set), units::amount(setting),
              "the grooming of trail " + trail.name + " has not set long enough");
  finding.inputs.add("time since grooming", units::amount(setting), Origin::snow_report)
      .add("least time to set", units::amount(*rules.grooming_set), Origin::rules);
  return finding;
}

Finding judge_tow_out(const Rules& rules, const snow::SiteStatus& status) {
  if (!rules.tow_out.must_be_ready) {
    return kept(Check::tow_out, "the rules ask for no tow-out rig");
  }
  if (!status.tow_out_ready.has_value()) {
    return unknown(Check::tow_out, "whether the tow-out rig stands ready today");
  }
  return *status.tow_out_ready ? kept(Check::tow_out, "it was told to stand ready today")
                               : refusal(Check::tow_out, "no tow-out rig stands ready today");
}

}  // namespace rimehaul::passage
