// The outlines of allowed grade and cross-slope as a printed sheet.
#include "ports/cairo/envelope_sheet.h"

#include <algorithm>
#include <string>
#include <vector>

#include "card/figures.h"
#include "card/limits_words.h"
#include "card/words.h"
#include "ports/cairo/column.h"
#include "ports/cairo/envelope_plot.h"

namespace rimehaul::ports::cairo {

namespace {

constexpr double kMargin_pt = 40.0;
constexpr double kLeastPlot_pt = 300.0;
constexpr double kMostPlot_pt = 440.0;
constexpr double kLabel_pt = 78.0;

using Cell = Column::Cell;

constexpr Lettering kText{.size_pt = kSmallest_pt};
constexpr Lettering kBold{.size_pt = kSmallest_pt, .weight = Weight::bold};

/// The tables' row of a snow class for the rig as given: the outlines' own rig, load and surface.
const card::LimitsRow* row_of(const card::LimitsReport& report, snow::Wetness wetness) {
  for (const card::LimitsTable& table : report.tables) {
    if (table.towing != report.outlines.towing || table.load != report.outlines.load) {
      continue;
    }
    for (const card::LimitsRow& row : table.rows) {
      if (row.snow == snow::SnowState{wetness, report.outlines.surface}) {
        return &row;
      }
    }
  }
  return nullptr;
}

std::string cell_words(const std::optional<passage::Limit>& limit) {
  return limit ? card::limit_words(*limit) + "\n" + card::binding_words(*limit) : "closed";
}

void write_class(Canvas& canvas, Column& column, const card::LimitsReport& report,
                 snow::Wetness wetness) {
  constexpr double kSample_pt = 44.0;
  constexpr double kName_pt = 60.0;
  const double third_pt = (column.width_pt() - kSample_pt - kName_pt) / 3.0;
  const double line_pt = column.at_pt() + 6.0;
  const card::LimitsRow* row = row_of(report, wetness);
  const bool open = row != nullptr && !row->limits.closed;
  if (open) {
    canvas.line({{column.left_pt(), line_pt}, {column.left_pt() + kSample_pt - 8.0, line_pt}},
                stroke_of(wetness));
  }
  std::vector<Cell> cells{{kSample_pt, "", kText}, {kName_pt, snow::words_for(wetness), kBold}};
  if (open) {
    cells.push_back({third_pt, cell_words(row->limits.climb), kText});
    cells.push_back({third_pt, cell_words(row->limits.descent), kText});
    cells.push_back({third_pt, cell_words(row->limits.cross), kText});
  } else {
    const bool told = row != nullptr && row->limits.closed.has_value();
    cells.push_back(
        {3.0 * third_pt, told ? card::closed_words(*row->limits.closed) : "closed", kText});
  }
  column.row(cells);
}

void write_table(Canvas& canvas, Column& column, const card::LimitsReport& report) {
  constexpr double kBefore_pt = 104.0;
  const Canvas::Tag table{canvas, "Table"};
  const double third_pt = (column.width_pt() - kBefore_pt) / 3.0;
  column.row({{kBefore_pt, "Snow", kBold},
              {third_pt, "Climb, and what binds", kBold},
              {third_pt, "Descent, and what binds", kBold},
              {third_pt, "Cross-slope, and what binds", kBold}});
  column.rule();
  for (const card::SnowOutline& outline : report.outlines.outlines) {
    write_class(canvas, column, report, outline.wetness);
  }
}

void write_head(Column& column, const card::LimitsReport& report) {
  const std::string surface = snow::words_for(report.outlines.surface);
  column.title("Allowed grade and cross-slope: " + report.rig);
  column.paragraph(report.site + "; " + surface + " snow; " +
                       card::towing_words(report.outlines.towing) + "; " +
                       card::words::load(report.outlines.load, report.outlines.towing),
                   {.size_pt = 9.0});
}

void write_foot(Column& column, const card::LimitsReport& report) {
  column.gap(4.0);
  for (const card::LabelledWords& line : card::basis_of(report)) {
    column.labelled({line.label, line.text}, kLabel_pt);
  }
  std::string ratings;
  for (const std::string& rating : report.ratings) {
    ratings += (ratings.empty() ? "" : "; ") + rating;
  }
  column.labelled({"Ratings in force", ratings}, kLabel_pt);
  std::string estimates;
  for (const std::string& estimate : report.estimates) {
    estimates += (estimates.empty() ? "" : "; ") + estimate;
  }
  column.labelled({"Estimates", estimates}, kLabel_pt);
  column.paragraph(card::outranked(), {.size_pt = 9.0, .weight = Weight::bold});
  std::string made = "Made " + card::local_text(report.made, report.utc_offset_minutes);
  // The libraries stand in the JSON; a sheet of the same rig is to look the same with the next
  // ones.
  if (!report.versions.empty()) {
    made += "; " + report.versions.front();
  }
  column.paragraph(made, {.size_pt = kSmallest_pt, .colour = kQuiet});
}

std::string figure_words(const card::LimitsReport& report) {
  std::string words = "Outlines of the allowed grade and cross-slope of " + report.rig + ", on " +
                      snow::words_for(report.outlines.surface) + " snow: ";
  for (const card::SnowOutline& outline : report.outlines.outlines) {
    const card::LimitsRow* row = row_of(report, outline.wetness);
    words += std::string{snow::words_for(outline.wetness)} + " ";
    words += row != nullptr && !row->limits.closed
                 ? "climb " + card::limit_words(*row->limits.climb) + ", descent " +
                       card::limit_words(*row->limits.descent) + ", cross-slope " +
                       card::limit_words(*row->limits.cross) + "; "
                 : "closed; ";
  }
  return words;
}

/// Draws the page with the plot so high; returns where its words end.
double draw(Canvas& canvas, const card::LimitsReport& report, double plot_pt) {
  const double width_pt = canvas.size().width_pt - 2 * kMargin_pt;
  Column column{canvas, {{kMargin_pt, kMargin_pt}, width_pt}};
  write_head(column, report);
  column.gap(4.0);
  {
    const Canvas::Tag figure = Canvas::Tag::figure(canvas, figure_words(report));
    draw_envelopes(canvas, {kMargin_pt, column.at_pt(), width_pt, plot_pt}, report.outlines);
  }
  column.gap(plot_pt + 4.0);
  write_table(canvas, column, report);
  write_foot(column, report);
  return column.at_pt();
}

}  // namespace

card::Printed envelope_sheet(const card::LimitsReport& report, Form form) {
  const DocumentFacts facts{.title = "Allowed grade and cross-slope: " + report.rig,
                            .made = units::text_of(report.made)};
  PageSize size;
  double words_pt = 0.0;
  {
    Canvas trial{form, size, facts};  // drawn for its height alone
    words_pt = draw(trial, report, kLeastPlot_pt) - kLeastPlot_pt;
  }
  const double plot_pt =
      std::clamp(size.height_pt - kMargin_pt - words_pt, kLeastPlot_pt, kMostPlot_pt);
  size.height_pt = std::max(size.height_pt, words_pt + plot_pt + kMargin_pt);
  Canvas canvas{form, size, facts};
  draw(canvas, report, plot_pt);
  return canvas.finish();
}

}  // namespace rimehaul::ports::cairo
