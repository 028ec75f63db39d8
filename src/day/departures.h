// Windows of departure for a trip, one way or there and back with another load.
#pragma once

#include <optional>

#include "day/departure_hours.h"
#include "day/trip.h"
#include "search/timed_routes.h"

namespace rimehaul::day {

/// What is asked of the hours of a trip.
struct DeparturesQuestion {
  Trip trip;
  units::Period hours;  ///< looked at; a trip that leaves them counts as closed
  units::Seconds late;  ///< 0 or more: a rig that sets out so much late still arrives
  search::Permission permission = search::Permission::nobody;
  std::optional<units::Instant> arrive_by{};
};

/// The way back: the same stations, or the same way, from the last to the first, setting out at the
/// earliest so long after arriving, and no sooner than it is open; the rig waits at the station
/// until then.
struct WayBack {
  const passage::LegJudge& judge;  ///< of the rig with the load that it returns with
  units::Seconds turn_round;       ///< 0 or more
};

/// The windows of a trip (search/windows.h), on a given way of that way alone: of there and back,
/// where a way back is asked for. Setting out late by any time up to the reserve is open as well,
/// for the way back too. Stations must have junctions (search::find_routes tells when not; nothing
/// is open then). Fuel is not asked for here.
[[nodiscard]] Departures departures_of(const trails::Network& network, search::LegHours& out,
                                       const DeparturesQuestion& question,
                                       const std::optional<WayBack>& back);

}  // namespace rimehaul::day
