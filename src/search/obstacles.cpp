#include "search/obstacles.h"

#include <algorithm>
#include <utility>

#include "search/causes.h"
#include "search/timing.h"
#include "search/trials.h"

namespace rimehaul::search {

using passage::Judge;
using trails::LegId;

namespace {

Place place_of(const Obstacle& obstacle) {
  return {.leg = obstacle.leg, .turn_from = obstacle.turn_from, .entry = obstacle.entry};
}

/// Whether trying loads can be of any use.
enum class Loads { may_help, cannot_help };

/// The states of the snow in which a trial holds: a question that says yes or no to every trial.
template <class Holds>
std::vector<snow::SnowState> snow_where(Trial trial, const Holds& holds) {
  std::vector<snow::SnowState> states;
  for (int wetness = 0; wetness < snow::kWetnessCount; ++wetness) {
    for (int surface = 0; surface < snow::kSurfaceCount; ++surface) {
      trial.snow = snow::SnowState{.wetness = static_cast<snow::Wetness>(wetness),
                                   .surface = static_cast<snow::Surface>(surface)};
      if (holds(trial)) {
        states.push_back(*trial.snow);
      }
    }
  }
  return states;
}

template <class Holds>
Openings openings_for(const rig::Rig& rig, const Holds& holds, Loads loads) {
  const passage::OpenIf open_with{
      [&](const rig::Rig& other) { return holds(Trials::trial_of(other)); }};
  Openings opens;
  if (loads == Loads::may_help) {
    opens.loads = passage::loads_that_open(rig, open_with);
  }
  opens.snow = snow_where(Trials::trial_of(rig), holds);
  if (!rig.trailer.has_value()) {
    return opens;
  }
  const rig::Rig alone = rig::without_trailer(rig);
  opens.without_trailer = open_with(alone);
  if (!opens.any()) {
    opens.bed_without_trailer = passage::loads_that_open(alone, open_with).bed;
    opens.snow_without_trailer = snow_where(Trials::trial_of(alone), holds);
  }
  return opens;
}

/// Asks about one refusal.
class Inquiry {
 public:
  Inquiry(const Judge& judge, Permission permission)
      : rig_{judge.rig()}, trials_{judge, permission} {}

  std::vector<passage::Finding> not_passing(const Place& place) {
    return trials_.not_passing(place);
  }

  /// What opens all of these places at once. Where decisions alone are wanting, what opens them
  /// without a decision.
  Openings opens(const std::vector<Place>& places) {
    const Checks closing = trials_.closing(places, trials_.as_it_stands());
    const bool only_by_decision = closing.none();
    bool asks = false;
    const auto holds = [&](const Trial& trial) {
      const Outcome came = trials_.outcome_along(places, trial);
      if (came.closed.any() || (only_by_decision && came.asks.any())) {
        return false;
      }
      asks = asks || came.asks.any();
      return true;
    };
    Openings opens =
        openings_for(rig_, holds, only_by_decision ? Loads::cannot_help : loads_against(closing));
    opens.and_decision = asks;
    return opens;
  }

  /// What makes one check pass at all of these places and closes them by nothing new.
  Openings lifts(passage::Check check, const std::vector<Place>& places) {
    const auto index = static_cast<std::size_t>(check);
    const Trial now = trials_.as_it_stands();
    const auto holds = [&](const Trial& trial) {
      return std::ranges::all_of(places, [&](const Place& place) {
        const Outcome came = trials_.outcome(place, trial);
        const Outcome stands = trials_.outcome(place, now);
        return !came.closed[index] && !came.asks[index] && (came.closed & ~stands.closed).none();
      });
    };
    return openings_for(rig_, holds, loads_against(Checks{}.set(index)));
  }

 private:
  static Loads loads_against(const Checks& closing) {
    return load_may_lift(closing) ? Loads::may_help : Loads::cannot_help;
  }

  const rig::Rig& rig_;
  Trials trials_;
};

/// The way of another rig, where it finds one.
std::vector<LegId> way_of(const rig::Rig& rig, const Judge& judge, RouteQuestion question) {
  question.most_alternatives = 0;
  const Judge other = judge.with_rig(rig);
  const RouteAnswer answer = find_routes(judge.scene().network, other, question);
  std::vector<LegId> way;
  if (const auto* routes = std::get_if<std::vector<Route>>(&answer)) {
    for (const RouteLeg& leg : routes->front().legs) {
      way.push_back(leg.leg);
    }
  }
  return way;
}

void add_other_ways(NoRoute& none, Inquiry& inquiry, const Judge& judge,
                    const RouteQuestion& question) {
  const auto add = [&](const rig::Rig& rig) {
    const std::vector<LegId> way = way_of(rig, judge, question);
    const bool known = way.empty() || way == none.way ||
                       std::ranges::any_of(none.other_ways, [&](const OtherWay& other) {
                         return other.legs == way;
                       });
    if (!known) {
      none.other_ways.push_back({way, inquiry.opens(places_along(way, question.depart))});
    }
  };
  if (!none.opens.loads.any()) {
    add(rig::without_cargo(judge.rig()));
  }
  if (judge.rig().trailer.has_value() && !none.opens.without_trailer) {
    add(rig::without_trailer(judge.rig()));
  }
}

}  // namespace

bool Openings::any() const {
  return loads.any() || without_trailer || !snow.empty() || !bed_without_trailer.empty() ||
         !snow_without_trailer.empty();
}

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
    obstacle.findings = inquiry.not_passing(place_of(obstacle));
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
  add_other_ways(none, inquiry, judge, question);
  return none;
}

}  // namespace rimehaul::search
