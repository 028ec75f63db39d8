// When each step of a leg graph may be taken, and what it then takes.
#pragma once

#include "search/leg_graph.h"
#include "search/leg_hours.h"

namespace rimehaul::search {

/// Hours of entry for which a step may be taken, always with the same outcome.
struct StepPiece {
  units::Period entries;
  std::int64_t lasts_s = 0;  ///< until the end of the leg, rounded up to whole seconds
  double share = 0.0;        ///< the larger of that of the leg and of the turn into it
  double allowed_share = 0.0;
  double fuel_l = 0.0;
};

/// A question's ground: the graph of its ways, the turns that it was made from, and at which of its
/// nodes a rig may wait.
struct TimedGraph {
  const LegGraph& legs;
  const std::vector<Turn>& turns;
  /// By node of a stage: whether its leg ends at a station.
  const std::vector<bool>& ends_at_station;
};

/// By leg; a junction that trails reach with no station has nowhere to wait.
[[nodiscard]] std::vector<bool> legs_to_stations(const trails::Network& network);

/// Steps that may be taken with a permission, by the arcs of a graph; worked out as they are asked
/// for. What may not be taken, or goes over a largest share, has no piece.
class StepHours {
 public:
  /// Holds references: all must outlive it.
  StepHours(const TimedGraph& graph, LegHours& hours, Permission permission);

  /// Arcs that enter a leg alone. In order, none overlap.
  [[nodiscard]] const std::vector<StepPiece>& of(ArcIndex arc);
  /// What the step comes to then. Throws OurFault where it may not be taken.
  [[nodiscard]] const StepPiece& at(ArcIndex arc, units::Instant entry);
  [[nodiscard]] const TimedGraph& graph() const { return graph_; }
  [[nodiscard]] units::Period horizon() const { return hours_->horizon(); }

  /// From now on steps with a larger share may not be taken.
  void hold_to(double largest_share);

 private:
  [[nodiscard]] std::vector<StepPiece> worked_out(const Step& step);

  TimedGraph graph_;
  LegHours* hours_;
  Permission permission_;
  double largest_share_ = kBarred;
  std::vector<std::optional<std::vector<StepPiece>>> pieces_;  ///< by arc
};

}  // namespace rimehaul::search
