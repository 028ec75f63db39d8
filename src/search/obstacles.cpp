#include "search/obstacles.h"

#include <algorithm>
#include <utility>

#include "search/causes.h"
#include "search/inquiry.h"
#include "search/other_ways.h"
#include "search/timing.h"

namespace rimehaul::search {

using passage::Judge;

namespace {

Place place_of(const Obstacle& obstacle) {
  return {.leg = obstacle.leg, .turn_from = obstacle.turn_from, .entry = obstacle.entry};
}

}  // namespace

NoRoute explain_obstacles(NoRoute none, const Judge& judge, const RouteQuestion& question,
                          base::Watcher* watcher) {
  if (none.obstacles.empty()) {
    return none;
  }
  if (watcher != nullptr) {
    watcher->parts_to_come(none.obstacles.size() + 1);  // and what is asked of all of them
  }
  Inquiry inquiry{judge, permission_of(question)};
  for (Obstacle& obstacle : none.obstacles) {
    obstacle.findings = inquiry.trials().not_passing(place_of(obstacle));
    obstacle.opens = inquiry.opens({place_of(obstacle)});
    if (watcher != nullptr) {
      watcher->part_done();
    }
  }
  none.causes = causes_of(none, judge.allowed_share());
  for (Cause& cause : none.causes) {
    std::vector<Place> places;
    for (const std::size_t index : cause.obstacles) {
      places.push_back(place_of(none.obstacles[index]));
    }
    cause.lifts = inquiry.lifts(cause.finding.check, places);
  }
  if (!none.way.empty()) {
    none.opens = inquiry.opens(places_along(none.way, question.depart));
  }
  none.other_ways = other_ways_of(none, inquiry, judge, question);
  return none;
}

}  // namespace rimehaul::search
