// From which hours a goal can still be reached, leg by leg and from all starts at once.
#pragma once

#include "search/step_hours.h"

namespace rimehaul::search {

/// A way by its arcs, from the first step to the one into the goal.
using WayArcs = std::vector<ArcIndex>;

/// The hours at which each step of a graph may be taken so that the goal is reached at an hour
/// allowed there: the step is taken while it may be, and on arriving the next may be taken at once,
/// or later where the leg ends at a station and the rig may wait. Worked out backwards from the
/// goal until nothing more is added; no trip leaves the horizon. Legs that close and open again are
/// what it is for: leaving later may mean arriving earlier. Such a trip may come over a leg
/// twice, as if to pass the time; see windows.h.
class Departures {
 public:
  /// Holds a reference: the steps must outlive it. Throws OurFault where the graph has several
  /// goals.
  Departures(StepHours& steps, units::TimeSpans arrivals_allowed);

  /// Hours of entry of a step into a leg.
  [[nodiscard]] const units::TimeSpans& entries(ArcIndex arc) const { return entries_[arc]; }
  /// Hours of setting out from one of the starts, over any of its steps.
  [[nodiscard]] units::TimeSpans from(Node start) const;
  [[nodiscard]] const units::TimeSpans& arrivals_allowed() const { return allowed_; }
  [[nodiscard]] StepHours& steps() const { return *steps_; }

  /// The hours of setting out for which one way holds to its end.
  [[nodiscard]] units::TimeSpans hours_of(const WayArcs& way) const;
  /// Whether a rig may wait at the end of the leg of a node.
  [[nodiscard]] bool may_wait_at(Node node) const;
  [[nodiscard]] std::span<const ArcIndex> arcs_out_of(Node node) const;

 private:
  [[nodiscard]] units::TimeSpans arrivals_at(Node node) const;
  [[nodiscard]] units::TimeSpans entries_for(ArcIndex arc, const units::TimeSpans& arrivals) const;
  [[nodiscard]] units::TimeSpans and_earlier(const units::TimeSpans& entries) const;
  void settle();

  StepHours* steps_;
  units::TimeSpans allowed_;
  std::vector<units::TimeSpans> entries_;    ///< by arc; of arcs into the goal, nothing
  std::vector<ArcIndex> arcs_;               ///< all, in order of the node they leave
  std::vector<std::size_t> first_out_;       ///< by node, its first of all arcs; and their number
  std::vector<std::vector<ArcIndex>> into_;  ///< by node
};

}  // namespace rimehaul::search
