#include "ports/cairo/day_table_sheet.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "base/joined.h"
#include "card/board_matrix.h"
#include "card/board_words.h"
#include "card/day_table_words.h"
#include "card/figures.h"
#include "card/words.h"
#include "ports/cairo/board_band.h"
#include "ports/cairo/flow.h"
#include "ports/cairo/pages.h"
#include "ports/cairo/verdict_legend.h"

namespace rimehaul::ports::cairo {

namespace {

using card::BoardNotes;
using card::DayRow;
using card::DayTable;
using passage::Verdict;

constexpr double kName_pt = 150.0;
constexpr double kLongName_pt = 330.0;  ///< of a trail, with where it comes from and leads to
constexpr double kLeastColumn_pt = 38.0;
constexpr double kMostColumn_pt = 92.0;
constexpr double kLabel_pt = 58.0;
constexpr double kGap_pt = 6.0;

PageSize page_of(BoardPaper paper) {
  // ISO 216: A3 is two A4 side by side.
  const PageSize a4;
  return paper == BoardPaper::a4 ? PageSize{a4.height_pt, a4.width_pt}
                                 : PageSize{2 * a4.width_pt, a4.height_pt};
}

std::string title_of(const DayTable& table) {
  return "Day board: " + table.site + "; " + table.title;
}

/// Nothing where it is closed because something is not known.
std::optional<Verdict> sign_in(const DayRow& row, std::size_t column) {
  return row.closed_by_hand.empty() ? card::sign_of(row.cells[column])
                                    : std::optional{Verdict::closed};
}

std::string figure_in(const DayRow& row, std::size_t column) {
  return row.closed_by_hand.empty() ? card::figure_of(row.cells[column]) : "no";
}

TableCell cell_of(const DayRow& row, std::size_t column, BoardNotes& notes) {
  const std::string note =
      row.closed_by_hand.empty() ? notes.mark_of(row.cells[column]) : "by hand";
  return {.strong = " ",  // the sign stands alone: in a narrow column no figure fits behind it
          .plain = figure_in(row, column) + " " + note,
          .sign = [verdict = sign_in(row, column)](Canvas& canvas, Spot left) {
            draw_row_line(canvas, left, verdict);
          }};
}

/// What was set by hand, and the hours.
std::string note_under(const DayRow& row, const DayTable& table) {
  std::vector<std::string> notes;
  for (const card::LabelledLine& line : by_hand(row)) {
    notes.push_back(line.label + " " + line.text);
  }
  for (const card::LabelledLine& line : hours_lines(row, table)) {
    notes.push_back(line.label + ": " + line.text);
  }
  return base::joined(notes, "; ");
}

std::string name_head(const DayTable& table) {
  if (!card::is_of_trails(table)) {
    return "route, rig and load";
  }
  return card::rig_of_all(table).empty() ? "trail, rig and load" : "trail";
}

/// Some columns of all rows, and how wide they and the names are.
struct Part {
  std::size_t first;
  std::size_t end;
  double name_pt;
  double column_pt;
};

void write_part(Flow& flow, const DayTable& table, const Part& part, BoardNotes& notes) {
  const auto [first, end, name_pt, column_pt] = part;
  std::vector<TableColumn> columns{{name_head(table), name_pt, Align::left}};
  for (std::size_t i = first; i < end; ++i) {
    columns.push_back({head_of(table.columns[i], table), column_pt, Align::left});
  }
  const bool rig_told = !card::rig_of_all(table).empty();
  std::vector<TableRow> rows;
  for (const DayRow& row : table.rows) {
    TableRow drawn{.cells = {{row.name, rig_told ? "" : card::rig_words(row)}},
                   .note = note_under(row, table)};
    for (std::size_t i = first; i < end; ++i) {
      drawn.cells.push_back(cell_of(row, i, notes));
    }
    rows.push_back(std::move(drawn));
  }
  flow.table(columns, rows);
  flow.gap(kGap_pt);
}

void write_tables(Flow& flow, const DayTable& table, BoardNotes& notes) {
  const double room = flow.column_width() - kName_pt;
  const auto most = static_cast<std::size_t>(std::floor(room / kLeastColumn_pt));
  const std::size_t parts = (table.columns.size() + most - 1) / most;
  const std::size_t across = (table.columns.size() + parts - 1) / parts;
  const double column_pt = std::min(kMostColumn_pt, room / static_cast<double>(across));
  // Long names take what the columns leave.
  const double left_pt = flow.column_width() - column_pt * static_cast<double>(across);
  const double name_pt =
      card::is_of_trails(table) ? std::clamp(left_pt, kName_pt, kLongName_pt) : kName_pt;
  for (std::size_t first = 0; first < table.columns.size(); first += across) {
    const std::size_t end = std::min(first + across, table.columns.size());
    write_part(flow, table, {first, end, name_pt, column_pt}, notes);
  }
}

void write_lines(Flow& flow, const std::vector<card::LabelledLine>& lines, double label_pt) {
  for (const card::LabelledLine& line : lines) {
    flow.labelled({line.label, line.text}, label_pt);
  }
}

/// Lines to sign on, by hand: the paper is what people hold.
void write_signature(Canvas& canvas, Flow& flow, const DayTable& table) {
  if (!table.signed_by) {
    return;
  }
  constexpr double kHeight_pt = 42.0;
  constexpr double kLine_pt = 180.0;
  const Box room = flow.keep(kHeight_pt);
  const double y = room.top_pt + kHeight_pt - 16;
  canvas.line({{room.left_pt, y}, {room.left_pt + kLine_pt, y}}, {.width_pt = 0.8});
  canvas.write({room.left_pt, y + 1},
               {"signature: " + table.signed_by->person, {.size_pt = kSmallest_pt}, kLine_pt});
}

void write_text(Flow& flow, const DayTable& table, const BoardNotes& notes) {
  constexpr double kMark_pt = 26.0;
  flow.heading(card::is_of_trails(table) ? "What binds, or closes a trail"
                                         : "What binds, or stands in the way nearest to open");
  write_lines(flow, notes.lines(), kMark_pt);
  flow.write({"Orders in force", ItemMark::dash,
              table.orders.empty() ? std::vector<std::string>{"none"} : table.orders});
  flow.write({"Today", ItemMark::dash, table.today});
  flow.heading("Verdicts");
  write_lines(flow, card::meanings_of(table), kLabel_pt);
  flow.write({"Cautions", ItemMark::warning, card::board_cautions()});
  flow.write({"Estimates in use (not measured, not published)", ItemMark::dash, table.estimates});
  flow.write({"Made from", ItemMark::dash,
              card::made_from_lines({table.made_from, table.places_rewalked, table.local_clock})});
}

DrawnPages draw(const DayTable& table, BoardPaper paper, int of) {
  const std::string made = card::local_text(table.made_from.made, table.local_clock);
  Canvas canvas{Form::pdf, page_of(paper), {title_of(table), units::text_of(table.made_from.made)}};
  Pages pages{canvas, title_of(table) + ", made " + made, of};
  Flow head{canvas, {.area = pages.area()}, [&pages] { return pages.next(); }};
  head.title(title_of(table));
  write_lines(head, card::basis_of(table), kLabel_pt);
  head.gap(3);
  write_verdict_legend(canvas, head);
  head.gap(3);
  BoardNotes notes;
  write_tables(head, table, notes);
  write_signature(canvas, head, table);
  Box rest = pages.area();
  rest.height_pt -= head.corner().y_pt - rest.top_pt;
  rest.top_pt = head.corner().y_pt;
  const int columns = paper == BoardPaper::a4 ? 3 : 4;
  Flow flow{canvas, {.area = rest, .count = columns, .whole_pt = pages.area().height_pt}, [&pages] {
              return pages.next();
            }};
  write_text(flow, table, notes);
  const int count = pages.close();
  return {canvas.finish(), count};
}

}  // namespace

card::Printed draw_day_table(const DayTable& table, BoardPaper paper) {
  return draw_counted([&](int of) { return draw(table, paper, of); });
}

}  // namespace rimehaul::ports::cairo
