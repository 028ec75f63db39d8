// The day board as plain data: every pair of stations by snow, each with its reason.
#pragma once

#include <string>
#include <vector>

#include "card/route_card.h"
#include "day/day_board.h"
#include "units/local_clock.h"

namespace rimehaul::card {

/// One pair in one snow, in names.
struct BoardRow {
  std::string from;
  std::string to;
  snow::SnowState snow;
  passage::Verdict verdict = passage::Verdict::closed;
  std::optional<passage::Finding> binding{};
  passage::Stand stand = passage::Stand::missing;
  std::string trail{};             ///< on which it binds; empty: nothing binds at a place
  std::string turn_from{};         ///< not empty: at the turn from that trail into it
  std::string where_on_trail{};    ///< of a trail of several legs: "from Hut to junction 7"
  std::vector<std::string> way{};  ///< trails of the best way, or of the one nearest to open
  std::string why{};               ///< in one line, where nothing binds and it is not open
  std::string decision{};
  double worst_share = 0.0;  ///< of an open way, as are the next three
  units::Seconds time{};
  units::Metres length{};
  units::Litres fuel{};
  passage::OpenLoads loads{};
  bool and_decision = false;
};

struct BoardReport {
  int schema = 1;
  std::string site;
  std::string rig;
  std::string trailer;  ///< empty: without one
  std::string driver_level;
  rig::Load load;
  double allowed_share = 0.0;
  std::vector<snow::SnowState> snows;  ///< columns, by surface
  std::vector<BoardRow> rows;          ///< by pair, then by snow
  std::size_t places_rewalked = 0;     ///< of all ways that are not closed
  snow::DayWeather weather;
  snow::Told told_by;  ///< who says what the snow and weather are
  std::optional<units::Instant> snow_valid_until;
  std::optional<units::Instant> report_ran_out;  ///< the site's own, before the departure
  units::Instant depart;
  std::vector<std::string> today;  ///< what holds beside the snow: marks, people, help
  std::vector<std::string> estimates;
  MadeFrom made_from;
  units::LocalClock local_clock{};
};

/// The board's cells in names; the rig, its load and what is allowed; the rules' estimates. Site,
/// weather, inputs, versions and hours are left to fill in.
[[nodiscard]] BoardReport board_report(const day::DayBoard& board, const passage::Scene& scene,
                                       const rig::Rig& rig);

/// "carrier side slip on Birk Climb", "turning at the turn from Shed Lane into Shed Bypass", or why
/// there is no way.
[[nodiscard]] std::string reason_of(const BoardRow& row);

/// For a terminal: a block for every station to leave from and surface, a column for every snow
/// class, reasons below in notes. No line longer than `columns` (80 or more).
[[nodiscard]] std::string text_of(const BoardReport& report, int columns);

/// One row each (RFC 4180), units in column names; times, lengths, fuel and shares rounded up.
[[nodiscard]] std::string board_csv(const BoardReport& report);

}  // namespace rimehaul::card
