#include "search/route.h"

#include "search/route_finder.h"

namespace rimehaul::search {

RouteAnswer find_routes(const trails::Network& network, const passage::LegJudge& judge,
                        const RouteQuestion& question) {
  return RouteFinder{network, judge, question.depart}.routes(question);
}

// A share and what it is held against, as in the formula.
// NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
double share_penalty(double share, double allowed) {
  if (0.0 <= share && share <= allowed && 0.0 < allowed) {
    const double part = share / allowed;
    return 1.0 / (1.0 - part * part / 2.0);
  }
  return kBarred;
}

}  // namespace rimehaul::search
