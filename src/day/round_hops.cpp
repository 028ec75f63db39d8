#include "day/round_hops.h"

#include <algorithm>
#include <bit>
#include <set>
#include <utility>

#include "search/stops.h"
#include "search/timed_routes.h"

namespace rimehaul::day {

using passage::Judge;
using search::Hop;
using search::HopAsked;
using search::HopDriven;
using search::Route;
using search::RouteAnswer;
using search::RouteQuestion;
using search::StopSet;
using trails::JunctionId;
using units::Instant;
using units::Period;

namespace {

/// Between all stations of the round.
search::JunctionWays ways_of(const trails::Network& network, const RoundStops& stops) {
  std::vector<JunctionId> junctions;
  const auto add = [&](std::size_t station) {
    const auto junction = network.junction_of(station);
    if (junction && std::ranges::find(junctions, *junction) == junctions.end()) {
      junctions.push_back(*junction);
    }
  };
  add(stops.start);
  std::ranges::for_each(stops.stations, add);
  if (stops.end.has_value()) {
    add(*stops.end);
  }
  return search::ways_between(network, {.from = junctions, .to = junctions});
}

}  // namespace

struct RoundHops::Loaded {
  Loaded(const Judge& as_it_stays, rig::Rig loaded, passage::GroundMemory& ground,
         const search::JunctionWays& ways, Period day)
      : rig{std::move(loaded)},
        judge{as_it_stays.with_rig(rig)},
        remembering{judge, ground},
        steady{remembering, day},
        hours{steady, day},
        finder{judge.scene().network, remembering, day.from, ways},
        turns{search::something_turns(judge.scene().network, remembering, day)} {}

  rig::Rig rig;
  Judge judge;
  passage::RememberingJudge remembering;
  search::SteadyJudge steady;
  search::LegHours hours;
  search::RouteFinder finder;  ///< for the first hour
  bool turns = true;           ///< some leg is judged otherwise at a later hour of the day
  /// Where nothing turns, by stations: as if it were driven at the first hour.
  std::map<std::pair<std::size_t, std::size_t>, std::optional<HopDriven>> known{};
};

/// Loads that the crew judges side by side.
class RoundHops::Finding final : public base::Work {
 public:
  Finding(RoundHops& hops, std::vector<SameLoad>& loads) : hops_{hops}, loads_{loads} {}

  void do_part(std::size_t part) override {
    SameLoad& same = loads_[part];
    Loaded& loaded = hops_.with_load_of(same.asked.front().hop, same.shelf);
    std::set<StopSet> sets;
    for (const HopAsked& asked : same.asked) {
      same.driven.push_back(hops_.drive(asked, loaded));
      sets.insert(asked.hop.called);
    }
    if (std::popcount(same.asked.front().hop.called) >= same.shelf.last_needed) {
      same.shelf.loaded.reset();
    }
    for (std::size_t told = 0; hops_.question_->watcher != nullptr && told < sets.size(); ++told) {
      hops_.question_->watcher->part_done();
    }
  }

 private:
  RoundHops& hops_;
  std::vector<SameLoad>& loads_;
};

RoundHops::RoundHops(const Judge& judge, const RoundQuestion& question)
    : judge_{&judge}, question_{&question}, ways_{ways_of(judge.scene().network, question.stops)} {
  for (std::uint32_t leg = 0; leg < judge.scene().network.legs.size(); ++leg) {
    static_cast<void>(passage::ground_under(trails::LegId{leg}, judge, ground_));
  }
  for (const StopSet called : question.stops.sets_on_the_way()) {
    int& last_needed = shelf_for(called).last_needed;
    last_needed = std::max(last_needed, std::popcount(called));
  }
}

RoundHops::~RoundHops() = default;

RoundHops::Shelf& RoundHops::shelf_for(StopSet called) {
  const rig::Load load = rig_with(judge_->rig(), question_->round, question_->stops, called).load;
  return shelves_[{load.bed.value(), load.towed.value(), load.passengers}];
}

RoundHops::Loaded& RoundHops::with_load_of(const Hop& hop, Shelf& shelf) {
  if (shelf.loaded == nullptr) {
    shelf.loaded = std::make_unique<Loaded>(
        *judge_, rig_with(judge_->rig(), question_->round, question_->stops, hop.called), ground_,
        ways_, question_->hours);
  }
  return *shelf.loaded;
}

RoundHops::Loaded& RoundHops::with_load_of(const Hop& hop) {
  return with_load_of(hop, shelf_for(hop.called));
}

void RoundHops::expect(std::span<const HopAsked> next) {
  std::map<Shelf*, std::size_t> places;
  std::vector<SameLoad> loads;
  for (const HopAsked& asked : next) {
    Shelf& shelf = shelf_for(asked.hop.called);
    const auto [known, is_new] = places.emplace(&shelf, loads.size());
    if (is_new) {
      loads.push_back({.shelf = shelf});
    }
    loads[known->second].asked.push_back(asked);
  }
  Finding finding{*this, loads};
  base::CrewOfOne alone;
  (question_->crew != nullptr ? *question_->crew : alone).do_all(finding, loads.size());
  expected_.clear();
  for (const SameLoad& same : loads) {
    for (std::size_t i = 0; i < same.asked.size(); ++i) {
      expected_.emplace(same.asked[i], same.driven[i]);
    }
  }
}

RouteQuestion RoundHops::question_of(const Hop& hop, Instant depart) const {
  RouteQuestion question{
      .stations = {question_->stops.departed(hop), question_->stops.reached(hop)},
      .prefer = question_->prefer,
      .depart = depart,
      .most_alternatives = 0,
      .permitted_by = question_->permitted_by};
  question.arrive_by = question_->hours.to;
  return question;
}

std::optional<HopDriven> RoundHops::found(const RouteAnswer& answer, Instant depart) const {
  const auto* routes = std::get_if<std::vector<Route>>(&answer);
  if (routes == nullptr) {
    return std::nullopt;
  }
  const Route& route = routes->front();
  return HopDriven{.departs = depart,
                   .arrives = units::after(depart, route.time),
                   .worst_share = route.worst_share,
                   .needs_permission = route.needs_permission,
                   .fuel = route.fuel};
}

std::optional<HopDriven> RoundHops::driven(const Hop& hop, Instant ready) {
  const auto found = expected_.find({hop, ready});
  return found != expected_.end() ? found->second : drive({hop, ready}, with_load_of(hop));
}

std::optional<HopDriven> RoundHops::drive(const HopAsked& asked, Loaded& loaded) const {
  std::optional<HopDriven> driven;
  if (loaded.turns) {
    driven = drive_through(asked, loaded);
  } else {
    const Instant first = question_->hours.from;
    const RouteQuestion question = question_of(asked.hop, first);
    const std::pair ends{question.stations.front(), question.stations.back()};
    auto known = loaded.known.find(ends);
    if (known == loaded.known.end()) {
      known = loaded.known.emplace(ends, found(loaded.finder.routes(question), first)).first;
    }
    driven = known->second;
    if (driven.has_value()) {
      driven->departs = asked.ready;
      driven->arrives.seconds += asked.ready.seconds - first.seconds;
    }
  }
  return driven.has_value() && driven->arrives <= question_->hours.to ? driven : std::nullopt;
}

std::optional<HopDriven> RoundHops::drive_through(const HopAsked& asked, Loaded& loaded) const {
  if (asked.ready > question_->hours.to) {
    return std::nullopt;
  }
  const auto ask = [&](Instant depart) {
    return found(best_way({loaded.steady, loaded.hours}, question_of(asked.hop, depart)), depart);
  };
  if (auto at_once = ask(asked.ready); at_once.has_value()) {
    return at_once;
  }
  const auto later = open_from(asked, loaded);
  return later.has_value() ? ask(*later) : std::nullopt;
}

std::optional<Instant> RoundHops::open_from(const HopAsked& asked, Loaded& loaded) const {
  const RouteQuestion question = question_of(asked.hop, asked.ready);
  if (!may_leave_and_arrive(loaded.hours, question)) {
    return std::nullopt;
  }
  const trails::Network& network = loaded.judge.scene().network;
  const auto stops = search::stops_of(network, question);
  const search::TimedWays::Trip trip{
      .permission = search::permission_of(question),
      .arrivals_allowed = units::TimeSpans{{{asked.ready, question_->hours.to}}}};
  return search::TimedWays{network, loaded.hours, std::get<std::vector<JunctionId>>(stops)}
      .windows(trip)
      .first_from(asked.ready);
}

bool RoundHops::may_leave_and_arrive(search::LegHours& hours, const RouteQuestion& question) const {
  const trails::Network& network = judge_->scene().network;
  const auto from = network.junction_of(question.stations.front());
  const auto to = network.junction_of(question.stations.back());
  const auto is_ever_open = [&](std::uint32_t leg) {
    return std::ranges::any_of(hours.of(trails::LegId{leg}), [&](const search::LegPiece& piece) {
      return question.depart <= piece.entries.to &&
             search::may_drive(piece.facts, search::permission_of(question));
    });
  };
  bool may_leave = false;
  bool may_arrive = false;
  for (std::uint32_t leg = 0; leg < network.legs.size(); ++leg) {
    may_leave = may_leave || (network.legs[leg].from == from && is_ever_open(leg));
    may_arrive = may_arrive || (network.legs[leg].to == to && is_ever_open(leg));
  }
  return may_leave && may_arrive;
}

RouteAnswer RoundHops::best_way(Hourly hourly, const RouteQuestion& question) const {
  const trails::Network& network = judge_->scene().network;
  RouteAnswer answer = search::find_routes(network, hourly.judge, question);
  const auto* routes = std::get_if<std::vector<Route>>(&answer);
  if (routes == nullptr && may_leave_and_arrive(hourly.hours, question)) {
    return search::find_routes_through(network, hourly.hours, question);
  }
  return answer;
}

RouteAnswer RoundHops::answer(const Hop& hop, Instant depart) {
  Loaded& loaded = with_load_of(hop);
  search::LegHours hours{loaded.remembering, question_->hours};
  return best_way({loaded.remembering, hours}, question_of(hop, depart));
}

const Judge& RoundHops::judge_on(const Hop& hop) {
  return with_load_of(hop).judge;
}

}  // namespace rimehaul::day
