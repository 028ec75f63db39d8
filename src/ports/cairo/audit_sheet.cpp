#include "ports/cairo/audit_sheet.h"

#include <algorithm>

#include "base/joined.h"
#include "base/require.h"
#include "card/audit_words.h"
#include "card/figures.h"
#include "ports/cairo/flow.h"
#include "ports/cairo/map_drawing.h"
#include "ports/cairo/pages.h"
#include "ports/cairo/way_line.h"
#include "units/rounding.h"

namespace rimehaul::ports::cairo {

using audit::Band;
using card::AuditReport;
using card::AuditRow;

namespace {

constexpr double kPointsPerMetre = 72.0 / 0.0254;
constexpr double kLabel_pt = 60.0;
constexpr double kGap_pt = 5.0;

void write_head(Flow& flow, const AuditReport& report) {
  flow.title("Slope audit: " + report.site);
  flow.paragraph(
      card::outcome_words(report),
      {.size_pt = 11, .weight = Weight::bold, .colour = report.failed() ? kClosed : kOpen});
  flow.gap(kGap_pt);
  for (const card::LabelledLine& line : card::head_lines(report)) {
    flow.labelled({line.label, line.text}, kLabel_pt);
  }
  flow.gap(3);
  flow.paragraph(card::cautions_words(), {.size_pt = kRunning.size_pt, .weight = Weight::bold});
}

void write_totals(Flow& flow, const AuditReport& report) {
  flow.heading("Metres of trail by share of the limit, each way that may be driven counted");
  const double band = 56.0;
  const double first = flow.column_width() - 7 * band;
  std::vector<TableColumn> columns{{"rig, load, snow", first, Align::left}};
  for (int i = 0; i < audit::kBandCount; ++i) {
    columns.push_back(
        {std::string{card::band_words(static_cast<Band>(i))} + "\nm", band, Align::right});
  }
  columns.push_back({"to be\ndecided, m", band, Align::right});
  columns.push_back({"exceed-\nances", band, Align::right});
  std::vector<TableRow> rows;
  for (std::size_t i = 0; i < report.cases.size(); ++i) {
    const card::AuditedCase& one = report.cases[i];
    TableRow row{{{"", card::case_words(report, i)}}, ""};
    for (int j = 0; j < audit::kBandCount; ++j) {
      row.cells.push_back({"", card::metres_words(one.lengths.of(static_cast<Band>(j)))});
    }
    row.cells.push_back({"", card::metres_words(one.lengths.waiting)});
    row.cells.push_back({"", std::to_string(one.exceedances)});
    rows.push_back(std::move(row));
  }
  flow.table(columns, rows);
}

void write_tightest(Flow& flow, const AuditReport& report) {
  flow.heading("Tightest places of what is open, 50 m and more from each other");
  if (report.tightest.empty()) {
    flow.paragraph("None: nothing is open with a share above 0.");
    return;
  }
  const std::vector<TableColumn> columns{
      {"", 18, Align::right},
      {"trail", 110, Align::left},
      {"at", 74, Align::left},
      {"check and share", flow.column_width() - 18 - 110 - 74 - 130, Align::left},
      {"worst in", 130, Align::left}};
  std::vector<TableRow> rows;
  int number = 0;
  for (const AuditRow& row : report.tightest) {
    const std::string at = units::text_of(row.place.at.value(), 0, units::Round::nearest) + " m\n" +
                           std::string{card::way_words(row.place.way)};
    rows.push_back({{{std::to_string(++number), ""},
                     {"", report.trails[row.place.trail].name},
                     {"", at},
                     {std::string{passage::facts_of(row.place.finding.check).title},
                      card::interval_words(row.place)},
                     {"", card::case_words(report, row.audited_case)}},
                    ""});
  }
  flow.table(columns, rows);
}

void write_sources(Flow& flow, const AuditReport& report) {
  flow.heading("Ground, estimates and inputs");
  flow.labelled({"Map", report.map_frame + "; heights above " + report.vertical_datum}, kLabel_pt);
  for (const std::string& note : report.heights_notes) {
    flow.labelled({"Heights", note}, kLabel_pt);
  }
  flow.labelled({"Estimates", base::joined(report.estimates, "; ")}, kLabel_pt);
  for (const card::AuditedRig& rig : report.rigs) {
    for (const std::string& source : rig.sources) {
      flow.labelled({"Rating", rig.name + ", " + source}, kLabel_pt);
    }
  }
  for (const card::InputFile& input : report.made_from.inputs) {
    flow.labelled({"Input", input.name + " (" + input.what + "), SHA-256 " + input.digest.hex()},
                  kLabel_pt);
  }
  flow.labelled({"Made by", base::joined(report.made_from.versions, "; ")}, kLabel_pt);
  flow.gap(3);
  flow.paragraph(
      "Every exceedance stands in the CSV; any number can be worked out again with "
      "rimehaul explain at its trail and metre.");
}

struct LegendEntry {
  Band band;
  double share;
  std::string words;
};

void write_legend(Canvas& canvas, Flow& flow, double allowed) {
  const std::string to_allowed = card::allowed_text(allowed);
  const std::vector<LegendEntry> entries{{Band::to_half, 0.25, "0-50 %"},
                                         {Band::to_allowed, allowed, "50 % to " + to_allowed},
                                         {Band::to_whole, 0.9, "over " + to_allowed + ", to 100 %"},
                                         {Band::over_whole, 1.1, "over 100 %"},
                                         {Band::closed, 0.0, "rule, or not known"}};
  const Lettering& lettering = kRunning;
  double x = flow.corner().x_pt;
  const double height = 14.0;
  for (const LegendEntry& entry : entries) {
    constexpr double kLine_pt = 30.0;
    const double needed = kLine_pt + 5 + canvas.width_of(entry.words, lettering) + 8;
    if (x + needed > flow.corner().x_pt + flow.column_width()) {
      x = flow.corner().x_pt;
      flow.gap(height);
    }
    const double middle = flow.corner().y_pt + 6;
    draw_share(canvas, {{x, middle}, {x + kLine_pt, middle}}, {entry.band, entry.share, {allowed}});
    canvas.write({x + kLine_pt + 5, flow.corner().y_pt}, {entry.words, lettering, needed});
    x += needed;
  }
  flow.gap(height + 2);
}

void write_map(Canvas& canvas, Flow& flow, const AuditReport& report, std::size_t index,
               const card::MapView& map) {
  const std::size_t audited_case = report.maps[index].audited_case;
  const card::AuditedCase& one = report.cases.at(audited_case);
  constexpr double kAround_pt = 90.0;  // title, legend and the words below
  const double height_pt = map.paper.height.value() * kPointsPerMetre;
  flow.gap(kGap_pt);
  flow.make_room(height_pt + kAround_pt);
  flow.title("Shares of the limit: " + card::case_words(report, audited_case));
  const std::size_t of_rig = static_cast<std::size_t>(std::ranges::count(
      report.cases, one.rig, [](const card::AuditedCase& other) { return other.rig; }));
  flow.paragraph((of_rig > 1 ? "Of the " + std::to_string(of_rig) +
                                   " rows of this rig, the one with most metres closed is drawn. "
                             : std::string{}) +
                 "Where both ways may be driven, the worse is drawn.");
  flow.gap(4);
  write_legend(canvas, flow, report.rigs.at(one.rig).allowed_share);
  const double width_pt = map.paper.width.value() * kPointsPerMetre;
  Box box = flow.keep(height_pt);
  box.left_pt += (box.width_pt - width_pt) / 2;
  box.width_pt = width_pt;
  {
    const Canvas::Tag figure = Canvas::Tag::figure(
        canvas, "Map of the trails of " + report.site + " by share of the limit, " +
                    card::case_words(report, audited_case) +
                    "; the same stands in numbers in the totals and in the CSV.");
    draw_map(canvas, box, map);
  }
  flow.gap(kGap_pt);
  std::string heights = "Map: " + report.map_frame + ". Heights above " + report.vertical_datum;
  for (const std::string& note : map.heights_notes) {
    heights += "; ";
    heights += note;
  }
  flow.paragraph(heights + ". Hillshade: sun in the north-west; chequered: no heights.",
                 {.size_pt = kSmallest_pt, .colour = kQuiet});
}

}  // namespace

card::Printed draw_audit(const AuditReport& report, const std::vector<card::MapView>& maps) {
  base::require(maps.size() == report.maps.size(), "each map of the audit is there to be drawn");
  const std::string about = "Slope audit, " + report.site + ", made " +
                            card::local_text(report.made_from.made, report.local_clock);
  return draw_counted([&](int of) {
    Canvas canvas{Form::pdf,
                  PageSize{},
                  {"Slope audit: " + report.site, units::text_of(report.made_from.made)}};
    Pages pages{canvas, about, of};
    Flow flow{canvas, {.area = pages.area()}, [&pages] { return pages.next(); }};
    write_head(flow, report);
    write_totals(flow, report);
    write_tightest(flow, report);
    write_sources(flow, report);
    for (std::size_t i = 0; i < maps.size(); ++i) {
      write_map(canvas, flow, report, i, maps[i]);
    }
    const int count = pages.close();
    return DrawnPages{canvas.finish(), count};
  });
}

}  // namespace rimehaul::ports::cairo
