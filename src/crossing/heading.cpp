#include "crossing/heading.h"

#include <cmath>

namespace rimehaul::crossing {

using units::Bearing;

Bearing bearing_of(Heading heading) {
  const CellStep step = step_of(heading);
  return Bearing::of(step.columns, -step.rows);
}

units::Metres length_of(Heading heading, units::Metres pitch) {
  const CellStep step = step_of(heading);
  return pitch * std::hypot(step.columns, step.rows);
}

Sector sector_of(Heading heading) {
  const Bearing middle = bearing_of(heading);
  const auto halfway_to = [&](Heading other) {
    return Bearing::from_degrees(middle.degrees() + middle.turn_to(bearing_of(other)) / 2.0);
  };
  return {.from = halfway_to(turned(heading, -1)), .to = halfway_to(turned(heading, 1))};
}

Heading heading_of(Bearing bearing) {
  for (int index = 1; index < static_cast<int>(kHeadings); ++index) {
    const Heading heading = turned(Heading{}, index);
    const Sector sector = sector_of(heading);
    if (sector.from <= bearing && bearing < sector.to) {
      return heading;
    }
  }
  return Heading{};  // the one sector that holds the seam at 360 degrees
}

}  // namespace rimehaul::crossing
