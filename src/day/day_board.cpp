#include "day/day_board.h"

#include <algorithm>
#include <memory>

#include "day/remembering_judge.h"
#include "search/way_loads.h"

namespace rimehaul::day {

using passage::Finding;
using passage::Judge;
using passage::Stand;
using passage::Verdict;

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

/// Answers for one snow; remembers what it has judged from pair to pair.
class Column {
 public:
  Column(const BoardSnow& snow, GroundMemory& ground, const BoardQuestion& question)
      : snow_{snow},
        question_{question},
        remembering_{snow.judge, ground},
        unloaded_{rig::without_cargo(snow.judge.rig())} {
    if (question.loads == OtherLoads::tried) {
      trials_.emplace(snow.judge, search::Permission::nobody);
      unloaded_judge_ = std::make_unique<Judge>(snow.judge.with_rig(unloaded_));
      remembering_unloaded_ = std::make_unique<RememberingJudge>(*unloaded_judge_, ground);
    }
  }

  [[nodiscard]] BoardCell cell_of(const StationPair& pair) {
    BoardCell cell{.pair = pair, .snow = snow_.state};
    const search::RouteAnswer answer = answer_of(pair, remembering_);
    if (const auto* routes = std::get_if<std::vector<search::Route>>(&answer)) {
      tell_way(cell, routes->front());
    } else {
      tell_refusal(cell, std::get<search::NoRoute>(answer));
    }
    if (cell.binding.has_value()) {
      cell.stand = passage::stand_of(*cell.binding, snow_.judge.allowed_share());
    }
    return cell;
  }

 private:
  [[nodiscard]] search::RouteAnswer answer_of(const StationPair& pair,
                                              const passage::LegJudge& judge) const {
    search::RouteQuestion question;
    question.stations = {pair.from, pair.to};
    question.depart = question_.depart;
    question.most_alternatives = 0;
    return search::find_routes(snow_.judge.scene().network, judge, question);
  }

  void tell_way(BoardCell& cell, const search::Route& route) const {
    const rig::Rig& rig = snow_.judge.rig();
    cell.worst_share = route.worst_share;
    cell.time = route.time;
    cell.length = route.length;
    cell.fuel = route.fuel;
    for (std::size_t i = 0; i < route.legs.size(); ++i) {
      const search::RouteLeg& part = route.legs[i];
      cell.way.push_back(part.leg);
      search::Obstacle place;
      place.leg = part.leg;
      offer(cell, part.judgement.bind(), place);
      if (i > 0) {
        place.turn_from = route.legs[i - 1].leg;
        offer(cell, part.turn_into.binding, place);
      }
    }
    const units::Litres spare =
        rig.load.fuel - rig.carrier.tank * snow_.judge.scene().rules.fuel_reserve;
    if (route.fuel <= spare) {
      cell.verdict = Verdict::open;
    } else {
      cell.fuel_to_spare = spare;
    }
  }

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
      for (const search::Obstacle& obstacle : none.obstacles) {
        add_decision(cell, obstacle.finding.asks);
      }
      cell.verdict = Verdict::restricted;
      return;
    }
    if (trials_.has_value()) {
      try_loads(cell);
    }
  }

  void try_loads(BoardCell& cell) {
    if (!open_by_load(cell, cell.way)) {
      const search::RouteAnswer other = answer_of(cell.pair, *remembering_unloaded_);
      if (const auto* routes = std::get_if<std::vector<search::Route>>(&other)) {
        std::vector<trails::LegId> way;
        for (const search::RouteLeg& leg : routes->front().legs) {
          way.push_back(leg.leg);
        }
        if (way != cell.way && open_by_load(cell, way)) {
          cell.way = way;
        }
      }
    }
  }

  bool open_by_load(BoardCell& cell, const std::vector<trails::LegId>& way) {
    if (way.empty()) {
      return false;
    }
    const search::WayLoads found =
        search::loads_that_open_way(*trials_, snow_.judge.rig(), {way, question_.depart});
    if (!found.loads.any()) {
      return false;
    }
    cell.loads = found.loads;
    cell.and_decision = found.and_decision;
    cell.verdict = Verdict::restricted;
    return true;
  }

  BoardSnow snow_;
  const BoardQuestion& question_;
  RememberingJudge remembering_;
  rig::Rig unloaded_;
  std::optional<search::Trials> trials_;
  std::unique_ptr<Judge> unloaded_judge_;
  std::unique_ptr<RememberingJudge> remembering_unloaded_;
};

}  // namespace

DayBoard board_of(std::span<const BoardSnow> columns, const BoardQuestion& question) {
  DayBoard board{.cells = {}, .loads = question.loads};
  GroundMemory ground;
  const std::size_t pairs = question.pairs.size();
  std::vector<std::vector<BoardCell>> by_snow;
  for (const BoardSnow& snow : columns) {
    Column column{snow, ground, question};
    std::vector<BoardCell>& cells = by_snow.emplace_back();
    for (const StationPair& pair : question.pairs) {
      cells.push_back(column.cell_of(pair));
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
