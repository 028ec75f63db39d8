// The best way for one departure when legs close and open on the way.
#pragma once

#include "search/departures.h"
#include "search/route.h"
#include "search/timing.h"

namespace rimehaul::search {

/// Searches forwards from one departure over (leg, hour of its end), and keeps to hours from which
/// the goal can still be reached. No leg is driven twice in a stage of the journey.
///
/// Ways that wait nowhere come first: safest, those with the least possible worst share, then of
/// these the least time weighted by the penalty on share; least fuel, the least fuel. Where there
/// is none, ways that wait at stations: safest, the least weighted time, a wait counted as it
/// lasts; least fuel, the least fuel. Quickest is the earliest arrival, waiting or not, and no wait
/// where that is as early.
///
/// The best of all, but for two things. Of two ways to the end of one leg at one second only the
/// better is followed, which matters where only the other has left a leg undriven that must be
/// taken later. And a wait ends when the next leg opens towards the goal or is judged otherwise,
/// not at a second between, at which a leg farther on might be judged more mildly.
class TimedSearch {
 public:
  /// Holds a reference: what is known of the departures must outlive it.
  explicit TimedSearch(const Departures& departures) : departures_{&departures} {}

  /// The legs of the best way and when each is entered; none where there is no way.
  [[nodiscard]] std::vector<TimedLeg> best(Node start, units::Instant depart,
                                           Preference prefer) const;

 private:
  const Departures* departures_;
};

}  // namespace rimehaul::search
