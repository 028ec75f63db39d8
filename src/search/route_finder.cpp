#include "search/route_finder.h"

#include <algorithm>
#include <utility>

#include "base/require.h"
#include "search/blockers.h"
#include "search/stops.h"

namespace rimehaul::search {

using trails::JunctionId;

namespace {

std::optional<std::size_t> place_in(const std::vector<JunctionId>& junctions, JunctionId junction) {
  const auto found = std::ranges::find(junctions, junction);
  if (found == junctions.end()) {
    return std::nullopt;
  }
  return static_cast<std::size_t>(found - junctions.begin());
}

}  // namespace

JunctionWays ways_between(const trails::Network& network, Between between) {
  LegGraph legs = make_leg_graph(network, between, turns_of(network));
  return {.between = std::move(between), .legs = std::move(legs)};
}

RouteFinder::RouteFinder(const trails::Network& network, const passage::LegJudge& judge,
                         units::Instant depart)
    : network_{&network}, judge_{&judge}, depart_{depart}, outlook_{network, judge, depart} {}

RouteFinder::RouteFinder(const trails::Network& network, const passage::LegJudge& judge,
                         units::Instant depart, const JunctionWays& shared)
    : RouteFinder{network, judge, depart} {
  shared_ = &shared;
}

RouteSearch RouteFinder::search_for(const RouteQuestion& question,
                                    std::span<const JunctionId> stops) {
  base::require(question.depart == depart_, "a question is asked for another hour");
  Asked asked{.question = question, .stops = stops};
  if (const auto ends = shared_ends(question, stops); ends.has_value()) {
    asked.shared.emplace(SharedWays{shared_ways(question.prefer), *ends});
  }
  return {*network_, *judge_, outlook_, asked};
}

RouteAnswer RouteFinder::routes(const RouteQuestion& question) {
  const auto stops = stops_of(*network_, question);
  if (const auto* none = std::get_if<NoRoute>(&stops)) {
    return *none;
  }
  const auto& junctions = std::get<std::vector<JunctionId>>(stops);
  RouteSearch search = search_for(question, junctions);
  std::vector<Route> routes = search.routes();
  if (!routes.empty()) {
    return routes;
  }
  if (!search.blocked().empty()) {
    return closed_by_the_hour(*network_, question, search.blocked());
  }
  return what_blocks(*network_, *judge_, outlook_, question, junctions);
}

std::vector<Route> RouteFinder::open_routes(const RouteQuestion& question) {
  const auto stops = stops_of(*network_, question);
  const auto* junctions = std::get_if<std::vector<JunctionId>>(&stops);
  return junctions != nullptr ? search_for(question, *junctions).routes() : std::vector<Route>{};
}

std::optional<BestWays::Ends> RouteFinder::shared_ends(const RouteQuestion& question,
                                                       std::span<const JunctionId> stops) const {
  if (shared_ == nullptr || stops.size() != 2 || question.most_alternatives > 0) {
    return std::nullopt;
  }
  const auto start = place_in(shared_->between.from, stops[0]);
  const auto goal = place_in(shared_->between.to, stops[1]);
  if (!start.has_value() || !goal.has_value()) {
    return std::nullopt;
  }
  return BestWays::Ends{.start = *start, .goal = *goal};
}

BestWays& RouteFinder::shared_ways(Preference prefer) {
  return ways_.try_emplace(prefer, shared_->legs, outlook_, prefer).first->second;
}

}  // namespace rimehaul::search
