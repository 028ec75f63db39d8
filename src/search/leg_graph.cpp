#include "search/leg_graph.h"

#include <algorithm>
#include <utility>

#include "base/require.h"

namespace rimehaul::search {

using trails::JunctionId;
using trails::LegId;

namespace {

/// Collects arcs stage by stage, in order of the node they leave.
class Builder {
 public:
  Builder(const trails::Network& network, std::span<const JunctionId> stops)
      : network_{&network}, stops_{stops}, leg_count_{network.legs.size()} {}

  [[nodiscard]] Node node(std::size_t stage, LegId leg) const {
    return numbered(stage * leg_count_ + static_cast<std::size_t>(leg));
  }
  [[nodiscard]] Node start() const { return numbered(stage_count() * leg_count_); }
  [[nodiscard]] Node goal() const { return numbered(stage_count() * leg_count_ + 1); }

  void add_stage(std::size_t stage, const std::vector<Turn>& turns) {
    TurnIndex turn = 0;
    for (std::uint32_t leg = 0; leg < leg_count_; ++leg) {
      const TurnIndex first = turn;
      while (turn < turns.size() && turns[turn].from == LegId{leg}) {
        ++turn;
      }
      leave(stage, LegId{leg}, std::span{turns}.subspan(first, turn - first), first);
    }
  }

  void add_start() {
    for (std::uint32_t leg = 0; leg < leg_count_; ++leg) {
      if (network_->legs[leg].from == stops_.front()) {
        add({start(), node(0, LegId{leg})}, {.leg = LegId{leg}, .turn = {}});
      }
    }
  }

  [[nodiscard]] LegGraph finished() && {
    return {.graph = Graph{stage_count() * leg_count_ + 2, std::move(arcs_)},
            .starts = {start()},
            .goals = {goal()},
            .steps = std::move(steps_),
            .leg_count = leg_count_};
  }

  [[nodiscard]] std::size_t stage_count() const { return stops_.size() - 1; }

 private:
  static Node numbered(std::size_t index) { return Node{static_cast<std::uint32_t>(index)}; }

  void add(Arc arc, Step step) {
    arcs_.push_back(arc);
    steps_.push_back(step);
  }

  /// Over turns of which the first has the index `turn`.
  void leave(std::size_t stage, LegId leg, std::span<const Turn> turns, TurnIndex turn) {
    const JunctionId reached = network_->legs[static_cast<std::size_t>(leg)].to;
    const bool at_stop = reached == stops_[stage + 1];
    if (at_stop && stage + 1 == stage_count()) {
      add({node(stage, leg), goal()}, {});
      return;
    }
    if (!at_stop && stage == 0 && reached == stops_.front()) {
      return;
    }
    const std::size_t next = at_stop ? stage + 1 : stage;
    for (const Turn& into : turns) {
      add({node(stage, leg), node(next, into.to)}, {.leg = into.to, .turn = turn});
      ++turn;
    }
  }

  const trails::Network* network_;
  std::span<const JunctionId> stops_;
  std::size_t leg_count_;
  std::vector<Arc> arcs_;
  std::vector<Step> steps_;
};

Node node_of(LegId leg) {
  return Node{static_cast<std::uint32_t>(leg)};
}

std::vector<Node> numbered_from(std::size_t first, std::size_t count) {
  std::vector<Node> nodes;
  for (std::size_t i = 0; i < count; ++i) {
    nodes.push_back(Node{static_cast<std::uint32_t>(first + i)});
  }
  return nodes;
}

}  // namespace

LegGraph make_leg_graph(const trails::Network& network, std::span<const JunctionId> stops,
                        const std::vector<Turn>& turns) {
  base::require(stops.size() >= 2, "a journey needs two stops");
  base::require(std::ranges::is_sorted(turns), "the turns of a graph are not sorted");
  Builder builder{network, stops};
  for (std::size_t stage = 0; stage < builder.stage_count(); ++stage) {
    builder.add_stage(stage, turns);
  }
  builder.add_start();
  return std::move(builder).finished();
}

LegGraph make_leg_graph(const trails::Network& network, const Between& between,
                        const std::vector<Turn>& turns) {
  base::require(std::ranges::is_sorted(turns), "the turns of a graph are not sorted");
  const std::size_t leg_count = network.legs.size();
  std::vector<Arc> arcs;
  std::vector<Step> steps;
  const auto add = [&](Arc arc, Step step) {
    arcs.push_back(arc);
    steps.push_back(step);
  };
  const std::vector<Node> starts = numbered_from(leg_count, between.from.size());
  const std::vector<Node> goals = numbered_from(leg_count + starts.size(), between.to.size());
  TurnIndex turn = 0;
  for (std::uint32_t leg = 0; leg < leg_count; ++leg) {
    for (; turn < turns.size() && turns[turn].from == LegId{leg}; ++turn) {
      add({Node{leg}, node_of(turns[turn].to)}, {.leg = turns[turn].to, .turn = turn});
    }
    const auto goal = std::ranges::find(between.to, network.legs[leg].to);
    if (goal != between.to.end()) {
      add({Node{leg}, goals[static_cast<std::size_t>(goal - between.to.begin())]}, {});
    }
  }
  for (std::size_t i = 0; i < starts.size(); ++i) {
    for (std::uint32_t leg = 0; leg < leg_count; ++leg) {
      if (network.legs[leg].from == between.from[i]) {
        add({starts[i], Node{leg}}, {.leg = LegId{leg}, .turn = {}});
      }
    }
  }
  return {.graph = Graph{leg_count + starts.size() + goals.size(), std::move(arcs)},
          .starts = starts,
          .goals = goals,
          .steps = std::move(steps),
          .leg_count = leg_count};
}

LegGraph make_leg_graph(std::span<const LegId> way) {
  base::require(!way.empty(), "a way has no legs");
  const auto count = static_cast<std::uint32_t>(way.size());
  const Node start{count};
  const Node goal{count + 1};
  std::vector<Arc> arcs;
  std::vector<Step> steps;
  for (std::uint32_t i = 0; i + 1 < count; ++i) {
    arcs.push_back({Node{i}, Node{i + 1}});
    steps.push_back({.leg = way[i + 1], .turn = i});
  }
  arcs.push_back({Node{count - 1}, goal});
  steps.push_back({});
  arcs.push_back({start, Node{0}});
  steps.push_back({.leg = way.front(), .turn = {}});
  return {.graph = Graph{count + std::size_t{2}, std::move(arcs)},
          .starts = {start},
          .goals = {goal},
          .steps = std::move(steps),
          .leg_count = way.size()};
}

std::optional<Path> cheapest_way(const LegGraph& legs, const Prices& prices) {
  const Journey journey = legs.journey();
  const Reach to_goal = legs.graph.reach_to(journey.to, prices, Combining::sum);
  return path_to_goal(legs.graph, prices, to_goal, journey.from);
}

std::vector<LegId> legs_of(const LegGraph& legs, const Path& path) {
  std::vector<LegId> found;
  for (const ArcIndex arc : path.arcs) {
    if (legs.steps[arc].leg.has_value()) {
      found.push_back(*legs.steps[arc].leg);
    }
  }
  return found;
}

}  // namespace rimehaul::search
