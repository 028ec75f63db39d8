#include "search/windows.h"

#include <algorithm>

#include "base/require.h"

namespace rimehaul::search {

using units::Instant;
using units::Period;
using units::TimeSpans;

namespace {

/// Steps tried for one hour before it is given up, and how much is then left out.
constexpr int kMostSteps = 4'000;
constexpr std::int64_t kLeftOut_s = 59;

/// The least seconds that each step ever takes; barred where it is never taken.
Prices least_seconds(StepHours& steps) {
  const LegGraph& legs = steps.graph().legs;
  Prices least;
  for (ArcIndex arc = 0; arc < legs.steps.size(); ++arc) {
    least.push_back(legs.steps[arc].leg.has_value() ? kBarred : 0.0);
    if (legs.steps[arc].leg.has_value()) {
      for (const StepPiece& piece : steps.of(arc)) {
        least.back() = std::min(least.back(), static_cast<double>(piece.lasts_s));
      }
    }
  }
  return least;
}

/// Follows the hours of Departures from leg to leg, nearest to the goal first, and turns back where
/// only legs that were driven before lead on.
class WayFinder {
 public:
  explicit WayFinder(const Departures& departures)
      : departures_{departures},
        legs_{departures.steps().graph().legs},
        used_(legs_.graph.node_count(), false) {
    const Prices least = least_seconds(departures.steps());
    const Reach reach = legs_.graph.reach_to(legs_.goals.front(), least, Combining::sum);
    for (ArcIndex arc = 0; arc < least.size(); ++arc) {
      still_to_go_.push_back(least[arc] + reach.price[index_of(legs_.graph.arcs()[arc].to)]);
    }
  }

  [[nodiscard]] std::optional<WayArcs> way_at(Node start, Instant departure) {
    way_.clear();
    steps_left_ = kMostSteps;
    std::fill(used_.begin(), used_.end(), false);
    for (const ArcIndex arc : nearest_first(start)) {
      if (departures_.entries(arc).contains(departure) && enter(arc, departure)) {
        return way_;
      }
    }
    return std::nullopt;
  }

 private:
  [[nodiscard]] std::vector<ArcIndex> nearest_first(Node node) const {
    const auto out = departures_.arcs_out_of(node);
    std::vector<ArcIndex> arcs{out.begin(), out.end()};
    std::ranges::stable_sort(arcs, {}, [&](ArcIndex arc) { return still_to_go_[arc]; });
    return arcs;
  }

  /// Whether the goal is reached over this step, entered then.
  bool enter(ArcIndex arc, Instant entry) {
    const Node node = legs_.graph.arcs()[arc].to;
    if (steps_left_ == 0 || used_[index_of(node)]) {
      return false;
    }
    --steps_left_;
    used_[index_of(node)] = true;
    way_.push_back(arc);
    if (lead_on(node, arrival(arc, entry))) {
      return true;
    }
    way_.pop_back();
    used_[index_of(node)] = false;
    return false;
  }

  bool lead_on(Node node, Instant arrived) {
    for (const ArcIndex arc : nearest_first(node)) {
      const bool into_goal = !legs_.steps[arc].leg.has_value();
      if (into_goal && departures_.arrivals_allowed().contains(arrived)) {
        way_.push_back(arc);
        return true;
      }
      if (!into_goal && enter_from(node, arc, arrived)) {
        return true;
      }
    }
    return false;
  }

  bool enter_from(Node node, ArcIndex arc, Instant arrived) {
    const TimeSpans& entries = departures_.entries(arc);
    if (entries.contains(arrived) && enter(arc, arrived)) {
      return true;
    }
    return departures_.may_wait_at(node) &&
           std::ranges::any_of(entries.periods(), [&](const Period& later) {
             return arrived < later.from && enter(arc, later.from);
           });
  }

  [[nodiscard]] Instant arrival(ArcIndex arc, Instant entry) const {
    return {entry.seconds + departures_.steps().at(arc, entry).lasts_s};
  }

  const Departures& departures_;
  const LegGraph& legs_;
  std::vector<bool> used_;
  std::vector<double> still_to_go_;  ///< by arc, at least
  WayArcs way_;
  int steps_left_ = 0;
};

}  // namespace

TimeSpans windows_from(const Departures& departures, Node start) {
  TimeSpans windows;
  TimeSpans left = departures.from(start);
  if (left.empty()) {
    return windows;
  }
  const Period horizon = departures.steps().horizon();
  WayFinder finder{departures};
  while (!left.empty()) {
    const Instant departure = left.periods().front().from;
    TimeSpans looked_at{{{departure, {departure.seconds + kLeftOut_s}}}};
    if (const auto way = finder.way_at(start, departure); way.has_value()) {
      looked_at = departures.hours_of(*way);
      base::require(looked_at.contains(departure), "a way does not hold at its own hour");
      windows = windows.united_with(looked_at);
    }
    left = left.shared_with(looked_at.gaps_in(horizon));
  }
  return windows;
}

}  // namespace rimehaul::search
