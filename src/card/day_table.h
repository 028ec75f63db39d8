// The day board of many rigs: named routes, trails or pairs of stations, each with its own rig and
// load, by snow class or by the hour, as plain data.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "card/board_report.h"
#include "day/departure_hours.h"

namespace rimehaul::card {

/// What a column was judged for.
struct DayColumn {
  std::optional<snow::SnowState> snow;  ///< everywhere; nothing: as the day's report has it
  units::Instant depart;

  friend bool operator==(const DayColumn&, const DayColumn&) = default;
};

/// One route or trail with its rig and load, column by column.
struct DayRow {
  std::string name;  ///< "Supper run", "Cable House to Fell Lodge", "Gill Way, from ... to ..."
  /// The stations that its way is looked for between, or those and the junctions along its trail.
  std::vector<std::string> by_way_of;
  std::string rig;
  std::string trailer;  ///< empty: without one
  std::string driver_level;
  rig::Load load;
  double allowed_share = 0.0;
  std::vector<BoardRow> cells{};                ///< by column
  std::optional<day::Departures> departures{};  ///< by the hour: of the day, as reported
  std::string closed_by_hand{};                 ///< by whom and why; empty: not
  std::string permitted{};  ///< who takes the decision that it waits for, and why; empty: nobody
  std::string trail{};      ///< that it is, from end to end; empty: the best way between stations
};

/// Who stands for a board, and where in the log that is found.
struct SignedBy {
  std::int64_t board = 0;
  std::string person;
  std::string role;
  units::Instant at;
  units::Instant valid_until;
  std::string log_head;  ///< of the entry before: "17:0123456789abcdef0123"
};

enum class DayBy { snow, hour };

struct DayTable {
  int schema = 1;
  std::string site;
  std::string title;  ///< "NAMED ROUTES"
  DayBy by = DayBy::snow;
  units::Instant depart;  ///< for which weather, day and windows are told
  std::vector<DayColumn> columns;
  std::vector<DayRow> rows;
  std::size_t places_rewalked = 0;
  snow::DayWeather weather;
  snow::Told told_by;
  std::optional<units::Instant> snow_valid_until;
  std::optional<units::Instant> report_ran_out;
  std::vector<std::string> orders;  ///< in force, a line each
  std::vector<std::string> today;
  std::vector<std::string> estimates;
  MadeFrom made_from;
  units::LocalClock local_clock{};
  std::optional<SignedBy> signed_by{};
};

/// "as reported", "wet, groomed" or "08:00".
[[nodiscard]] std::string head_of(const DayColumn& column, const DayTable& table);

/// A row's verdict in a column as people are to act on it: what was computed, closed where it was
/// closed by hand.
[[nodiscard]] passage::Verdict verdict_in(const DayRow& row, std::size_t column);

/// For a terminal; by snow as a table, by the hour as runs of hours alike. No line longer than
/// `columns` (80 or more).
[[nodiscard]] std::string text_of(const DayTable& table, int columns);

/// One row for each route and column (RFC 4180); numbers as in board_csv.
[[nodiscard]] std::string day_table_csv(const DayTable& table);

}  // namespace rimehaul::card
