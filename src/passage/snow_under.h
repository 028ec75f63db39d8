// Every state that the snow may have under one footfall, so that no place on it is overlooked.
#pragma once

#include <optional>
#include <vector>

#include "passage/finding.h"
#include "passage/footfall.h"
#include "snow/snow.h"

namespace rimehaul::passage {

/// So much new snow since the last grooming makes a groomed surface a fresh one: an estimate.
inline constexpr units::Metres kNewSnowThatCounts{0.03};

/// How deep one sinks in the day's new snow; nothing where nobody has said how much there is. By
/// its depth alone where its density is not told.
[[nodiscard]] std::optional<units::Metres> sinkage_in_new_snow(const snow::DayWeather& weather);

/// Who is asked, for which line, and what counts as level ground.
struct SnowQuestion {
  const snow::SnowAt& snow;
  const geo::Polyline& line;  ///< along which footfalls count
  std::optional<units::Slope> tolerance;
  units::Instant when;
  bool groomed = false;  ///< somebody grooms there; else what the report calls groomed is not
};

/// Proven only by somebody's word.
[[nodiscard]] inline bool is_groomed(const trails::Trail& trail) {
  return trail.groomed.value_or(false);
}

/// The states that may be met anywhere on a footfall, each once, that of its middle first; nothing
/// stands for unknown. Under new snow, and where
/// nobody grooms, a groomed surface counts as fresh; where nobody has said how
/// much new snow there is, no surface is known. The snow is asked at the
/// lowest and highest height that the carrier's box lets the line reach from the middle's, and for
/// all slopes and aspects that the box lets the ground have, no further apart than 15 degrees; and
/// without an aspect where the ground may be level within the tolerance.
[[nodiscard]] std::vector<std::optional<snow::SnowState>> snow_under(const Footfall& footfall,
                                                                     const SnowQuestion& question);

/// What is found of a leg whose snow changes once more however late it is asked.
[[nodiscard]] Finding snow_that_turns();

}  // namespace rimehaul::passage
