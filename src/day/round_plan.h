// A round of errands as it is to be driven: its stops in their best order, and every hop found,
// fuelled and walked again with what is aboard on it.
#pragma once

#include <variant>
#include <vector>

#include "audit/rewalk.h"
#include "base/crew.h"
#include "base/watcher.h"
#include "day/round.h"
#include "passage/judge.h"

namespace rimehaul::day {

struct RoundQuestion {
  const Round& round;
  const RoundStops& stops;
  units::Period hours;     ///< from setting out to when the rig must stand still again
  units::Seconds halt{0};  ///< 0 or more: at every stop
  search::Preference prefer = search::Preference::safest;
  std::string permitted_by;  ///< empty: nobody permits anything
  audit::WalkAgain rewalk = audit::rewalk;
  base::Watcher* watcher = nullptr;  ///< told of every load that is judged, by whoever of the crew
                                     ///< has judged it; nothing: nobody
  base::Crew* crew = nullptr;        ///< shares out the loads; nothing: one after the other
};

/// One hop, driven.
struct RoundHop {
  search::Hop hop;
  units::Instant departs;
  units::Instant arrives;
  rig::Rig rig;  ///< as loaded on it
  search::Route route;
  std::size_t places_rewalked = 0;
};

struct RoundPlan {
  std::vector<RoundHop> hops;  ///< none where nothing is to be driven
  units::Litres fuel{0};
  units::Litres fuel_to_spare;  ///< at the start, above the reserve
  /// What other orders may come to that were not followed to their end (search::StopOrder).
  std::optional<search::OrderWorth> not_ruled_out{};
};

/// A stop, or the end, that the round does not get to.
struct UnreachedStop {
  search::Hop hop;
  rig::Rig rig;  ///< as loaded on it
  units::Instant ready;
  /// Why there is no way; nothing where there is one, and too little fuel or day for it.
  std::optional<search::NoRoute> none;
};

struct NoRound {
  std::vector<RoundHop> farthest;  ///< as far as most stops are called at
  std::vector<UnreachedStop> unreached;
  units::Litres fuel_to_spare;
  std::optional<search::OrderWorth> not_ruled_out{};  ///< as above: one of them may hold
};

/// The best order of all, or what is not ruled out besides (search/stop_order.h), each hop driven
/// by the way that find_routes gives for what is aboard when the rig is ready to leave: the best as
/// things stand then, every leg judged at its own hour. Where there is none, one that opens on the
/// way is looked for (find_routes_through), and after that the first hour of leaving at which there
/// is one: the rig waits at its stop. What stays on the rig all the way is that of the judge's own.
/// Throws OurFault where walking a hop again finds it worse.
[[nodiscard]] std::variant<RoundPlan, NoRound> plan_round(const passage::Judge& judge,
                                                          const RoundQuestion& question);

}  // namespace rimehaul::day
