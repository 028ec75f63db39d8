#include "day/day_board.h"

#include <map>
#include <set>
#include <utility>

#include "day/board_column.h"

namespace rimehaul::day {

namespace {

/// All ways between the stations at the ends of the rows; rows that no trail reaches have none.
search::JunctionWays ways_between(const std::vector<Trip>& rows, const trails::Network& network) {
  std::set<trails::JunctionId> from;
  std::set<trails::JunctionId> to;
  const auto add = [&](std::set<trails::JunctionId>& junctions, std::size_t station) {
    if (const auto junction = network.junction_of(station); junction.has_value()) {
      junctions.insert(*junction);
    }
  };
  for (const Trip& row : rows) {
    if (const auto* stops = std::get_if<Stops>(&row)) {
      add(from, stops->first());
      add(to, stops->last());
    }
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
      ways_between(question.rows, columns.front().judge.scene().network);
  if (question.watcher != nullptr) {
    question.watcher->parts_to_come(question.rows.size() * columns.size());
  }
  std::vector<DayBoard> boards;
  for (const BoardSnow& snow : columns) {
    BoardColumn column{snow,
                       ground[&snow.judge.rig()],
                       {snow.depart.value_or(question.depart), question.rewalk, ways}};
    DayBoard& board = boards.emplace_back();
    for (const Trip& row : question.rows) {
      board.cells.push_back(column.cell_of(row));
      if (question.watcher != nullptr) {
        question.watcher->part_done();
      }
    }
  }
  return side_by_side(std::move(boards));
}

DayBoard side_by_side(std::vector<DayBoard> columns) {
  DayBoard all;
  const std::size_t rows = columns.empty() ? 0 : columns.front().cells.size();
  for (std::size_t row = 0; row < rows; ++row) {
    for (DayBoard& column : columns) {
      all.cells.push_back(std::move(column.cells.at(row)));
    }
  }
  return all;
}

}  // namespace rimehaul::day
