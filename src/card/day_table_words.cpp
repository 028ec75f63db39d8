#include "card/day_table_words.h"

#include <algorithm>
#include <utility>

#include "card/board_words.h"
#include "card/departure_lines.h"
#include "card/figures.h"
#include "card/words.h"
#include "units/rounding.h"

namespace rimehaul::card {

namespace {

std::string day_of(units::Instant moment, const DayTable& table) {
  constexpr std::size_t kDate = 10;
  return local_text(moment, table.local_clock).substr(0, kDate);
}

LabelledLine leave_line(const DayTable& table) {
  if (table.columns.empty()) {
    return {"Leave", "no hour was asked for"};
  }
  const units::Instant first = table.columns.front().depart;
  return table.by == DayBy::snow
             ? LabelledLine{"Leave", local_and_zone_text(first, table.local_clock)}
             : LabelledLine{"Leave", "at each full hour of " + day_of(first, table)};
}

}  // namespace

std::vector<LabelledLine> basis_of(const DayTable& table) {
  std::vector<LabelledLine> lines;
  if (std::string rig = rig_of_all(table); !rig.empty()) {
    lines.push_back({"Rig", std::move(rig)});
  }
  lines.push_back(leave_line(table));
  lines.push_back({"Weather", words::weather(table.weather)});
  lines.push_back({"Snow", told_text(table.told_by, table.local_clock)});
  lines.push_back({"Valid", validity_words({.valid_until = table.snow_valid_until,
                                            .ran_out = table.report_ran_out,
                                            .local_clock = table.local_clock})});
  if (!table.signed_by) {
    lines.push_back({"Signed", "by nobody: no card may be issued from this"});
    return lines;
  }
  const SignedBy& by = *table.signed_by;
  lines.push_back({"Signed", "board " + std::to_string(by.board) + ", by " + by.person + " (" +
                                 by.role + ") " + local_text(by.at, table.local_clock) +
                                 ", until " + local_text(by.valid_until, table.local_clock)});
  lines.push_back({"Log", "before it " + by.log_head});
  return lines;
}

bool is_of_trails(const DayTable& table) {
  return std::ranges::any_of(table.rows, [](const DayRow& row) { return !row.trail.empty(); });
}

std::string rig_of_all(const DayTable& table) {
  if (!is_of_trails(table)) {
    return "";
  }
  const std::string rig = rig_words(table.rows.front());
  const bool all =
      std::ranges::all_of(table.rows, [&](const DayRow& row) { return rig_words(row) == rig; });
  return all ? rig : "";
}

std::vector<LabelledLine> meanings_of(const DayTable& table) {
  std::vector<LabelledLine> lines = meanings();
  if (is_of_trails(table)) {
    lines.front().text =
        "as the rig stands, all along the trail that way, with its largest share of a limit";
  }
  return lines;
}

std::string rig_words(const DayRow& row) {
  return row.rig + (row.trailer.empty() ? "" : " towing " + row.trailer) + ", driver level " +
         row.driver_level + "; " + words::load(row.load, row.trailer);
}

std::vector<LabelledLine> by_hand(const DayRow& row) {
  std::vector<LabelledLine> lines;
  if (!row.closed_by_hand.empty()) {
    lines.push_back({"Closed", "by " + row.closed_by_hand});
  }
  if (!row.permitted.empty()) {
    lines.push_back({"Decided", "by " + row.permitted});
  }
  return lines;
}

std::vector<LabelledLine> hours_lines(const DayRow& row, const DayTable& table) {
  if (!row.departures || !row.closed_by_hand.empty()) {
    return {};
  }
  return departure_lines({*row.departures, table.depart, table.local_clock});
}

std::string day_verdict_words(const DayRow& row, std::size_t column) {
  const BoardRow& cell = row.cells.at(column);
  return row.closed_by_hand.empty() ? verdict_words(cell) : words_for(verdict_in(row, column));
}

std::string beside_verdict(const DayRow& row, std::size_t column) {
  const BoardRow& cell = row.cells.at(column);
  if (!row.closed_by_hand.empty()) {
    return "";
  }
  if (cell.verdict == passage::Verdict::open) {
    return cell_minutes(cell.time) + " ";
  }
  const std::optional<double> share = share_in_cell(cell);
  return share ? cell_percent(*share) + " % " : "";
}

std::string day_reason(const DayRow& row, std::size_t column) {
  return row.closed_by_hand.empty() ? reason_of(row.cells.at(column))
                                    : "closed by " + row.closed_by_hand;
}

}  // namespace rimehaul::card
