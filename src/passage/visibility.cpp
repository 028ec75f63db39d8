// Visibility against the spacing of a trail's markers.
#include "passage/visibility.h"

#include <cmath>

namespace rimehaul::passage {

namespace {

using units::amount;
using units::count_of;

bool is_length(units::Metres length) {
  return std::isfinite(length.value()) && length > units::Metres{0};
}

/// Where nothing shows the way: against what the site asks for there.
Finding judge_unmarked(const snow::DayWeather& weather, const trails::Trail& way) {
  if (!way.least_visibility || !is_length(*way.least_visibility)) {
    return unknown(Check::visibility, "least visibility to cross " + way.name);
  }
  if (!weather.visibility || !std::isfinite(weather.visibility->value())) {
    return unknown(Check::visibility, "today's visibility");
  }
  Finding finding = held_to(Check::visibility, amount(*way.least_visibility),
                            amount(*weather.visibility), "too little to cross open ground by");
  finding.inputs.add("needed", amount(*way.least_visibility), Origin::trail)
      .add("seen", amount(*weather.visibility), Origin::snow_report);
  return finding;
}

}  // namespace

Finding judge_visibility(const snow::DayWeather& weather, const trails::Trail& trail,
                         const Rules& rules) {
  if (!trail.marked) {
    return judge_unmarked(weather, trail);
  }
  if (rules.markers_in_sight == 0.0) {
    return kept(Check::visibility, "the rules ask for no markers in sight");
  }
  if (!(rules.markers_in_sight > 0.0) || !std::isfinite(rules.markers_in_sight)) {
    return unknown(Check::visibility, "how many markers the rules want in sight");
  }
  if (!weather.visibility || !std::isfinite(weather.visibility->value())) {
    return unknown(Check::visibility, "today's visibility");
  }
  if (!trail.marker_spacing || !is_length(*trail.marker_spacing)) {
    return unknown(Check::visibility, "distance between the markers of " + trail.name);
  }
  const units::Metres needed = *trail.marker_spacing * rules.markers_in_sight;
  Finding finding = held_to(Check::visibility, amount(needed), amount(*weather.visibility),
                            "too few markers in sight for the rules");
  finding.inputs.add("N", count_of(rules.markers_in_sight), Origin::rules)
      .add("d", amount(*trail.marker_spacing), Origin::trail)
      .add("needed", amount(needed), Origin::derived)
      .add("seen", amount(*weather.visibility), Origin::snow_report);
  return finding;
}

}  // namespace rimehaul::passage
