// The day board as a table for a spreadsheet.
#include "card/board_cells.h"
#include "card/board_report.h"
#include "card/csv.h"

namespace rimehaul::card {

std::string board_csv(const BoardReport& report) {
  const auto record = [](std::vector<std::string> cells, const std::vector<std::string>& told) {
    cells.insert(cells.end(), told.begin(), told.end());
    return csv_record(cells);
  };
  std::string table =
      record({"rig", "bed_kg", "towed_kg", "snow", "surface", "from", "to"}, board_cell_heads());
  const std::vector<std::string> loads = load_cells(report.load, report.trailer);
  for (const BoardRow& row : report.rows) {
    table += record({csv_text(report.rig), loads[0], loads[1], snow::key_of(row.snow.wetness),
                     snow::key_of(row.snow.surface), csv_text(row.from), csv_text(row.to)},
                    board_cells(row, report.allowed_share));
  }
  return table;
}

}  // namespace rimehaul::card
