#include "search/departures.h"

#include <algorithm>
#include <deque>
#include <numeric>

#include "base/require.h"

namespace rimehaul::search {

using units::Period;
using units::TimeSpans;

Departures::Departures(StepHours& steps, TimeSpans arrivals_allowed)
    : steps_{&steps}, allowed_{std::move(arrivals_allowed)} {
  const LegGraph& legs = steps.graph().legs;
  base::require(legs.goals.size() == 1, "departures are reckoned for one goal");
  const std::vector<Arc>& arcs = legs.graph.arcs();
  entries_.resize(arcs.size());
  into_.resize(legs.graph.node_count());
  arcs_.resize(arcs.size());
  std::iota(arcs_.begin(), arcs_.end(), ArcIndex{0});
  first_out_.assign(legs.graph.node_count() + 1, 0);
  for (ArcIndex arc = 0; arc < arcs.size(); ++arc) {
    into_[index_of(arcs[arc].to)].push_back(arc);
    ++first_out_[index_of(arcs[arc].from) + 1];
  }
  std::partial_sum(first_out_.begin(), first_out_.end(), first_out_.begin());
  settle();
}

std::span<const ArcIndex> Departures::arcs_out_of(Node node) const {
  const std::size_t first = first_out_[index_of(node)];
  return std::span{arcs_}.subspan(first, first_out_[index_of(node) + 1] - first);
}

bool Departures::may_wait_at(Node node) const {
  const TimedGraph& graph = steps_->graph();
  const std::size_t leg = index_of(node) % graph.legs.leg_count;
  return graph.ends_at_station[leg];
}

TimeSpans Departures::and_earlier(const TimeSpans& entries) const {
  return entries.empty() ? TimeSpans{}
                         : TimeSpans{{{steps_->horizon().from, entries.periods().back().to}}};
}

/// Hours at which the end of the leg of a node may be reached, so that some step leads on.
TimeSpans Departures::arrivals_at(Node node) const {
  const LegGraph& legs = steps_->graph().legs;
  TimeSpans arrivals;
  for (const ArcIndex arc : arcs_out_of(node)) {
    const bool into_goal = !legs.steps[arc].leg.has_value();
    const TimeSpans& on = into_goal ? allowed_ : entries_[arc];
    arrivals = arrivals.united_with(!into_goal && may_wait_at(node) ? and_earlier(on) : on);
  }
  return arrivals;
}

TimeSpans Departures::entries_for(ArcIndex arc, const TimeSpans& arrivals) const {
  std::vector<Period> entries;
  for (const StepPiece& piece : steps_->of(arc)) {
    const TimeSpans in_time =
        arrivals.later_by(-piece.lasts_s).shared_with(TimeSpans{{piece.entries}});
    entries.insert(entries.end(), in_time.periods().begin(), in_time.periods().end());
  }
  return TimeSpans{std::move(entries)};
}

/// The legs that lead to a node are looked at again whenever hours are added after it. Hours are
/// never taken away and are whole seconds of the horizon, so this ends.
void Departures::settle() {
  const LegGraph& legs = steps_->graph().legs;
  std::deque<Node> changed;
  std::vector<bool> waiting(legs.graph.node_count(), false);
  const auto look_again = [&](Node node) {
    if (!waiting[index_of(node)]) {
      waiting[index_of(node)] = true;
      changed.push_back(node);
    }
  };
  for (const ArcIndex arc : into_[index_of(legs.goals.front())]) {
    look_again(legs.graph.arcs()[arc].from);
  }
  while (!changed.empty()) {
    const Node node = changed.front();
    changed.pop_front();
    waiting[index_of(node)] = false;
    const TimeSpans arrivals = arrivals_at(node);
    for (const ArcIndex arc : into_[index_of(node)]) {
      TimeSpans entries = entries_for(arc, arrivals);
      if (entries == entries_[arc]) {
        continue;
      }
      entries_[arc] = std::move(entries);
      if (legs.steps[arc].turn.has_value()) {
        look_again(legs.graph.arcs()[arc].from);
      }
    }
  }
}

TimeSpans Departures::from(Node start) const {
  TimeSpans departures;
  for (const ArcIndex arc : arcs_out_of(start)) {
    departures = departures.united_with(entries_[arc]);
  }
  return departures;
}

TimeSpans Departures::hours_of(const WayArcs& way) const {
  const LegGraph& legs = steps_->graph().legs;
  TimeSpans hours = allowed_;
  for (std::size_t i = way.size(); i > 0; --i) {
    const ArcIndex arc = way[i - 1];
    if (!legs.steps[arc].leg.has_value()) {
      continue;  // into the goal
    }
    hours = entries_for(arc, hours);
    const Arc ends = legs.graph.arcs()[arc];
    if (legs.steps[arc].turn.has_value() && may_wait_at(ends.from)) {
      hours = and_earlier(hours);
    }
  }
  return hours;
}

}  // namespace rimehaul::search
