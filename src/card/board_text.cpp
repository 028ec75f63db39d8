// The day board as text for a terminal or a plain printer, readable without colour.
#include <algorithm>

#include "card/board_words.h"
#include "card/layout.h"
#include "card/words.h"
#include "units/rounding.h"

namespace rimehaul::card {

namespace {

constexpr int kNameWidth = 20;
constexpr int kCellWidth = 12;
constexpr int kLabelWidth = 11;

/// The two lines of one destination.
class PairLines {
 public:
  void add(const BoardRow& row, BoardNotes& notes) {
    const bool open = row.verdict == passage::Verdict::open;
    const std::optional<double> share = share_in_cell(row);
    const std::string before = open    ? cell_minutes(row.time) + " "
                               : share ? cell_percent(*share) + " % "
                                       : "";
    upper_ += filled(verdict_words(row), kCellWidth);
    lower_ += filled(before + notes.mark_of(row), kCellWidth);
  }

  void write(Sheet& sheet, const std::string& name) const {
    const bool fits = width_of(name) < kNameWidth;
    if (!fits) {
      sheet.paragraph(name);
    }
    sheet.as_it_stands(trimmed(filled(fits ? name : "", kNameWidth) + upper_));
    sheet.as_it_stands(trimmed(std::string(kNameWidth, ' ') + lower_));
  }

 private:
  static std::string trimmed(std::string line) {
    line.erase(line.find_last_not_of(' ') + 1);
    return line;
  }

  std::string upper_;
  std::string lower_;
};

void write_surface(Sheet& sheet, const BoardReport& report, snow::Surface surface,
                   BoardNotes& notes) {
  std::string head = filled("to", kNameWidth);
  for (const snow::SnowState& state : columns_on(surface, report)) {
    head += filled(snow::words_for(state.wetness), kCellWidth);
  }
  head.erase(head.find_last_not_of(' ') + 1);
  const std::string* from = nullptr;
  std::size_t i = 0;
  while (i < report.rows.size()) {
    const BoardRow& first = report.rows[i];
    PairLines lines;
    for (; i < report.rows.size() && report.rows[i].from == first.from &&
           report.rows[i].to == first.to;
         ++i) {
      if (report.rows[i].snow.surface == surface) {
        lines.add(report.rows[i], notes);
      }
    }
    if (from == nullptr || *from != first.from) {
      from = &first.from;
      sheet.heading("FROM " + first.from + ", " + snow::words_for(surface) + " snow");
      sheet.as_it_stands(head);
      sheet.rule('-');
    }
    lines.write(sheet, first.to);
  }
}

}  // namespace

std::string text_of(const BoardReport& report, int columns) {
  Sheet sheet{columns};
  sheet.both_ends({"DAY BOARD", report.site});
  sheet.paragraph(report.rig + ", driver level " + report.driver_level);
  sheet.rule('=');
  for (const LabelledLine& line : basis_of(report)) {
    sheet.labelled({0, kLabelWidth, line.label}, line.text);
  }
  for (const LabelledLine& line : meanings()) {
    sheet.labelled({0, kLabelWidth, line.label}, line.text);
  }
  sheet.paragraph(words::planning_aid());
  BoardNotes notes;
  for (int i = 0; i < snow::kSurfaceCount; ++i) {
    const auto surface = static_cast<snow::Surface>(i);
    if (!columns_on(surface, report).empty()) {
      write_surface(sheet, report, surface, notes);
    }
  }
  sheet.heading("WHAT BINDS, OR STANDS IN THE WAY NEAREST TO OPEN");
  for (const LabelledLine& note : notes.lines()) {
    sheet.labelled({0, 6, note.label}, note.text);
  }
  sheet.heading("TODAY");
  sheet.list("-", report.today);
  sheet.heading("CAUTIONS");
  sheet.list("-", board_cautions());
  sheet.heading("ESTIMATES IN USE");
  sheet.list("-", report.estimates);
  return sheet.text();
}

}  // namespace rimehaul::card
