// Which loads open a whole way that is blocked, all else as it stands.
#pragma once

#include "passage/open_loads.h"
#include "search/trials.h"

namespace rimehaul::search {

/// A way judged as if every leg of it were entered at one hour.
struct WayAtHour {
  std::vector<trails::LegId> legs;
  units::Instant entry;
};

struct WayLoads {
  passage::OpenLoads loads{};
  bool and_decision = false;  ///< with some of them a named person's decision is needed besides
};

/// The loads, tried as loads_that_open tries them, with which no leg and no turn of the way is
/// closed. None where something closes it that does not depend on the load, or where decisions
/// alone are wanting. The trials must be of this rig.
[[nodiscard]] WayLoads loads_that_open_way(Trials& trials, const rig::Rig& rig,
                                           const WayAtHour& way);

}  // namespace rimehaul::search
