// The day board of many rigs as text for a terminal or a plain printer, readable without colour.
#include <algorithm>

#include "base/joined.h"
#include "card/board_words.h"
#include "card/day_table.h"
#include "card/day_table_words.h"
#include "card/figures.h"
#include "card/layout.h"
#include "card/words.h"

namespace rimehaul::card {

namespace {

constexpr int kCellWidth = 12;
constexpr int kLabelWidth = 11;
constexpr int kHoursWidth = 16;
constexpr int kVerdictWidth = 13;

std::string trimmed(std::string line) {
  line.erase(line.find_last_not_of(' ') + 1);
  return line;
}

/// As many columns as stand beside each other.
struct Columns {
  std::size_t first;
  std::size_t end;
};

void write_cells(Sheet& sheet, const DayTable& table, const DayRow& row, Columns columns,
                 BoardNotes& notes) {
  std::string heads;
  std::string surfaces;
  std::string verdicts;
  std::string below;
  for (std::size_t i = columns.first; i < columns.end; ++i) {
    const std::optional<snow::SnowState>& snow = table.columns[i].snow;
    heads += filled(snow ? snow::words_for(snow->wetness) : head_of(table.columns[i], table),
                    kCellWidth);
    surfaces += filled(snow ? snow::words_for(snow->surface) : "", kCellWidth);
    verdicts += filled(day_verdict_words(row, i), kCellWidth);
    below += filled(beside_verdict(row, i) + notes.mark_of(row.cells[i]), kCellWidth);
  }
  for (const std::string& line : {heads, surfaces, verdicts, below}) {
    sheet.as_it_stands(trimmed("  " + line));
  }
}

void write_by_snow(Sheet& sheet, const DayTable& table, const DayRow& row, int width,
                   BoardNotes& notes) {
  const auto across = static_cast<std::size_t>((width - 2) / kCellWidth);
  for (std::size_t first = 0; first < table.columns.size(); first += across) {
    write_cells(sheet, table, row, {first, std::min(first + across, table.columns.size())}, notes);
  }
}

/// Hours alike stand together: from the first, up to the beginning of the first that differs.
void write_by_hour(Sheet& sheet, const DayTable& table, const DayRow& row, BoardNotes& notes) {
  for (std::size_t first = 0; first < row.cells.size();) {
    std::size_t end = first + 1;
    const auto told = [&](std::size_t i) {
      return filled(day_verdict_words(row, i), kVerdictWidth) + beside_verdict(row, i) +
             notes.mark_of(row.cells[i]);
    };
    const std::string first_told = told(first);
    while (end < row.cells.size() && told(end) == first_told) {
      ++end;
    }
    const std::string from = head_of(table.columns[first], table);
    const std::string hours =
        end == first + 1 ? from : from + " to " + head_of(table.columns[end - 1], table);
    sheet.as_it_stands(trimmed("  " + filled(hours, kHoursWidth) + first_told));
    first = end;
  }
}

void write_row(Sheet& sheet, const DayTable& table, const DayRow& row, int width,
               BoardNotes& notes) {
  sheet.heading(row.name);
  if (rig_of_all(table).empty()) {
    sheet.labelled({2, kLabelWidth, "Rig"}, rig_words(row));
  }
  if (row.trail.empty() || row.by_way_of.size() > 2) {  // else the trail's name says it
    sheet.labelled({2, kLabelWidth, "Way"}, base::joined(row.by_way_of, " - "));
  }
  for (const LabelledLine& line : by_hand(row)) {
    sheet.labelled({2, kLabelWidth, line.label}, line.text);
  }
  if (table.by == DayBy::snow) {
    write_by_snow(sheet, table, row, width, notes);
  } else {
    write_by_hour(sheet, table, row, notes);
    for (const LabelledLine& line : hours_lines(row, table)) {
      sheet.labelled({2, kLabelWidth, line.label}, line.text);
    }
  }
}

}  // namespace

std::string text_of(const DayTable& table, int columns) {
  Sheet sheet{columns};
  sheet.both_ends({"DAY BOARD: " + table.title, table.site});
  sheet.rule('=');
  for (const LabelledLine& line : basis_of(table)) {
    sheet.labelled({0, kLabelWidth, line.label}, line.text);
  }
  for (const LabelledLine& line : meanings_of(table)) {
    sheet.labelled({0, kLabelWidth, line.label}, line.text);
  }
  sheet.paragraph(words::planning_aid());
  BoardNotes notes;
  for (const DayRow& row : table.rows) {
    write_row(sheet, table, row, columns, notes);
  }
  sheet.heading(is_of_trails(table) ? "WHAT BINDS, OR CLOSES A TRAIL"
                                    : "WHAT BINDS, OR STANDS IN THE WAY NEAREST TO OPEN");
  for (const LabelledLine& note : notes.lines()) {
    sheet.labelled({0, 6, note.label}, note.text);
  }
  sheet.heading("ORDERS IN FORCE");
  sheet.list("-", table.orders.empty() ? std::vector<std::string>{"none"} : table.orders);
  sheet.heading("TODAY");
  sheet.list("-", table.today);
  sheet.heading("CAUTIONS");
  sheet.list("-", board_cautions());
  sheet.heading("ESTIMATES IN USE");
  sheet.list("-", table.estimates);
  return sheet.text();
}

}  // namespace rimehaul::card
