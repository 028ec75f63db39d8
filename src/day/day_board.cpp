#include "day/day_board.h"

#include <algorithm>

#include "day/asked_way.h"
#include "search/way_loads.h"

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

/// Answers for one snow; remembers what it has judged from pair to pair.
class Column {
 public:
  Column(const BoardSnow& snow, passage::GroundMemory& ground, const BoardQuestion& question)
      : snow_{snow},
        asker_{snow.judge, ground, {question.depart, question.rewalk}},
        depart_{question.depart} {
    if (question.loads == OtherLoads::tried) {
      trials_.emplace(snow.judge, Permission::nobody);
      other_loads_.emplace(snow.judge, ground, AskedOfAll{question.depart, question.rewalk});
    }
  }

  [[nodiscard]] BoardCell cell_of(const StationPair& pair) {
    BoardCell cell{.pair = pair, .snow = snow_.state};
    const AskedWay asked = asker_.ask({pair.from, pair.to}, Permission::nobody);
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

 private:
  void tell_refusal(BoardCell& cell, const search::NoRoute& none) {
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
    } else if (trials_.has_value()) {
      try_loads(cell);
    }
  }

  /// The way once a named person has decided, which needs its fuel as any other.
  void tell_decided(BoardCell& cell) const {
    const AskedWay decided = asker_.ask({cell.pair.from, cell.pair.to}, Permission::named_person);
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

  /// On the way nearest to open, and where that asks for a decision besides, or opens with no load,
  /// on the way of the rig without any.
  void try_loads(BoardCell& cell) {
    if (open_by_load(cell, cell.way) && !cell.and_decision) {
      return;
    }
    const AskedWay unloaded = other_loads_->with({units::Kilograms{0}, units::Kilograms{0}})
                                  .ask({cell.pair.from, cell.pair.to}, Permission::nobody);
    if (unloaded.route) {
      const std::vector<trails::LegId> way = legs_of(*unloaded.route);
      if (way != cell.way && open_by_load(cell, way)) {
        cell.way = way;
      }
    }
  }

  bool open_by_load(BoardCell& cell, const std::vector<trails::LegId>& way) {
    if (way.empty()) {
      return false;
    }
    const search::WayLoads found =
        search::loads_that_open_way(*trials_, snow_.judge.rig(), {way, depart_});
    const passage::OpenLoads proven = proven_loads(cell, found);
    if (!proven.any()) {
      return false;
    }
    cell.loads = proven;
    cell.and_decision = found.and_decision;
    cell.verdict = Verdict::restricted;
    return true;
  }

  /// Those of which both ends are answered with a way that has fuel enough and is walked again.
  passage::OpenLoads proven_loads(BoardCell& cell, const search::WayLoads& found) {
    const rig::Load& load = snow_.judge.rig().load;
    const auto holds = [&](const Cargo& cargo) {
      const AskedWay asked = other_loads_->with(cargo).ask(
          {cell.pair.from, cell.pair.to},
          found.and_decision ? Permission::named_person : Permission::nobody);
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

  BoardSnow snow_;
  WayAsker asker_;
  units::Instant depart_;
  std::optional<search::Trials> trials_;
  std::optional<OtherLoadAskers> other_loads_;
};

}  // namespace

DayBoard board_of(std::span<const BoardSnow> columns, const BoardQuestion& question) {
  DayBoard board{.cells = {}, .loads = question.loads};
  passage::GroundMemory ground;
  const std::size_t pairs = question.pairs.size();
  if (question.watcher != nullptr) {
    question.watcher->parts_to_come(pairs * columns.size());
  }
  std::vector<std::vector<BoardCell>> by_snow;
  for (const BoardSnow& snow : columns) {
    Column column{snow, ground, question};
    std::vector<BoardCell>& cells = by_snow.emplace_back();
    for (const StationPair& pair : question.pairs) {
      cells.push_back(column.cell_of(pair));
      if (question.watcher != nullptr) {
        question.watcher->part_done();
      }
    }
  }
  for (std::size_t i = 0; i < pairs; ++i) {
    for (std::vector<BoardCell>& cells : by_snow) {
      board.cells.push_back(std::move(cells[i]));
    }
  }
  return board;
}

std::vector<StationPair> all_pairs(const trails::Network& network) {
  std::vector<StationPair> pairs;
  for (std::size_t from = 0; from < network.stations.size(); ++from) {
    for (std::size_t to = 0; to < network.stations.size(); ++to) {
      const auto start = network.junction_of(from);
      const auto end = network.junction_of(to);
      if (start.has_value() && end.has_value() && *start != *end) {
        pairs.push_back({from, to});
      }
    }
  }
  return pairs;
}

}  // namespace rimehaul::day
