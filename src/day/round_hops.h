// The hops of a round, each judged with what is aboard on it.
#pragma once

#include <map>
#include <memory>
#include <tuple>

#include "day/round_plan.h"
#include "passage/remembering_judge.h"
#include "search/leg_hours.h"
#include "search/route_finder.h"
#include "search/steady_judge.h"

namespace rimehaul::day {

/// Finds ways as they are asked for; what is judged for one load is judged once.
class RoundHops final : public search::Hops {
 public:
  /// Holds references: both must outlive it.
  RoundHops(const passage::Judge& judge, const RoundQuestion& question);
  ~RoundHops() override;
  RoundHops(const RoundHops&) = delete;
  RoundHops& operator=(const RoundHops&) = delete;

  [[nodiscard]] std::optional<search::HopDriven> driven(const search::Hop& hop,
                                                        units::Instant ready) override;
  /// The best way of a hop for an hour of departure, judged at each of its hours by itself.
  [[nodiscard]] search::RouteAnswer answer(const search::Hop& hop, units::Instant depart);
  /// Of the rig with what is aboard on a hop.
  [[nodiscard]] const passage::Judge& judge_on(const search::Hop& hop);

 private:
  /// Everything that is judged with one load.
  struct Loaded;

  Loaded& with_load_of(const search::Hop& hop);
  [[nodiscard]] search::RouteQuestion question_of(const search::Hop& hop,
                                                  units::Instant depart) const;
  [[nodiscard]] std::optional<search::HopDriven> found(const search::RouteAnswer& answer,
                                                       units::Instant depart) const;
  [[nodiscard]] std::optional<search::HopDriven> driven_through(const search::Hop& hop,
                                                                units::Instant ready);
  /// A judge and the hours of its legs.
  struct Hourly {
    const passage::LegJudge& judge;
    search::LegHours& hours;
  };
  /// As things stand when it begins; where there is no way then, one that opens on the way.
  [[nodiscard]] search::RouteAnswer best_way(Hourly hourly,
                                             const search::RouteQuestion& question) const;
  /// Whether legs out of the first and into the last station are open at any hour from the
  /// departure on.
  [[nodiscard]] bool may_leave_and_arrive(search::LegHours& hours,
                                          const search::RouteQuestion& question) const;
  [[nodiscard]] std::optional<units::Instant> open_from(const search::Hop& hop,
                                                        units::Instant ready);

  using Cargo = std::tuple<double, double, int>;  ///< kg on bed and trailer, passengers
  const passage::Judge* judge_;
  const RoundQuestion* question_;
  passage::GroundMemory ground_;
  search::JunctionWays ways_;
  std::map<Cargo, std::unique_ptr<Loaded>> loaded_;
  std::map<search::StopSet, Loaded*> by_called_;
};

}  // namespace rimehaul::day
