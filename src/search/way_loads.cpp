#include "search/way_loads.h"

#include <algorithm>

namespace rimehaul::search {

WayLoads loads_that_open_way(Trials& trials, const rig::Rig& rig, const WayAtHour& way) {
  std::vector<Place> places = places_along(way.legs, way.entry);
  const Trial now = trials.as_it_stands();
  const Checks closing = trials.closing(places, now);
  WayLoads found;
  if (closing.none() || !load_may_lift(closing)) {
    return found;
  }
  // What is closed as it stands is the likeliest to stay so, and one such place ends a trial.
  std::stable_partition(places.begin(), places.end(), [&](const Place& place) {
    return trials.outcome(place, now).closed.any();
  });
  const passage::OpenIf open_with{[&](const rig::Rig& other) {
    const Outcome came = trials.outcome_along(places, Trials::trial_of(other));
    const bool opens = came.closed.none();
    found.and_decision = found.and_decision || (opens && came.asks.any());
    return opens;
  }};
  found.loads = passage::loads_that_open(rig, open_with);
  return found;
}

}  // namespace rimehaul::search
