// One column of the day board, row by row.
#pragma once

#include "day/asked_way.h"
#include "day/day_board.h"
#include "search/way_loads.h"

namespace rimehaul::day {

/// Answers for one snow and hour; remembers what it has judged from row to row.
class BoardColumn {
 public:
  /// Holds references: the snow's judge, the ground and the ways that are shared must outlive it.
  BoardColumn(const BoardSnow& snow, passage::GroundMemory& ground, const AskedOfAll& asked);

  [[nodiscard]] BoardCell cell_of(const Trip& row);

 private:
  void tell_refusal(BoardCell& cell, const search::NoRoute& none);
  void tell_decided(BoardCell& cell);
  void try_loads(BoardCell& cell);
  [[nodiscard]] std::vector<trails::LegId> way_without_load(const Trip& trip,
                                                            search::Permission permission);
  [[nodiscard]] bool open_by_load(BoardCell& cell, const std::vector<trails::LegId>& way);
  void tell_obstacles(BoardCell& cell);
  [[nodiscard]] passage::OpenLoads proven_loads(BoardCell& cell, const search::WayLoads& found);

  BoardSnow snow_;
  WayAsker asker_;
  units::Instant depart_;
  search::Trials trials_;
  OtherLoadAskers other_loads_;
};

}  // namespace rimehaul::day
