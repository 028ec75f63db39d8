#include "search/route.h"

#include "search/blockers.h"
#include "search/route_search.h"

namespace rimehaul::search {

using trails::JunctionId;

namespace {

/// The junctions of the stations asked for, or why the question has no answer.
std::variant<std::vector<JunctionId>, NoRoute> stops_of(const trails::Network& network,
                                                        const RouteQuestion& question) {
  if (question.stations.size() < 2) {
    return NoRoute{.why = "a route needs a station to start from and one to reach",
                   .obstacles = {}};
  }
  std::vector<JunctionId> stops;
  for (const std::size_t station : question.stations) {
    if (station >= network.stations.size()) {
      return NoRoute{
          .why = "there is no station number " + std::to_string(station) + " at this site",
          .obstacles = {}};
    }
    const std::string& name = network.stations[station].name;
    const std::optional<JunctionId> junction = network.junction_of(station);
    if (!junction.has_value()) {
      return NoRoute{.why = "no trail reaches " + name, .obstacles = {}};
    }
    if (!stops.empty() && stops.back() == *junction) {
      return NoRoute{.why = "the way to " + name + " starts where it ends", .obstacles = {}};
    }
    stops.push_back(*junction);
  }
  return stops;
}

}  // namespace

RouteAnswer find_routes(const trails::Network& network, const passage::LegJudge& judge,
                        const RouteQuestion& question) {
  const auto stops = stops_of(network, question);
  if (const auto* none = std::get_if<NoRoute>(&stops)) {
    return *none;
  }
  const auto& junctions = std::get<std::vector<JunctionId>>(stops);
  Outlook outlook{network, judge, question.depart};
  RouteSearch search{network, judge, outlook, question, junctions};
  std::vector<Route> routes = search.routes();
  if (!routes.empty()) {
    return routes;
  }
  if (!search.blocked().empty()) {
    return closed_by_the_hour(network, question, search.blocked());
  }
  return what_blocks(network, judge, outlook, question, junctions);
}

}  // namespace rimehaul::search
