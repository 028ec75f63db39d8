// The hops of a round, each judged with what is aboard on it, different loads side by side.
#pragma once

#include <map>
#include <memory>
#include <span>
#include <tuple>
#include <vector>

#include "day/round_plan.h"
#include "passage/remembering_judge.h"
#include "search/leg_hours.h"
#include "search/route_finder.h"
#include "search/steady_judge.h"

namespace rimehaul::day {

/// Finds ways as they are expected or asked for. What is judged for one load is judged once, and
/// kept as long as it may be needed again: thousands of loads fit in memory.
class RoundHops final : public search::Hops {
 public:
  /// Holds references: both must outlive it.
  RoundHops(const passage::Judge& judge, const RoundQuestion& question);
  ~RoundHops() override;
  RoundHops(const RoundHops&) = delete;
  RoundHops& operator=(const RoundHops&) = delete;

  /// Finds them, load by load, with all of the question's crew.
  void expect(std::span<const search::HopAsked> next) override;
  /// Looked up where it was expected.
  [[nodiscard]] std::optional<search::HopDriven> driven(const search::Hop& hop,
                                                        units::Instant ready) override;
  /// The best way of a hop for an hour of departure, judged at each of its hours by itself.
  [[nodiscard]] search::RouteAnswer answer(const search::Hop& hop, units::Instant depart);
  /// Of the rig with what is aboard on a hop.
  [[nodiscard]] const passage::Judge& judge_on(const search::Hop& hop);

 private:
  /// Everything that is judged with one load.
  struct Loaded;
  struct Shelf {
    std::unique_ptr<Loaded> loaded{};
    int last_needed = 0;  ///< with how many stops called at it is aboard, at most
  };
  /// Hops that are driven with one load.
  struct SameLoad {
    Shelf& shelf;
    std::vector<search::HopAsked> asked{};
    std::vector<std::optional<search::HopDriven>> driven{};
  };
  class Finding;

  Loaded& with_load_of(const search::Hop& hop);
  Loaded& with_load_of(const search::Hop& hop, Shelf& shelf);
  [[nodiscard]] Shelf& shelf_for(search::StopSet called);
  [[nodiscard]] search::RouteQuestion question_of(const search::Hop& hop,
                                                  units::Instant depart) const;
  [[nodiscard]] std::optional<search::HopDriven> found(const search::RouteAnswer& answer,
                                                       units::Instant depart) const;
  [[nodiscard]] std::optional<search::HopDriven> drive(const search::HopAsked& asked,
                                                       Loaded& loaded) const;
  [[nodiscard]] std::optional<search::HopDriven> drive_through(const search::HopAsked& asked,
                                                               Loaded& loaded) const;
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
  [[nodiscard]] std::optional<units::Instant> open_from(const search::HopAsked& asked,
                                                        Loaded& loaded) const;

  using Cargo = std::tuple<double, double, int>;  ///< kg on bed and trailer, passengers
  const passage::Judge* judge_;
  const RoundQuestion* question_;
  passage::GroundMemory ground_;  ///< of every leg from the start, so that a crew only looks at it
  search::JunctionWays ways_;
  std::map<Cargo, Shelf> shelves_;
  std::map<search::HopAsked, std::optional<search::HopDriven>> expected_;
};

}  // namespace rimehaul::day
