// The day board of many rigs as a table for a spreadsheet.
#include "base/joined.h"
#include "card/board_cells.h"
#include "card/csv.h"
#include "card/day_table.h"
#include "card/day_table_words.h"

namespace rimehaul::card {

std::string day_table_csv(const DayTable& table) {
  std::vector<std::string> heads{"route",  "rig", "bed_kg",  "towed_kg",
                                 "depart", "as",  "by_hand", "hours"};
  const std::vector<std::string> cell_heads = board_cell_heads();
  heads.insert(heads.end(), cell_heads.begin(), cell_heads.end());
  std::string text = csv_record(heads);
  for (const DayRow& row : table.rows) {
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
      std::vector<std::string> cells{csv_text(row.name), csv_text(row.rig)};
      const std::vector<std::string> loads = load_cells(row.load, row.trailer);
      cells.insert(cells.end(), loads.begin(), loads.end());
      cells.push_back(units::text_of(table.columns[i].depart));
      cells.push_back(
          csv_text(table.columns[i].snow ? head_of(table.columns[i], table) : "as reported"));
      cells.push_back(csv_text(!row.closed_by_hand.empty() ? "closed by " + row.closed_by_hand
                               : row.permitted.empty()     ? ""
                                                           : "decided by " + row.permitted));
      std::string hours;
      for (const LabelledLine& line : hours_lines(row, table)) {
        hours += (hours.empty() ? "" : "; ") + line.label + ": " + line.text;
      }
      cells.push_back(csv_text(hours));
      const std::vector<std::string> told = board_cells(row.cells[i], row.allowed_share);
      cells.insert(cells.end(), told.begin(), told.end());
      text += csv_record(cells);
    }
  }
  return text;
}

}  // namespace rimehaul::card
