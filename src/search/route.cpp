#include "search/route.h"

#include "search/route_finder.h"

namespace rimehaul::search {

RouteAnswer find_routes(const trails::Network& network, const passage::LegJudge& judge,
                        const RouteQuestion& question) {
  return RouteFinder{network, judge, question.depart}.routes(question);
}

std::vector<Route> open_routes(const trails::Network& network, const passage::LegJudge& judge,
                               const RouteQuestion& question) {
  return RouteFinder{network, judge, question.depart}.open_routes(question);
}

}  // namespace rimehaul::search
