// The hops of a round, each judged with what is aboard on it, different loads side by side.
#pragma once

#include <memory>
#include <set>
#include <span>
#include <tuple>

#include "day/load_hops.h"

namespace rimehaul::day {

/// Finds ways as they are expected or asked for. What is judged for one load is judged once, and
/// kept as long as it may be needed again: thousands of loads fit in memory.
class RoundHops final : public search::Hops {
 public:
  /// Holds references: both must outlive it.
  RoundHops(const passage::Judge& judge, const RoundQuestion& question);

  /// Finds them, load by load, with all of the question's crew.
  void expect(std::span<const search::HopAsked> next) override;
  /// Looked up where it was expected.
  [[nodiscard]] std::optional<search::HopDriven> driven(const search::Hop& hop,
                                                        units::Instant ready) override;
  /// Of all loads that were aboard on a hop.
  [[nodiscard]] std::optional<units::Instant> last_turn() const override;
  /// By the least that each leg may take (LegJudge::at_best); with share 0, and as if no leg were
  /// closed.
  [[nodiscard]] std::optional<search::HopAtBest> at_best(const search::Hop& hop) override;
  /// The best way of a hop for an hour of departure, judged at each of its hours by itself.
  [[nodiscard]] search::RouteAnswer answer(const search::Hop& hop, units::Instant depart);
  /// Of the rig with what is aboard on a hop.
  [[nodiscard]] const passage::Judge& judge_on(const search::Hop& hop);

 private:
  struct Shelf {
    std::unique_ptr<LoadHops> loaded{};
    int last_needed = 0;  ///< with how many stops called at it is aboard, at most
    std::optional<units::Instant> last_turn{};
    std::set<search::StopSet> driven_once{};  ///< on from where these have been called at
  };
  /// Hops that are driven with one load.
  struct SameLoad {
    Shelf& shelf;
    std::vector<search::HopAsked> asked{};
    std::vector<std::optional<search::HopDriven>> driven{};
  };
  class Finding;

  [[nodiscard]] LoadHops& with_load_of(const search::Hop& hop);
  [[nodiscard]] LoadHops& with_load_of(const search::Hop& hop, Shelf& shelf);
  [[nodiscard]] Shelf& shelf_for(search::StopSet called);
  [[nodiscard]] Stations ends_of(const search::Hop& hop) const;

  using Cargo = std::tuple<double, double, int>;  ///< kg on bed and trailer, passengers
  const passage::Judge* judge_;
  const RoundQuestion* question_;
  passage::GroundMemory ground_;  ///< of every leg from the start, so that a crew only looks at it
  search::JunctionWays ways_;
  std::map<Cargo, Shelf> shelves_;
  std::map<search::HopAsked, std::optional<search::HopDriven>> expected_;
  std::map<Stations, std::optional<search::HopAtBest>> at_best_;
};

}  // namespace rimehaul::day
