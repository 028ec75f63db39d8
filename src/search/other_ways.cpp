#include "search/other_ways.h"

#include <algorithm>

#include "search/snow_at_start.h"

namespace rimehaul::search {

using passage::Judge;
using trails::LegId;

namespace {

/// The way that is nearest to open has the fewest barred legs of all: if it has one, all have.
bool every_way_is_barred(const NoRoute& none) {
  return !none.way.empty() && std::ranges::any_of(none.obstacles, [](const Obstacle& obstacle) {
    return std::ranges::any_of(obstacle.findings, bars);
  });
}

bool waits_for_decisions_alone(const NoRoute& none) {
  return std::ranges::none_of(none.obstacles,
                              [](const Obstacle& obstacle) { return obstacle.decision.empty(); });
}

/// Every wetness on the surface that lies where the rig would leave; then on groomed snow.
std::vector<snow::SnowState> snow_to_try(const Judge& judge, const RouteQuestion& question) {
  const auto here = snow_at_start(judge.scene(), judge.snow(), question);
  std::vector<snow::Surface> surfaces{snow::Surface::groomed};
  if (here.has_value() && here->surface != snow::Surface::groomed) {
    surfaces.insert(surfaces.begin(), here->surface);
  }
  std::vector<snow::SnowState> states;
  for (const snow::Surface surface : surfaces) {
    for (int wetness = 0; wetness < snow::kWetnessCount; ++wetness) {
      states.push_back({.wetness = static_cast<snow::Wetness>(wetness), .surface = surface});
    }
  }
  return states;
}

/// Searches again for one trial after the other, and keeps each way that is new.
class Finder {
 public:
  Finder(const NoRoute& none, Inquiry& inquiry, const Judge& judge, RouteQuestion question)
      : none_{none}, inquiry_{inquiry}, judge_{judge}, question_{std::move(question)} {
    question_.most_alternatives = 0;
    question_.permitted_by = "a named person";  // what that person must decide is told besides
  }

  /// Whether the trial finds any way, new or not.
  bool look_for(const Trial& trial) {
    const std::vector<LegId> way = way_of(trial);
    const bool known =
        way == none_.way || std::ranges::find(found_, way, &OtherWay::legs) != found_.end();
    if (!way.empty() && !known) {
      OtherWay other{way, inquiry_.opens(places_along(way, question_.depart))};
      if (other.opens.any()) {
        found_.push_back(std::move(other));
      }
    }
    return !way.empty();
  }

  /// Until there is a way in one of the states.
  void look_in_other_snow(Trial trial) {
    for (const snow::SnowState& state : snow_to_try(judge_, question_)) {
      trial.snow = state;
      if (look_for(trial)) {
        return;
      }
    }
  }

  [[nodiscard]] const std::vector<OtherWay>& found() const { return found_; }

 private:
  std::vector<LegId> way_of(const Trial& trial) {
    const passage::RememberingJudge other = inquiry_.trials().judge_of(trial);
    const RouteAnswer answer = find_routes(judge_.scene().network, other, question_);
    std::vector<LegId> way;
    if (const auto* routes = std::get_if<std::vector<Route>>(&answer)) {
      for (const RouteLeg& leg : routes->front().legs) {
        way.push_back(leg.leg);
      }
    }
    return way;
  }

  const NoRoute& none_;
  Inquiry& inquiry_;
  const Judge& judge_;
  RouteQuestion question_;
  std::vector<OtherWay> found_;
};

bool opens_in_some_snow(const OtherWay& way) {
  return !way.opens.snow.empty();
}

}  // namespace

std::vector<OtherWay> other_ways_of(const NoRoute& none, Inquiry& inquiry, const Judge& judge,
                                    const RouteQuestion& question) {
  if (every_way_is_barred(none)) {
    return {};
  }
  const rig::Rig& rig = judge.rig();
  const Trial alone = Trials::trial_of(rig::without_trailer(rig));
  Finder finder{none, inquiry, judge, question};
  if (!none.opens.loads.any()) {
    finder.look_for(Trials::trial_of(rig::without_cargo(rig)));
  }
  if (rig.trailer.has_value() && !none.opens.without_trailer) {
    finder.look_for(alone);
  }
  if (waits_for_decisions_alone(none)) {
    return finder.found();
  }
  if (none.opens.snow.empty() && std::ranges::none_of(finder.found(), opens_in_some_snow)) {
    finder.look_in_other_snow(Trials::trial_of(rig));
  }
  if (rig.trailer.has_value() && !none.opens.any() && finder.found().empty()) {
    finder.look_in_other_snow(alone);
  }
  return finder.found();
}

}  // namespace rimehaul::search
