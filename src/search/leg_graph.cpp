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

  void add_stage(std::size_t stage, const std::vector<bool>& drivable,
                 const std::vector<TurnFacts>& turns) {
    auto turn = turns.begin();
    for (std::uint32_t leg = 0; leg < leg_count_; ++leg) {
      const auto first = turn;
      turn = std::find_if(turn, turns.end(),
                          [&](const TurnFacts& facts) { return facts.turn.from != LegId{leg}; });
      if (drivable[leg]) {
        leave(stage, LegId{leg}, {first, turn});
      }
    }
  }

  void add_start(const std::vector<bool>& drivable) {
    for (std::uint32_t leg = 0; leg < leg_count_; ++leg) {
      if (drivable[leg] && network_->legs[leg].from == stops_.front()) {
        add({start(), node(0, LegId{leg})}, {.leg = LegId{leg}});
      }
    }
  }

  [[nodiscard]] LegGraph finished() && {
    return {.graph = Graph{stage_count() * leg_count_ + 2, std::move(arcs_)},
            .journey = {.from = start(), .to = goal()},
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

  void leave(std::size_t stage, LegId leg, std::span<const TurnFacts> turns) {
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
    for (const TurnFacts& facts : turns) {
      add({node(stage, leg), node(next, facts.turn.to)},
          {.leg = facts.turn.to, .turn_verdict = facts.verdict, .turn_share = facts.share});
    }
  }

  const trails::Network* network_;
  std::span<const JunctionId> stops_;
  std::size_t leg_count_;
  std::vector<Arc> arcs_;
  std::vector<Step> steps_;
};

}  // namespace

LegGraph make_leg_graph(const trails::Network& network, std::span<const JunctionId> stops,
                        const std::vector<bool>& drivable, const std::vector<TurnFacts>& turns) {
  base::require(stops.size() >= 2, "a journey needs two stops");
  base::require(drivable.size() == network.legs.size(), "not one answer per leg");
  Builder builder{network, stops};
  for (std::size_t stage = 0; stage < builder.stage_count(); ++stage) {
    builder.add_stage(stage, drivable, turns);
  }
  builder.add_start(drivable);
  return std::move(builder).finished();
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
