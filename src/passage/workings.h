// Numbers that several checks of one place share, set out so that a person can work them out.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "passage/course.h"
#include "passage/footing.h"

namespace rimehaul::passage {

/// One number by the symbol of the pages, and how it comes about from those before it.
struct Working {
  std::string symbol;
  units::Amount value;
  Origin origin = Origin::derived;
  std::string formula;    ///< in symbols that stand before it; empty: given, not worked out
  std::string_view page;  ///< that tells of it; constant text
};

/// What the ground checks share at one footing: the lie of the ground, the masses and the snow's
/// grip as given, the normal loads, the forces at the hitch, the grip taken along the track.
/// Symbols end in _c for the carrier, _t for the trailer.
[[nodiscard]] std::vector<Working> shared_workings(const Footing& footing);

/// The same for a roll-over finding alone: the edge that it tips over, the corners, the hitch's
/// moment. Nothing for a finding of another check.
[[nodiscard]] std::vector<Working> roll_over_workings(const Footing& footing,
                                                      const Finding& finding);

/// The same for stopping: what the brake may be used to, in the bend and with the loads that the
/// hardest braking shifts. Symbols end in _b there.
[[nodiscard]] std::vector<Working> braking_workings(const Footing& footing, const Finding& finding,
                                                    double allowed_share);

/// An input of a finding by its name; NaN when it has none of that name.
[[nodiscard]] units::Amount number_of(const Finding& finding, std::string_view name);

/// Where a finding was made.
struct WorkedAt {
  const Course& course;
  const trails::Trail& trail;
  const snow::DayWeather& weather;
  std::optional<Footing> footing;  ///< nothing: ground or snow is not known
};

/// What the formula of one finding takes beside its inputs and the shared numbers.
[[nodiscard]] std::vector<Working> besides(const Finding& finding, const WorkedAt& where);

}  // namespace rimehaul::passage
