// The way of a stretch over the snow: the heights under its line, and what that costs to drive.
#pragma once

#include <optional>
#include <vector>

#include "passage/drive.h"
#include "passage/footfall.h"

namespace rimehaul::passage {

/// One straight piece of the heights' own line.
struct Rise {
  units::Metres in_plan;
  units::Slope grade;
  std::size_t footfall = 0;  ///< whose snow counts: the one before or under it
};

/// From the height at the stretch's start over those at the middles of its footfalls to that at its
/// end. Nothing when a height is missing.
[[nodiscard]] std::optional<std::vector<Rise>> profile_of(const terrain::HeightMap& heights,
                                                          const geo::Polyline& line,
                                                          const std::vector<Footfall>& footfalls);

/// Sums over a profile.
struct Way {
  units::Metres climb;
  units::Metres drop;
  units::Metres over_snow;
};
[[nodiscard]] Way way_over(const std::vector<Rise>& profile);

/// Fuel for a profile at one speed. `grips` has one row for each footfall, none of them null.
[[nodiscard]] units::Litres fuel_over(const std::vector<Rise>& profile, const rig::Rig& rig,
                                      const std::vector<const snow::GripRow*>& grips,
                                      units::MetresPerSecond speed);

}  // namespace rimehaul::passage
