// The day board: what is open between which stations, or of which trails, by snow, for one rig or
// several.
#pragma once

#include <span>

#include "audit/rewalk.h"
#include "base/watcher.h"
#include "day/trip.h"

namespace rimehaul::day {

struct BoardQuestion {
  std::vector<Trip> rows;
  units::Instant depart;  ///< of every column that does not say its own
  audit::WalkAgain rewalk = audit::rewalk;
  base::Watcher* watcher = nullptr;  ///< told of every cell; nothing: nobody
};

/// The snow of one column, and a judge of it for the column's rig. All judges of one board are of
/// one scene; those of one rig hold the same rig, so that its ground is measured once.
struct BoardSnow {
  std::optional<snow::SnowState> state;  ///< everywhere; nothing: as it is from place to place
  const passage::Judge& judge;
  std::optional<units::Instant> depart{};
};

/// One row in one column.
struct BoardCell {
  Trip trip;
  std::optional<snow::SnowState> snow;  ///< everywhere; nothing: as it is from place to place
  units::Instant depart;
  /// Open as the rig stands; restricted with one of the loads below, or by a decision alone.
  passage::Verdict verdict = passage::Verdict::closed;
  /// What binds on the best way, or what most stands in the one that is nearest to open, a decision
  /// too; nothing where there is no way at all, or the fuel is short. A way that was given is both.
  std::optional<passage::Finding> binding{};
  passage::Stand stand = passage::Stand::missing;
  std::optional<trails::LegId> leg{};        ///< where it binds
  std::optional<trails::LegId> turn_from{};  ///< set: at the turn from there into the leg
  std::string why{};                         ///< in one line, where there is no route
  std::string decision{};                    ///< what a named person would have to decide
  std::vector<trails::LegId> way{};          ///< the best, or the one nearest to open; may be empty
  // Of an open way, of one that waits for a decision alone, and of either where fuel is short.
  double worst_share = 0.0;
  units::Seconds time{};
  units::Metres length{};
  units::Litres fuel{};
  std::optional<units::Litres> fuel_to_spare{};  ///< set: less than the way needs
  passage::OpenLoads loads{};                    ///< that open the way nearest to open
  bool and_decision = false;                     ///< with some of them, a decision besides
  std::size_t places_rewalked = 0;
};

struct DayBoard {
  std::vector<BoardCell> cells;  ///< by row, then by column, as asked
};

/// The safest way of every row in every column, as find_routes answers it, or the way that a row
/// gives, as drive_fixed does; with the fuel for it and the reserve aboard, and walked again; one
/// that waits for decisions alone likewise. Legs are judged once for each column and hour, and ways
/// to a station are found together. Where a row is closed as the rig stands, other loads are tried
/// on the way that was given, or on the one nearest to open, on that of the rig without any load,
/// and on that with a named person's decision besides: judged steps only, ends rounded inwards; the
/// ends of every interval told are asked for as a question of their own.
/// Throws OurFault where a way is worse than found.
[[nodiscard]] DayBoard board_of(std::span<const BoardSnow> columns, const BoardQuestion& question);

/// Boards of the same rows with one column each, as the board of all these columns.
[[nodiscard]] DayBoard side_by_side(std::vector<DayBoard> columns);

}  // namespace rimehaul::day
