#include "day/board_column.h"

#include <algorithm>

namespace rimehaul::day {

using passage::Finding;
using passage::Stand;
using passage::Verdict;
using search::Permission;

namespace {

/// Takes a finding for what binds, if it binds before what the cell has.
void offer(BoardCell& cell, const Finding& finding, const search::Obstacle& place) {
  if (!cell.binding.has_value() || passage::binds_before(finding, *cell.binding)) {
    cell.binding = finding;
    cell.leg = place.leg;
    cell.turn_from = place.turn_from;
  }
}

/// Notes a decision that is wanted, once.
void add_decision(BoardCell& cell, const std::string& asks) {
  if (cell.decision.find(asks) == std::string::npos) {
    cell.decision += (cell.decision.empty() ? "" : "; ") + asks;
  }
}

std::vector<trails::LegId> legs_of(const search::Route& route) {
  std::vector<trails::LegId> legs;
  legs.reserve(route.legs.size());
  for (const search::RouteLeg& part : route.legs) {
    legs.push_back(part.leg);
  }
  return legs;
}

/// What binds on a way that is driven as the rig stands.
void tell_binding(BoardCell& cell, const search::Route& route) {
  for (std::size_t i = 0; i < route.legs.size(); ++i) {
    const search::RouteLeg& part = route.legs[i];
    search::Obstacle place;
    place.leg = part.leg;
    offer(cell, part.judgement.bind(), place);
    if (i > 0) {
      place.turn_from = route.legs[i - 1].leg;
      offer(cell, part.turn_into.binding, place);
    }
  }
}

/// What a way costs; open, or restricted by decisions, unless the fuel is short.
void tell_way(BoardCell& cell, const AskedWay& asked) {
  const search::Route& route = *asked.route;
  cell.worst_share = route.worst_share;
  cell.time = route.time;
  cell.length = route.length;
  cell.fuel = route.fuel;
  cell.way = legs_of(route);
  cell.fuel_to_spare = asked.fuel_to_spare;
  cell.places_rewalked = asked.places_rewalked;
  if (asked.holds()) {
    cell.verdict = route.needs_permission ? Verdict::restricted : Verdict::open;
  }
}

}  // namespace

BoardColumn::BoardColumn(const BoardSnow& snow, passage::GroundMemory& ground,
                         const AskedOfAll& asked)
    : snow_{snow},
      asker_{snow.judge, ground, asked},
      depart_{asked.depart},
      trials_{snow.judge, Permission::nobody},
      other_loads_{snow.judge, ground, asked} {}

BoardCell BoardColumn::cell_of(const Trip& row) {
  BoardCell cell{.trip = row, .snow = snow_.state, .depart = depart_};
  const AskedWay asked = asker_.ask(row, Permission::nobody);
  if (asked.route) {
    tell_way(cell, asked);
    if (asked.holds()) {
      tell_binding(cell, *asked.route);
    }
  } else {
    tell_refusal(cell, asked.none);
  }
  if (cell.binding.has_value()) {
    cell.stand = passage::stand_of(*cell.binding, snow_.judge.allowed_share());
  }
  return cell;
}

void BoardColumn::tell_refusal(BoardCell& cell, const search::NoRoute& none) {
  cell.why = none.why;
  cell.way = none.way;
  for (const search::Obstacle& obstacle : none.obstacles) {
    offer(cell, obstacle.finding, obstacle);
  }
  const double allowed = snow_.judge.allowed_share();
  const bool only_decisions =
      !none.obstacles.empty() &&
      std::ranges::all_of(none.obstacles, [&](const search::Obstacle& obstacle) {
        return passage::stand_of(obstacle.finding, allowed) == Stand::asks;
      });
  if (only_decisions) {
    tell_decided(cell);
  } else {
    try_loads(cell);
  }
}

/// The way once a named person has decided, which needs its fuel as any other.
void BoardColumn::tell_decided(BoardCell& cell) {
  const AskedWay decided = asker_.ask(cell.trip, Permission::named_person);
  if (!decided.route) {
    return;
  }
  tell_way(cell, decided);
  if (!decided.holds()) {
    cell.binding.reset();
    return;
  }
  for (const search::RouteLeg& part : decided.route->legs) {
    if (part.judgement.verdict == Verdict::restricted) {
      add_decision(cell, search::decisions_for(part.judgement));
    }
    if (part.turn_into.verdict == Verdict::restricted) {
      add_decision(cell, part.turn_into.binding.asks);
    }
  }
}

/// On the way that was given; else on the way nearest to open, and where that asks for a decision
/// besides, or opens with no load, on the way of the rig without any; with a decision where there
/// is no such way without.
void BoardColumn::try_loads(BoardCell& cell) {
  const std::vector<trails::LegId> nearest = cell.way;
  const bool opens = open_by_load(cell, nearest);
  if (std::holds_alternative<search::FixedWay>(cell.trip) || (opens && !cell.and_decision)) {
    return;
  }
  const std::vector<trails::LegId> unloaded = way_without_load(cell.trip, Permission::nobody);
  if (unloaded != nearest && open_by_load(cell, unloaded)) {
    return;
  }
  if (!cell.loads.any()) {
    const std::vector<trails::LegId> decided =
        way_without_load(cell.trip, Permission::named_person);
    if (decided != nearest && decided != unloaded) {
      (void)open_by_load(cell, decided);
    }
  }
}

/// Empty where there is none.
std::vector<trails::LegId> BoardColumn::way_without_load(const Trip& trip, Permission permission) {
  const AskedWay asked =
      other_loads_.with({units::Kilograms{0}, units::Kilograms{0}}).ask(trip, permission);
  return asked.route ? legs_of(*asked.route) : std::vector<trails::LegId>{};
}

bool BoardColumn::open_by_load(BoardCell& cell, const std::vector<trails::LegId>& way) {
  if (way.empty()) {
    return false;
  }
  const search::WayLoads found =
      search::loads_that_open_way(trials_, snow_.judge.rig(), {way, depart_});
  const passage::OpenLoads proven = proven_loads(cell, found);
  if (!proven.any()) {
    return false;
  }
  cell.loads = proven;
  cell.and_decision = found.and_decision;
  cell.verdict = Verdict::restricted;
  if (cell.way != way) {
    cell.way = way;
    tell_obstacles(cell);
  }
  return true;
}

/// What stands in the cell's way as the rig stands, in place of what stood in another.
void BoardColumn::tell_obstacles(BoardCell& cell) {
  cell.binding.reset();
  for (const search::Place& place : search::places_along(cell.way, depart_)) {
    search::Obstacle at;
    at.leg = place.leg;
    at.turn_from = place.turn_from;
    for (const Finding& finding : trials_.not_passing(place)) {
      offer(cell, finding, at);
    }
  }
}

/// Those of which both ends are answered with a way that has fuel enough and is walked again.
passage::OpenLoads BoardColumn::proven_loads(BoardCell& cell, const search::WayLoads& found) {
  const rig::Load& load = snow_.judge.rig().load;
  const auto holds = [&](const Cargo& cargo) {
    const AskedWay asked = other_loads_.with(cargo).ask(
        cell.trip, found.and_decision ? Permission::named_person : Permission::nobody);
    cell.places_rewalked += asked.places_rewalked;
    return asked.holds();
  };
  passage::OpenLoads loads = found.loads;
  std::erase_if(loads.bed, [&](const passage::LoadInterval& bed) {
    return !(holds({bed.from, load.towed}) && holds({bed.to, load.towed}));
  });
  std::erase_if(loads.towed, [&](const passage::LoadInterval& towed) {
    return !(holds({load.bed, towed.from}) && holds({load.bed, towed.to}));
  });
  std::erase_if(loads.both, [&](const passage::LoadPair& pair) {
    return !(holds({pair.bed.from, pair.towed.from}) && holds({pair.bed.to, pair.towed.to}) &&
             holds({pair.bed.from, pair.towed.to}) && holds({pair.bed.to, pair.towed.from}));
  });
  return loads;
}

}  // namespace rimehaul::day
