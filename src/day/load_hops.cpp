#include "day/load_hops.h"

#include <algorithm>

#include "search/stops.h"
#include "search/timed_routes.h"

namespace rimehaul::day {

using search::HopDriven;
using search::Route;
using search::RouteAnswer;
using search::RouteQuestion;
using trails::JunctionId;
using trails::LegId;
using units::Instant;

namespace {

std::optional<HopDriven> hop_over(const std::vector<Route>& routes, Instant depart) {
  if (routes.empty()) {
    return std::nullopt;
  }
  const Route& route = routes.front();
  return HopDriven{.departs = depart,
                   .arrives = units::after(depart, route.time),
                   .worst_share = route.worst_share,
                   .needs_permission = route.needs_permission,
                   .fuel = route.fuel};
}

std::optional<Instant> last_turn_of(const passage::Judge& judge, units::Period hours) {
  std::optional<Instant> last;
  const trails::Network& network = judge.scene().network;
  for (std::uint32_t leg = 0; leg < network.legs.size(); ++leg) {
    const std::vector<Instant> moments = judge.turning_moments(LegId{leg}, hours);
    if (!moments.empty() && (!last.has_value() || *last < moments.back())) {
      last = moments.back();
    }
  }
  return last;
}

}  // namespace

LoadHops::LoadHops(rig::Rig loaded, const SharedByLoads& shared)
    : round_{&shared.question},
      rig_{std::move(loaded)},
      judge_{shared.as_it_stays.with_rig(rig_)},
      remembering_{judge_, shared.ground},
      brief_{judge_, shared.ground},
      steady_{brief_, round_->hours},
      hours_{steady_, round_->hours},
      finder_{judge_.scene().network, steady_, round_->hours.from, shared.ways},
      last_turn_{last_turn_of(judge_, round_->hours)} {}

RouteQuestion LoadHops::question_of(Stations ends, Instant depart) const {
  RouteQuestion question{.stations = {ends.first, ends.second},
                         .prefer = round_->prefer,
                         .depart = depart,
                         .most_alternatives = 0,
                         .permitted_by = round_->permitted_by};
  question.arrive_by = round_->hours.to;
  return question;
}

std::optional<HopDriven> LoadHops::driven(Stations ends, Instant ready) {
  if (ready > round_->hours.to) {
    return std::nullopt;
  }
  std::optional<HopDriven> driven;
  if (last_turn_.has_value()) {
    driven = driven_through(ends, ready);
  } else if ((driven = driven_at_first(ends)).has_value()) {
    driven->departs = ready;
    driven->arrives.seconds += ready.seconds - round_->hours.from.seconds;
  }
  return driven.has_value() && driven->arrives <= round_->hours.to ? driven : std::nullopt;
}

std::optional<HopDriven> LoadHops::driven_at_first(Stations ends) {
  auto known = at_first_.find(ends);
  if (known == at_first_.end()) {
    const Instant first = round_->hours.from;
    const std::vector<Route> routes = finder_.open_routes(question_of(ends, first));
    known = at_first_.emplace(ends, hop_over(routes, first)).first;
  }
  return known->second;
}

std::optional<HopDriven> LoadHops::driven_through(Stations ends, Instant ready) {
  if (auto at_once = driven_at(ends, ready); at_once.has_value()) {
    return at_once;
  }
  const auto later = open_from(ends, ready);
  return later.has_value() ? driven_at(ends, *later) : std::nullopt;
}

/// As things stand when it begins; where there is no way then, one that opens on the way.
std::optional<HopDriven> LoadHops::driven_at(Stations ends, Instant depart) {
  const trails::Network& network = judge_.scene().network;
  const RouteQuestion question = question_of(ends, depart);
  std::vector<Route> routes = search::open_routes(network, steady_, question);
  if (routes.empty() && may_leave_and_arrive(ends, depart)) {
    routes = search::open_routes_through(network, hours_, question);
  }
  return hop_over(routes, depart);
}

RouteAnswer LoadHops::answer(Stations ends, Instant depart) {
  const trails::Network& network = judge_.scene().network;
  const RouteQuestion question = question_of(ends, depart);
  if (auto routes = search::open_routes(network, remembering_, question); !routes.empty()) {
    return routes;
  }
  if (driven_at(ends, depart).has_value()) {
    search::LegHours hours{remembering_, round_->hours};
    return search::find_routes_through(network, hours, question);
  }
  return search::find_routes(network, remembering_, question);
}

std::optional<Instant> LoadHops::open_from(Stations ends, Instant ready) {
  if (!may_leave_and_arrive(ends, ready)) {
    return std::nullopt;
  }
  auto known = windows_.find(ends);
  if (known == windows_.end() || ready < known->second.from) {
    known = windows_.insert_or_assign(ends, Windows{ready, windows_from(ends, ready)}).first;
  }
  return known->second.windows.first_from(ready);
}

units::TimeSpans LoadHops::windows_from(Stations ends, Instant ready) {
  const trails::Network& network = judge_.scene().network;
  const RouteQuestion question = question_of(ends, ready);
  const auto stops = search::stops_of(network, question);
  return search::TimedWays{network, hours_, std::get<std::vector<JunctionId>>(stops)}.windows(
      {.permission = search::permission_of(question),
       .arrivals_allowed = units::TimeSpans{{{ready, round_->hours.to}}}});
}

/// Whether legs out of the first and into the last station are open at any hour from one on.
bool LoadHops::may_leave_and_arrive(Stations ends, Instant from) {
  const trails::Network& network = judge_.scene().network;
  const auto permission = search::permission_of(question_of(ends, from));
  const auto is_ever_open = [&](std::uint32_t leg) {
    return std::ranges::any_of(hours_.of(LegId{leg}), [&](const search::LegPiece& piece) {
      return from <= piece.entries.to && search::may_drive(piece.facts, permission);
    });
  };
  bool may_leave = false;
  bool may_arrive = false;
  for (std::uint32_t leg = 0; leg < network.legs.size(); ++leg) {
    may_leave = may_leave ||
                (network.legs[leg].from == network.junction_of(ends.first) && is_ever_open(leg));
    may_arrive = may_arrive ||
                 (network.legs[leg].to == network.junction_of(ends.second) && is_ever_open(leg));
  }
  return may_leave && may_arrive;
}

}  // namespace rimehaul::day
