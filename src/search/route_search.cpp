#include "search/route_search.h"

#include <algorithm>
#include <utility>

namespace rimehaul::search {

using trails::LegId;

RouteSearch::RouteSearch(const trails::Network& network, const passage::LegJudge& judge,
                         Outlook& outlook, const Asked& asked)
    : network_{&network},
      outlook_{&outlook},
      question_{asked.question},
      stops_{asked.stops.begin(), asked.stops.end()},
      shared_{asked.shared},
      timekeeper_{judge, asked.question.depart} {}

const LegGraph& RouteSearch::legs() {
  if (!legs_.has_value()) {
    legs_.emplace(make_leg_graph(*network_, stops_, outlook_->turns()));
  }
  return *legs_;
}

/// As judged for the departure; judges what it takes to know that it is the best.
std::optional<std::vector<LegId>> RouteSearch::best_way() {
  std::optional<BestWays> own;
  BestWays& ways =
      shared_.has_value() ? shared_->ways : own.emplace(legs(), *outlook_, question_.prefer);
  const BestWays::Ends ends = shared_.has_value() ? shared_->ends : BestWays::Ends{};
  const auto best =
      best_judged(ways.legs(), *outlook_, [&] { return ways.way(ends, barring_.permission); });
  if (!best.has_value()) {
    return std::nullopt;
  }
  return legs_of(ways.legs(), *best);
}

PricedSteps RouteSearch::priced() {
  return priced_steps(legs(), *outlook_, question_.prefer, barring_);
}

double RouteSearch::least_worst_share(const Prices& shares) {
  const Journey journey = legs().journey();
  const Reach reach = legs().graph.reach_from(journey.from, shares, Combining::maximum);
  return reach.price[index_of(journey.to)];
}

DrivenWay RouteSearch::way_of(const Path& path) {
  DrivenWay way{.legs = legs_of(legs(), path)};
  std::set<std::pair<std::size_t, trails::JunctionId>> passed;
  for (const ArcIndex arc : path.arcs) {
    const Step& step = legs().steps[arc];
    if (!step.leg.has_value()) {
      continue;
    }
    const trails::Leg& leg = network_->legs[static_cast<std::size_t>(*step.leg)];
    const std::size_t stage = legs().stage_of(legs().graph.arcs()[arc].to);
    if (passed.empty()) {
      passed.emplace(stage, leg.from);
    }
    way.returns += passed.emplace(stage, leg.to).second ? 0 : 1;
  }
  return way;
}

void RouteSearch::keep_from(Prices prices) {
  Candidates candidates{legs().graph, std::move(prices), legs().journey()};
  int timed = 0;
  while (!has_enough() && timed < kMostTimed) {
    const std::optional<Path> path = candidates.next();
    if (!path.has_value()) {
      return;
    }
    DrivenWay way = way_of(*path);
    if (!truly_differs(*network_, way, kept_ways_)) {
      continue;
    }
    ++timed;
    auto driven = timekeeper_.drive(way.legs, barring_.permission);
    if (auto* route = std::get_if<Route>(&driven)) {
      kept_.push_back(std::move(*route));
      kept_ways_.push_back(std::move(way));
    } else {
      blocked_.push_back(std::get<Blocked>(driven));
    }
  }
}

std::vector<Route> RouteSearch::routes() {
  search_with(Permission::nobody);
  if (!has_enough() && permission_of(question_) == Permission::named_person) {
    search_with(Permission::named_person);
  }
  return std::move(kept_);
}

void RouteSearch::search_with(Permission permission) {
  barring_ = {.permission = permission, .left_out = {}};
  blocked_.clear();
  if (question_.most_alternatives == 0 && settled_by_best_alone()) {
    return;
  }
  outlook_->judge_all();
  search_all();
}

/// Whether there is no way at the departure, or the best of them is kept, as its hours keep it
/// open.
bool RouteSearch::settled_by_best_alone() {
  const std::optional<std::vector<LegId>> best = best_way();
  if (!best.has_value()) {
    return true;
  }
  auto driven = timekeeper_.drive(*best, barring_.permission);
  if (auto* route = std::get_if<Route>(&driven)) {
    kept_.push_back(std::move(*route));
    return true;
  }
  return false;
}

void RouteSearch::search_all() {
  const bool has_better = !kept_.empty();
  for (int round = 0; round < kMostRounds && kept_.empty(); ++round) {
    const std::size_t known_blocked = blocked_.size();
    const PricedSteps steps = priced();
    keep_from(steps.up_to(question_.prefer == Preference::safest ? least_worst_share(steps.shares)
                                                                 : kBarred));
    if (blocked_.size() == known_blocked) {
      break;
    }
    if (kept_.empty()) {
      for (std::size_t i = known_blocked; i < blocked_.size(); ++i) {
        barring_.left_out.insert(blocked_[i].leg);
      }
    }
  }
  if (has_better || (question_.prefer == Preference::safest && !kept_.empty())) {
    keep_from(priced().prices);
  }
}

}  // namespace rimehaul::search
