#include "search/candidates.h"

#include <algorithm>
#include <utility>

namespace rimehaul::search {

namespace {

/// The cheapest ways from the start and to the goal.
struct Trees {
  const Reach& from_start;
  const Reach& to_goal;
};

/// The cheapest path over one arc, where the two trees meet.
Path path_over(const Graph& graph, ArcIndex arc, const Trees& trees) {
  Path path;
  for (ArcIndex back = trees.from_start.arc[index_of(graph.arcs()[arc].from)]; back != kNoArc;
       back = trees.from_start.arc[index_of(graph.arcs()[back].from)]) {
    path.arcs.push_back(back);
  }
  std::ranges::reverse(path.arcs);
  for (ArcIndex ahead = arc; ahead != kNoArc;
       ahead = trees.to_goal.arc[index_of(graph.arcs()[ahead].to)]) {
    path.arcs.push_back(ahead);
  }
  return path;
}

bool is_loopless(const Graph& graph, const Path& path) {
  std::set<Node> passed;
  return std::ranges::all_of(
      path.arcs, [&](ArcIndex arc) { return passed.insert(graph.arcs()[arc].to).second; });
}

}  // namespace

Candidates::Candidates(const Graph& graph, Prices prices, Journey journey)
    : graph_{&graph},
      prices_{std::move(prices)},
      journey_{journey},
      by_yen_{graph, prices_, journey} {}

std::optional<Path> Candidates::next() {
  while (true) {
    std::optional<Path> path = cheaper_of_both();
    if (!path.has_value() || given_.insert(path->arcs).second) {
      return path;
    }
  }
}

std::optional<Path> Candidates::cheaper_of_both() {
  if (!yen_head_.has_value() && yen_taken_ < kMostByYen) {
    yen_head_ = by_yen_.next();
    ++yen_taken_;
  }
  if (yen_taken_ == 1) {  // the best is often all that is wanted
    return std::exchange(yen_head_, std::nullopt);
  }
  if (!by_arc_known_) {
    find_by_arc();
  }
  const bool arc_is_cheaper =
      !by_arc_.empty() && (!yen_head_.has_value() || by_arc_.back().price < yen_head_->price);
  if (!arc_is_cheaper) {
    return std::exchange(yen_head_, std::nullopt);
  }
  Path path = std::move(by_arc_.back());
  by_arc_.pop_back();
  return path;
}

void Candidates::find_by_arc() {
  by_arc_known_ = true;
  const Reach from_start = graph_->reach_from(journey_.from, prices_, Combining::sum);
  const Reach to_goal = graph_->reach_to(journey_.to, prices_, Combining::sum);
  std::vector<std::pair<double, ArcIndex>> order;
  for (ArcIndex arc = 0; arc < prices_.size(); ++arc) {
    const Arc ends = graph_->arcs()[arc];
    const double price =
        from_start.price[index_of(ends.from)] + prices_[arc] + to_goal.price[index_of(ends.to)];
    if (price < kBarred) {
      order.emplace_back(price, arc);
    }
  }
  std::ranges::sort(order);
  std::set<std::vector<ArcIndex>> found;
  for (const auto& [price, arc] : order) {
    if (found.size() == kMostByArc) {
      break;
    }
    Path path = path_over(*graph_, arc, {from_start, to_goal});
    if (is_loopless(*graph_, path) && found.insert(path.arcs).second) {
      path.price = price_along(path.arcs, prices_);
      by_arc_.push_back(std::move(path));
    }
  }
  std::ranges::reverse(by_arc_);
}

}  // namespace rimehaul::search
