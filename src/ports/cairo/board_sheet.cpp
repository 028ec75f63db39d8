#include "ports/cairo/board_sheet.h"

#include <algorithm>
#include <utility>

#include "card/board_words.h"
#include "card/figures.h"
#include "card/words.h"
#include "ports/cairo/flow.h"
#include "ports/cairo/map_drawing.h"
#include "ports/cairo/pages.h"

namespace rimehaul::ports::cairo {

namespace {

using card::BoardNotes;
using card::BoardReport;
using card::BoardRow;
using passage::Verdict;

constexpr double kLabel_pt = 62.0;
constexpr double kGap_pt = 5.0;
constexpr double kName_pt = 118.0;
constexpr double kLine_pt = 20.0;

CellSign sign_of(std::optional<Verdict> verdict) {
  return [verdict](Canvas& canvas, Spot left) {
    draw_way(canvas, {left, {left.x_pt + kLine_pt, left.y_pt}}, verdict);
  };
}

PageSize size_for(const BoardReport& report) {
  constexpr std::size_t kMostUpright = 2;
  PageSize size;
  for (int i = 0; i < snow::kSurfaceCount; ++i) {
    if (card::columns_on(static_cast<snow::Surface>(i), report).size() > kMostUpright) {
      return {size.height_pt, size.width_pt};
    }
  }
  return size;
}

void write_head(Flow& flow, const BoardReport& report) {
  flow.title("Day board: " + report.site);
  flow.paragraph(report.rig + (report.trailer.empty() ? "" : " towing " + report.trailer) +
                     "; driver level " + report.driver_level,
                 {.size_pt = 11, .weight = Weight::bold});
  flow.gap(kGap_pt);
  for (const card::LabelledLine& line : card::basis_of(report)) {
    flow.labelled({line.label, line.text}, kLabel_pt);
  }
  flow.paragraph(card::words::planning_aid(), {.size_pt = 9.0, .weight = Weight::bold});
}

/// The verdicts' lines beside their words.
void write_legend(Canvas& canvas, Flow& flow) {
  const std::vector<std::pair<std::optional<Verdict>, std::string>> entries{
      {Verdict::open, "open, with its largest share of a limit"},
      {Verdict::restricted, "restricted"},
      {Verdict::closed, "closed"},
      {std::nullopt, "closed: something is not known"}};
  const Box room = flow.keep(14.0);
  const Canvas::Tag tag{canvas, "P"};
  double x = room.left_pt;
  for (const auto& [verdict, words] : entries) {
    sign_of(verdict)(canvas, {x, room.top_pt + 6});
    x += kSign_pt;
    const double width = canvas.width_of(words, kRunning) + 1;
    canvas.write({x, room.top_pt}, {words, kRunning, width});
    x += width + 16;
  }
}

TableCell cell_of(const BoardRow& row, BoardNotes& notes) {
  const std::string binding = card::binding_words(row);
  return {card::verdict_words(row), (binding.empty() ? "" : binding + " ") + notes.mark_of(row),
          sign_of(card::sign_of(row))};
}

/// The pairs that leave from one station, on one surface.
struct FromStation {
  std::string name;
  std::vector<TableRow> rows;
};

std::vector<FromStation> stations_on(snow::Surface surface, const BoardReport& report,
                                     BoardNotes& notes) {
  std::vector<FromStation> stations;
  const BoardRow* before = nullptr;
  for (const BoardRow& row : report.rows) {
    if (row.snow.surface != surface) {
      continue;
    }
    if (before == nullptr || before->from != row.from) {
      stations.push_back({row.from, {}});
      before = nullptr;
    }
    std::vector<TableRow>& rows = stations.back().rows;
    if (before == nullptr || before->to != row.to) {
      rows.push_back({{{row.to, ""}}, ""});
    }
    rows.back().cells.push_back(cell_of(row, notes));
    before = &row;
  }
  return stations;
}

void write_surface(Flow& flow, const BoardReport& report, snow::Surface surface,
                   BoardNotes& notes) {
  const std::vector<snow::SnowState> snows = card::columns_on(surface, report);
  if (snows.empty()) {
    return;
  }
  flow.heading("On " + std::string{snow::words_for(surface)} + " snow");
  const double each_pt = (flow.column_width() - kName_pt) / static_cast<double>(snows.size());
  for (const FromStation& station : stations_on(surface, report, notes)) {
    std::vector<TableColumn> columns{{"From " + station.name + " to", kName_pt}};
    for (const snow::SnowState& state : snows) {
      columns.push_back({snow::words_for(state.wetness), each_pt});
    }
    flow.table(columns, station.rows);
    flow.gap(kGap_pt);
  }
}

void write_notes(Flow& flow, const BoardNotes& notes) {
  constexpr double kMark_pt = 26.0;
  flow.heading("What binds, or stands in the way nearest to open");
  for (const card::LabelledLine& note : notes.lines()) {
    flow.labelled({note.label, note.text}, kMark_pt);
  }
}

std::vector<std::string> made_from(const BoardReport& report) {
  std::vector<std::string> lines{
      "made " + card::local_text(report.made, report.utc_offset_minutes) +
      "; what is not closed was judged again at " + std::to_string(report.places_rewalked) +
      " places before printing"};
  for (const card::InputFile& input : report.inputs) {
    lines.push_back(input.what + ": " + card::name_and_date(input, report.utc_offset_minutes) +
                    ", SHA-256 " + input.digest.hex());
  }
  std::string program;
  for (const std::string& version : report.versions) {
    program += (program.empty() ? "" : ", ") + version;
  }
  lines.push_back(program);
  return lines;
}

/// What is left of the page in hand, or the whole next one where that is little.
Box rest_of(Pages& pages, double from_pt) {
  constexpr double kLittle_pt = 160.0;
  Box rest = pages.area();
  if (rest.bottom_pt() - from_pt < kLittle_pt) {
    return pages.next();
  }
  rest.height_pt = rest.bottom_pt() - from_pt;
  rest.top_pt = from_pt;
  return rest;
}

DrawnPages draw(const BoardReport& report, int of) {
  const std::string made = card::local_text(report.made, report.utc_offset_minutes);
  Canvas canvas{Form::pdf,
                size_for(report),
                {"Day board: " + report.site + ", " + report.rig, units::text_of(report.made)}};
  Pages pages{canvas, "Day board, " + report.site + ", " + report.rig + ", made " + made, of};
  const auto next_page = [&pages] { return pages.next(); };
  BoardNotes notes;
  Flow flow{canvas, {.area = pages.area()}, next_page};
  write_head(flow, report);
  write_legend(canvas, flow);
  for (int i = 0; i < snow::kSurfaceCount; ++i) {
    write_surface(flow, report, static_cast<snow::Surface>(i), notes);
  }
  Flow behind{
      canvas, {.area = rest_of(pages, flow.corner().y_pt + kGap_pt), .count = 2}, next_page};
  write_notes(behind, notes);
  behind.write({"Today", ItemMark::dash, report.today});
  behind.write({"Cautions", ItemMark::warning, card::board_cautions()});
  behind.write(
      {"Estimates in use (not measured, not published)", ItemMark::dash, report.estimates});
  behind.write({"Made from", ItemMark::dash, made_from(report)});
  const int count = pages.close();
  return {canvas.finish(), count};
}

}  // namespace

card::Printed draw_board(const BoardReport& report) {
  return draw_counted([&report](int of) { return draw(report, of); });
}

}  // namespace rimehaul::ports::cairo
