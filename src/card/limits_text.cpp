// The grade limits of a rig as text for a terminal or a plain printer.
#include "card/figures.h"
#include "card/layout.h"
#include "card/limits_words.h"
#include "card/words.h"

namespace rimehaul::card {

namespace {

constexpr int kSnowWidth = 14;
constexpr int kLimitWidth = 22;
constexpr int kLabelWidth = 16;

void item(Sheet& sheet, std::string_view label, const std::string& text) {
  sheet.labelled({0, kLabelWidth, label}, text);
}

struct Cells {
  std::string snow;
  std::string climb;
  std::string descent;
  std::string cross;
};

void line(Sheet& sheet, const Cells& cells) {
  sheet.as_it_stands(filled(cells.snow, kSnowWidth) + filled(cells.climb, kLimitWidth) +
                     filled(cells.descent, kLimitWidth) + cells.cross);
}

void write_row(const LimitsRow& row, Sheet& sheet) {
  const std::string snow = std::string{"  "} + snow::words_for(row.snow.wetness);
  if (row.limits.closed || !row.limits.climb || !row.limits.descent || !row.limits.cross) {
    sheet.labelled({0, kSnowWidth, snow},
                   row.limits.closed ? closed_words(*row.limits.closed) : "closed");
    return;
  }
  line(sheet, {snow, limit_words(*row.limits.climb), limit_words(*row.limits.descent),
               limit_words(*row.limits.cross)});
  line(sheet, {"", binding_words(*row.limits.climb), binding_words(*row.limits.descent),
               binding_words(*row.limits.cross)});
}

void write_table(const LimitsTable& table, Sheet& sheet) {
  sheet.heading(towing_words(table.towing) + ", " + load_case_words(table.load_case));
  item(sheet, "Load", words::load(table.load, table.towing));
  const snow::SnowState* before = nullptr;
  line(sheet, {"Snow", "Climb", "Descent", "Cross-slope"});
  sheet.rule('-');
  for (const LimitsRow& row : table.rows) {
    if (before == nullptr || before->surface != row.snow.surface) {
      sheet.paragraph(snow::words_for(row.snow.surface));
    }
    write_row(row, sheet);
    before = &row.snow;
  }
}

}  // namespace

std::string text_of(const LimitsReport& report, int columns) {
  Sheet sheet{columns};
  sheet.both_ends({"LIMITS", report.site});
  sheet.paragraph(report.rig +
                  ": steepest climb, descent and cross-slope, with the check that "
                  "binds there");
  sheet.rule('=');
  for (const LabelledLine& line : basis_of(report)) {
    item(sheet, line.label, line.text);
  }
  for (const std::string& rating : report.ratings) {
    item(sheet, "Rating in force", rating);
  }
  sheet.paragraph(outranked());
  for (const LimitsTable& table : report.tables) {
    write_table(table, sheet);
  }
  sheet.heading("ESTIMATES IN USE");
  sheet.list("-", report.estimates);
  return sheet.text();
}

}  // namespace rimehaul::card
