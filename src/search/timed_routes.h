// Routes when the hours matter: legs judged at the hour at which the rig comes there, from the
// first search on.
#pragma once

#include "search/fixed_way.h"
#include "search/leg_hours.h"
#include "search/route.h"
#include "search/timed_search.h"

namespace rimehaul::search {

/// Whether some leg of a network may be judged otherwise at a later moment of a period than at its
/// first.
[[nodiscard]] bool something_turns(const trails::Network& network, const passage::LegJudge& judge,
                                   units::Period during);

/// All ways of one journey, or one way alone, through the hours: judged as they are needed, for one
/// permission each.
class TimedWays {
 public:
  /// Holds a reference to the hours. Requires two junctions or more.
  TimedWays(const trails::Network& network, LegHours& hours,
            std::span<const trails::JunctionId> stops);
  TimedWays(const trails::Network& network, LegHours& hours, const FixedWay& way);

  /// What of a trip is fixed beforehand.
  struct Trip {
    Permission permission = Permission::nobody;
    units::TimeSpans arrivals_allowed;
  };
  /// The windows of departure (windows.h).
  [[nodiscard]] units::TimeSpans windows(const Trip& trip);
  /// The best way for a departure (timed_search.h), driven and timed; nothing where there is none.
  [[nodiscard]] std::optional<Route> best(const Trip& trip, units::Instant depart,
                                          Preference prefer);

 private:
  std::vector<Turn> turns_;
  LegGraph legs_;
  std::vector<bool> ends_at_station_;
  LegHours* hours_;
};

/// As find_routes, but that legs which open or close before the rig comes to them count as they are
/// then, and that it may wait at stations (timed_search.h says for what). Where nothing turns from
/// the departure until the best way of find_routes has been left, the answer is that of
/// find_routes; else the best way is looked for through the hours of the period, and the ways of
/// find_routes that truly differ come after it. The period begins no later than the departure; what
/// lies beyond it counts as closed. Nothing arrives later than the question says.
[[nodiscard]] RouteAnswer find_routes_through(const trails::Network& network, LegHours& hours,
                                              const RouteQuestion& question);
/// The same for who does not ask why there is none: empty then.
[[nodiscard]] std::vector<Route> open_routes_through(const trails::Network& network,
                                                     LegHours& hours,
                                                     const RouteQuestion& question);

}  // namespace rimehaul::search
