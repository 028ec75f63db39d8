#include "ports/cairo/audit_sheet.h"

#include <algorithm>

#include "base/require.h"
#include "card/audit_words.h"
#include "card/figures.h"
#include "card/words.h"
#include "ports/cairo/map_drawing.h"
#include "ports/cairo/share_line.h"
#include "ports/cairo/table.h"
#include "units/rounding.h"

namespace rimehaul::ports::cairo {

using audit::Band;
using card::AuditReport;
using card::AuditRow;

namespace {

constexpr double kPointsPerMetre = 72.0 / 0.0254;
constexpr double kSide_pt = 39.7;  // 14 mm
constexpr double kTop_pt = 36.0;
constexpr double kBottom_pt = 46.0;
constexpr double kGap_pt = 8.0;
constexpr double kText_pt = 8.5;

/// Pages with a foot, written from the top down.
class Pages {
 public:
  Pages(Canvas& canvas, const AuditReport& report) : canvas_{canvas}, report_{report} { begin(); }

  [[nodiscard]] double left() const { return kSide_pt; }
  [[nodiscard]] double width() const { return canvas_.size().width_pt - 2 * kSide_pt; }
  [[nodiscard]] double y() const { return y_pt_; }
  void go_on_at(double y_pt) { y_pt_ = y_pt; }
  void gap(double height_pt) { y_pt_ += height_pt; }
  [[nodiscard]] double bottom() const { return canvas_.size().height_pt - kBottom_pt; }

  /// Whether a new page had to be begun for it.
  bool make_room(double height_pt) {
    if (y_pt_ + height_pt <= bottom()) {
      return false;
    }
    next();
    return true;
  }

  void next() {
    canvas_.next_page();
    begin();
  }

  void write(const char* tag, std::string_view text, const Lettering& lettering) {
    const Paragraph paragraph{text, lettering, width()};
    make_room(canvas_.height_of(paragraph));
    const Canvas::Tag part{canvas_, tag};
    y_pt_ += canvas_.write({left(), y_pt_}, paragraph);
  }

  void heading(std::string_view text) {
    gap(kGap_pt);
    make_room(60);  // never alone at the foot
    write("H2", text, {.size_pt = 10.5, .weight = Weight::bold});
    gap(2);
  }

  void labelled(std::string_view label, std::string_view text) {
    constexpr double kLabel_pt = 56.0;
    const Paragraph paragraph{text, {.size_pt = kText_pt}, width() - kLabel_pt};
    make_room(canvas_.height_of(paragraph));
    const Canvas::Tag part{canvas_, "P"};
    canvas_.write({left(), y_pt_}, {label, {.size_pt = kText_pt, .colour = kQuiet}, kLabel_pt - 4});
    y_pt_ += canvas_.write({left() + kLabel_pt, y_pt_}, paragraph) + 1;
  }

 private:
  void begin() {
    ++number_;
    y_pt_ = kTop_pt;
    const double foot = canvas_.size().height_pt - kBottom_pt + 10;
    canvas_.line({{left(), foot}, {left() + width(), foot}}, {.width_pt = 0.5, .colour = kHair});
    const std::string words = "Slope audit, " + report_.site + ", made " +
                              card::local_text(report_.made, report_.utc_offset_minutes) + ". " +
                              std::string{card::words::planning_aid()};
    constexpr double kNumber_pt = 50.0;
    canvas_.write({left(), foot + 3},
                  {words, {.size_pt = kSmallest_pt, .colour = kQuiet}, width() - kNumber_pt});
    canvas_.write({left() + width() - kNumber_pt, foot + 3},
                  {"page " + std::to_string(number_),
                   {.size_pt = kSmallest_pt, .align = Align::right, .colour = kQuiet},
                   kNumber_pt});
  }

  Canvas& canvas_;
  const AuditReport& report_;
  double y_pt_ = kTop_pt;
  int number_ = 0;
};

void write_rows(Canvas& canvas, Pages& pages, const std::vector<TableColumn>& columns,
                const std::vector<TableRow>& rows) {
  Table table{canvas, pages.left(), columns};
  pages.make_room(table.head_height() + 30);
  const Canvas::Tag tag{canvas, "Table"};
  pages.go_on_at(table.write_head(pages.y()));
  for (const TableRow& row : rows) {
    if (pages.make_room(table.height_of(row))) {
      pages.go_on_at(table.write_head(pages.y()));
    }
    pages.go_on_at(table.write_row(pages.y(), row));
  }
}

void write_head(Pages& pages, const AuditReport& report) {
  pages.write("H1", "Slope audit: " + report.site, {.size_pt = 17, .weight = Weight::bold});
  pages.write("P", card::outcome_words(report),
              {.size_pt = 11, .weight = Weight::bold, .colour = report.failed() ? kClosed : kOpen});
  pages.gap(kGap_pt);
  for (const card::LabelledLine& line : card::head_lines(report)) {
    pages.labelled(line.label, line.text);
  }
  pages.gap(3);
  pages.write("P", card::cautions_words(), {.size_pt = kText_pt, .weight = Weight::bold});
}

void write_totals(Canvas& canvas, Pages& pages, const AuditReport& report) {
  pages.heading("Metres of trail by share of the limit, each way that may be driven counted");
  const double band = 56.0;
  const double first = pages.width() - 7 * band;
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
  write_rows(canvas, pages, columns, rows);
}

void write_tightest(Canvas& canvas, Pages& pages, const AuditReport& report) {
  pages.heading("Tightest places of what is open, 50 m and more from each other");
  if (report.tightest.empty()) {
    pages.write("P", "None: nothing is open with a share above 0.", {.size_pt = kText_pt});
    return;
  }
  const std::vector<TableColumn> columns{
      {"", 18, Align::right},
      {"trail", 110, Align::left},
      {"at", 74, Align::left},
      {"check and share", pages.width() - 18 - 110 - 74 - 130, Align::left},
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
  write_rows(canvas, pages, columns, rows);
}

void write_sources(Pages& pages, const AuditReport& report) {
  pages.heading("Ground, estimates and inputs");
  pages.labelled("Map", report.map_frame + "; heights above " + report.vertical_datum);
  for (const std::string& note : report.heights_notes) {
    pages.labelled("Heights", note);
  }
  for (const std::string& estimate : report.estimates) {
    pages.labelled("Estimate", estimate);
  }
  for (const card::AuditedRig& rig : report.rigs) {
    for (const std::string& source : rig.sources) {
      pages.labelled("Rating", rig.name + ", " + source);
    }
  }
  for (const card::InputFile& input : report.inputs) {
    pages.labelled("Input", input.name + " (" + input.what + "), SHA-256 " + input.digest.hex());
  }
  for (const std::string& version : report.versions) {
    pages.labelled("Made by", version);
  }
  pages.gap(3);
  pages.write("P",
              "Every exceedance stands in the CSV; any number can be worked out again with "
              "rimehaul explain at its trail and metre.",
              {.size_pt = kText_pt});
}

struct LegendEntry {
  Band band;
  double share;
  std::string words;
};

void write_legend(Canvas& canvas, Pages& pages, double allowed) {
  const std::string to_allowed = card::allowed_text(allowed);
  const std::vector<LegendEntry> entries{{Band::to_half, 0.25, "0-50 %"},
                                         {Band::to_allowed, allowed, "50 % to " + to_allowed},
                                         {Band::to_whole, 0.9, "over " + to_allowed + ", to 100 %"},
                                         {Band::over_whole, 1.1, "over 100 %"},
                                         {Band::closed, 0.0, "rule, or not known"}};
  const Lettering lettering{.size_pt = kText_pt};
  double x = pages.left();
  const double height = 14.0;
  for (const LegendEntry& entry : entries) {
    constexpr double kLine_pt = 30.0;
    const double needed = kLine_pt + 5 + canvas.width_of(entry.words, lettering) + 8;
    if (x + needed > pages.left() + pages.width()) {
      x = pages.left();
      pages.gap(height);
    }
    const double middle = pages.y() + 6;
    draw_share(canvas, {{x, middle}, {x + kLine_pt, middle}}, {entry.band, entry.share, {allowed}});
    canvas.write({x + kLine_pt + 5, pages.y()}, {entry.words, lettering, needed});
    x += needed;
  }
  pages.gap(height + 2);
}

void write_map(Canvas& canvas, Pages& pages, const AuditReport& report, std::size_t index,
               const card::MapView& map) {
  const std::size_t audited_case = report.maps[index].audited_case;
  const card::AuditedCase& one = report.cases.at(audited_case);
  pages.next();
  pages.write("H1", "Shares of the limit: " + card::case_words(report, audited_case),
              {.size_pt = 14, .weight = Weight::bold});
  const std::size_t of_rig = static_cast<std::size_t>(std::ranges::count(
      report.cases, one.rig, [](const card::AuditedCase& other) { return other.rig; }));
  pages.write("P",
              (of_rig > 1 ? "Of the " + std::to_string(of_rig) +
                                " rows of this rig, the one with most metres closed is drawn. "
                          : std::string{}) +
                  "Where both ways may be driven, the worse is drawn.",
              {.size_pt = kText_pt});
  pages.gap(4);
  write_legend(canvas, pages, report.rigs.at(one.rig).allowed_share);
  const Box box{pages.left(), pages.y(), kAuditMapPaper.width.value() * kPointsPerMetre,
                kAuditMapPaper.height.value() * kPointsPerMetre};
  {
    const Canvas::Tag figure = Canvas::Tag::figure(
        canvas, "Map of the trails of " + report.site + " by share of the limit, " +
                    card::case_words(report, audited_case) +
                    "; the same stands in numbers in the totals and in the CSV.");
    draw_map(canvas, box, map);
  }
  pages.go_on_at(box.bottom_pt() + 5);
  std::string heights = "Map: " + report.map_frame + ". Heights above " + report.vertical_datum;
  for (const std::string& note : map.heights_notes) {
    heights += "; ";
    heights += note;
  }
  pages.write("P", heights + ". Hillshade: sun in the north-west; chequered: no heights.",
              {.size_pt = kSmallest_pt, .colour = kQuiet});
}

}  // namespace

card::Printed draw_audit(const AuditReport& report, const std::vector<card::MapView>& maps) {
  base::require(maps.size() == report.maps.size(), "each map of the audit is there to be drawn");
  Canvas canvas{
      Form::pdf, PageSize{}, {"Slope audit: " + report.site, units::text_of(report.made)}};
  Pages pages{canvas, report};
  write_head(pages, report);
  write_totals(canvas, pages, report);
  write_tightest(canvas, pages, report);
  write_sources(pages, report);
  for (std::size_t i = 0; i < maps.size(); ++i) {
    write_map(canvas, pages, report, i, maps[i]);
  }
  return canvas.finish();
}

}  // namespace rimehaul::ports::cairo
