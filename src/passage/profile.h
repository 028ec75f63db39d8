// The way of a stretch over the snow: the heights under its line, and what that costs to drive.
#pragma once

#include <optional>
#include <vector>

#include "passage/drive.h"
#include "passage/footfall.h"

namespace rimehaul::passage {

/// A piece of the heights' own line, from one known height to the next. What lies between goes up
/// and down as it likes between two grades, and comes to the mean one.
struct Rise {
  units::Metres in_plan;
  units::Slope grade;      ///< from end to end
  units::Slope low;        ///< the least anywhere on it; at most `grade`
  units::Slope high;       ///< the most anywhere on it; at least `grade`
  std::size_t before = 0;  ///< footfalls whose snow it may have: the one that it leaves
  std::size_t under = 0;   ///< and the one that it enters
};

/// From the height at the stretch's start over those at the middles of its footfalls to that at its
/// end. Nothing when a height is missing, or there is no footfall.
[[nodiscard]] std::optional<std::vector<Rise>> profile_of(const terrain::HeightMap& heights,
                                                          const geo::Polyline& line,
                                                          const std::vector<Footfall>& footfalls);

/// Sums over a profile.
struct Way {
  units::Metres climb;
  units::Metres drop;
  units::Metres over_snow;  ///< the most that it can be, however the ground goes up and down
};
[[nodiscard]] Way way_over(const std::vector<Rise>& profile);

/// The most fuel that a profile can take at one speed, however the ground goes up and down on the
/// way and whichever snow lies where two footfalls meet. `grips` has one row for each footfall,
/// none of them null.
[[nodiscard]] units::Litres fuel_over(const std::vector<Rise>& profile, const rig::Rig& rig,
                                      const std::vector<const snow::GripRow*>& grips,
                                      units::MetresPerSecond speed);

}  // namespace rimehaul::passage
