// The day board of many rigs as a table for a spreadsheet.
#include "base/joined.h"
#include "card/board_cells.h"
#include "card/csv.h"
#include "card/day_table.h"
#include "card/day_table_words.h"

namespace rimehaul::card {

namespace {

std::string by_hand_in_short(const DayRow& row) {
  if (!row.closed_by_hand.empty()) {
    return "closed by " + row.closed_by_hand;
  }
  return row.permitted.empty() ? "" : "decided by " + row.permitted;
}

std::string hours_in_short(const DayTable& table, const DayRow& row) {
  std::string hours;
  for (const LabelledLine& line : hours_lines(row, table)) {
    hours += (hours.empty() ? "" : "; ") + line.label + ": " + line.text;
  }
  return hours;
}

/// A cell whose verdict is the one to act on.
BoardRow as_it_stands(const DayRow& row, std::size_t column) {
  BoardRow cell = row.cells[column];
  cell.verdict = verdict_in(row, column);
  return cell;
}

std::string record_of(const DayTable& table, const DayRow& row, std::size_t i) {
  const DayColumn& column = table.columns[i];
  std::vector<std::string> cells{csv_text(row.name), csv_text(row.rig)};
  const auto add = [&cells](const std::vector<std::string>& more) {
    cells.insert(cells.end(), more.begin(), more.end());
  };
  add(load_cells(row.load, row.trailer));
  add({units::text_of(column.depart),
       csv_text(column.snow ? head_of(column, table) : "as reported"),
       csv_text(by_hand_in_short(row)), csv_text(hours_in_short(table, row))});
  add(board_cells(as_it_stands(row, i), row.allowed_share));
  return csv_record(cells);
}

}  // namespace

std::string day_table_csv(const DayTable& table) {
  std::vector<std::string> heads{"route",  "rig", "bed_kg",  "towed_kg",
                                 "depart", "as",  "by_hand", "hours"};
  const std::vector<std::string> cell_heads = board_cell_heads();
  heads.insert(heads.end(), cell_heads.begin(), cell_heads.end());
  std::string text = csv_record(heads);
  for (const DayRow& row : table.rows) {
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
      text += record_of(table, row, i);
    }
  }
  return text;
}

}  // namespace rimehaul::card
