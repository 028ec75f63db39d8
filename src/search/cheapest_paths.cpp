#include "search/cheapest_paths.h"

#include <algorithm>
#include <tuple>
#include <utility>

namespace rimehaul::search {

bool CheapestPaths::Candidate::operator<(const Candidate& other) const {
  return std::tie(path.price, path.arcs) < std::tie(other.path.price, other.path.arcs);
}

CheapestPaths::CheapestPaths(const Graph& graph, Prices prices, Journey journey)
    : graph_{&graph}, prices_{std::move(prices)}, journey_{journey} {
  Reach to_goal = graph.reach_to(journey.to, prices_, Combining::sum);
  passed_.assign(graph.node_count(), false);
  if (auto best = path_to_goal(graph, prices_, to_goal, journey.from); best.has_value()) {
    candidates_.insert({.path = *std::move(best), .leaves_at = 0});
  }
  still_to_go_ = std::move(to_goal.price);
}

std::optional<Path> CheapestPaths::next() {
  if (candidates_.empty()) {
    return std::nullopt;
  }
  const Candidate cheapest = std::move(candidates_.extract(candidates_.begin()).value());
  accepted_.push_back(cheapest.path);
  branch_off(cheapest);
  return cheapest.path;
}

void CheapestPaths::branch_off(const Candidate& accepted) {
  const std::vector<ArcIndex>& arcs = accepted.path.arcs;
  passed_.assign(passed_.size(), false);
  for (std::size_t place = 0; place < arcs.size(); ++place) {
    passed_[index_of(graph_->arcs()[arcs[place]].from)] = true;
    if (place >= accepted.leaves_at) {
      branch_at(accepted, place);
    }
  }
}

void CheapestPaths::branch_at(const Candidate& accepted, std::size_t place) {
  const auto kept = std::span{accepted.path.arcs}.first(place);
  std::vector<ArcIndex> taken;  // by accepted paths that begin alike
  for (const Path& path : accepted_) {
    if (path.arcs.size() > place && std::ranges::equal(kept, std::span{path.arcs}.first(place))) {
      taken.push_back(path.arcs[place]);
    }
  }
  const Node from = graph_->arcs()[accepted.path.arcs[place]].from;
  const auto rest = graph_->cheapest_path({.from = from, .to = journey_.to}, prices_,
                                          {.nodes = passed_, .arcs = taken}, still_to_go_);
  if (!rest.has_value()) {
    return;
  }
  Candidate candidate{.path = {}, .leaves_at = place};
  candidate.path.arcs.assign(kept.begin(), kept.end());
  candidate.path.arcs.insert(candidate.path.arcs.end(), rest->arcs.begin(), rest->arcs.end());
  candidate.path.price = price_along(candidate.path.arcs, prices_);
  candidates_.insert(std::move(candidate));
}

}  // namespace rimehaul::search
