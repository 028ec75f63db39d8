// The hops of a round that are driven with one load.
#pragma once

#include <map>
#include <optional>
#include <utility>
#include <vector>

#include "day/brief_judge.h"
#include "day/round_plan.h"
#include "search/leg_hours.h"
#include "search/route_finder.h"
#include "search/steady_judge.h"

namespace rimehaul::day {

/// From one station to another.
using Stations = std::pair<std::size_t, std::size_t>;

/// What hops of different loads have in common.
struct SharedByLoads {
  const passage::Judge& as_it_stays;
  const RoundQuestion& question;
  const search::JunctionWays& ways;
  passage::GroundMemory& ground;  ///< of every leg
};

/// Judges what one load comes to, and finds its ways; remembers both.
class LoadHops {
 public:
  /// Holds references: all must outlive it.
  LoadHops(rig::Rig loaded, const SharedByLoads& shared);
  LoadHops(const LoadHops&) = delete;
  LoadHops& operator=(const LoadHops&) = delete;

  /// When the rig is ready to leave.
  [[nodiscard]] std::optional<search::HopDriven> driven(Stations ends, units::Instant ready);
  /// The best way for an hour of departure, judged at each of its hours by itself.
  [[nodiscard]] search::RouteAnswer answer(Stations ends, units::Instant depart);
  /// The last hour of the round at which some leg is judged otherwise than before; nothing: none.
  [[nodiscard]] std::optional<units::Instant> last_turn() const { return last_turn_; }
  [[nodiscard]] const passage::Judge& judge() const { return judge_; }

 private:
  [[nodiscard]] search::RouteQuestion question_of(Stations ends, units::Instant depart) const;
  [[nodiscard]] std::optional<search::HopDriven> driven_at_first(Stations ends);
  [[nodiscard]] std::optional<search::HopDriven> driven_through(Stations ends,
                                                                units::Instant ready);
  [[nodiscard]] std::optional<search::HopDriven> driven_at(Stations ends, units::Instant depart);
  [[nodiscard]] std::optional<units::Instant> open_from(Stations ends, units::Instant ready);
  [[nodiscard]] units::TimeSpans windows_from(Stations ends, units::Instant ready);
  [[nodiscard]] bool may_leave_and_arrive(Stations ends, units::Instant from);

  const RoundQuestion* round_;
  rig::Rig rig_;
  passage::Judge judge_;
  passage::RememberingJudge remembering_;  ///< for answers that are told
  BriefJudge brief_;
  search::SteadyJudge steady_;
  search::LegHours hours_;
  search::RouteFinder finder_;  ///< for the first hour
  std::optional<units::Instant> last_turn_;
  /// Where nothing turns, as if it were driven at the first hour.
  std::map<Stations, std::optional<search::HopDriven>> at_first_;
  /// Of departure, of trips that are over in time; with hours of arrival from one on.
  struct Windows {
    units::Instant from;
    units::TimeSpans windows;
  };
  std::map<Stations, Windows> windows_;  ///< of ways that were looked for
};

}  // namespace rimehaul::day
