// A way that is driven as it is asked for, leg by leg: no other is looked for.
#pragma once

#include <variant>

#include "search/route.h"
#include "search/usable.h"

namespace rimehaul::search {

/// Legs in driving order, one or more, each beginning where the one before it ends.
struct FixedWay {
  std::vector<trails::LegId> legs;

  friend bool operator==(const FixedWay&, const FixedWay&) = default;
};

/// The same way back: the opposite legs, the last one first.
[[nodiscard]] FixedWay back_along(const FixedWay& way);

/// The way driven from an hour on, every leg and turn judged at the hour at which the rig comes
/// there. Where some of it may not be driven: all that stands in it, nearest to open first, what
/// comes after a closed leg at the hour at which that would be driven through, or reached where
/// nobody knows how long it takes. Throws OurFault where the way has no legs.
[[nodiscard]] std::variant<Route, NoRoute> drive_fixed(const passage::LegJudge& judge,
                                                       const FixedWay& way, units::Instant depart,
                                                       Permission permission);

}  // namespace rimehaul::search
