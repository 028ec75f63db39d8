#include "day/day_board.h"

#include <map>
#include <set>
#include <utility>

#include "day/board_column.h"

namespace rimehaul::day {

namespace {

/// All ways between the stations of the pairs; pairs that no trail reaches have none.
search::JunctionWays ways_between(const std::vector<StationPair>& pairs,
                                  const trails::Network& network) {
  std::set<trails::JunctionId> from;
  std::set<trails::JunctionId> to;
  const auto add = [&](std::set<trails::JunctionId>& junctions, std::size_t station) {
    if (const auto junction = network.junction_of(station); junction.has_value()) {
      junctions.insert(*junction);
    }
  };
  for (const StationPair& pair : pairs) {
    add(from, pair.from);
    add(to, pair.to);
  }
  return search::ways_between(network, {{from.begin(), from.end()}, {to.begin(), to.end()}});
}

}  // namespace

DayBoard board_of(std::span<const BoardSnow> columns, const BoardQuestion& question) {
  if (columns.empty()) {
    return {};
  }
  std::map<const rig::Rig*, passage::GroundMemory> ground;
  const search::JunctionWays ways =
      ways_between(question.pairs, columns.front().judge.scene().network);
  if (question.watcher != nullptr) {
    question.watcher->parts_to_come(question.pairs.size() * columns.size());
  }
  std::vector<DayBoard> boards;
  for (const BoardSnow& snow : columns) {
    BoardColumn column{snow, ground[&snow.judge.rig()], {question.depart, question.rewalk, ways}};
    DayBoard& board = boards.emplace_back();
    for (const StationPair& pair : question.pairs) {
      board.cells.push_back(column.cell_of(pair));
      if (question.watcher != nullptr) {
        question.watcher->part_done();
      }
    }
  }
  return side_by_side(std::move(boards));
}

DayBoard side_by_side(std::vector<DayBoard> columns) {
  DayBoard all;
  const std::size_t pairs = columns.empty() ? 0 : columns.front().cells.size();
  for (std::size_t pair = 0; pair < pairs; ++pair) {
    for (DayBoard& column : columns) {
      all.cells.push_back(std::move(column.cells.at(pair)));
    }
  }
  return all;
}

std::vector<StationPair> all_pairs(const trails::Network& network) {
  std::vector<std::optional<trails::JunctionId>> at;
  for (std::size_t station = 0; station < network.stations.size(); ++station) {
    at.push_back(network.junction_of(station));
  }
  std::vector<StationPair> pairs;
  for (std::size_t from = 0; from < at.size(); ++from) {
    for (std::size_t to = 0; to < at.size(); ++to) {
      if (at[from].has_value() && at[to].has_value() && at[from] != at[to]) {
        pairs.push_back({from, to});
      }
    }
  }
  return pairs;
}

}  // namespace rimehaul::day
