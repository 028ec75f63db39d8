// The outlines of allowed grade and cross-slope as a printed sheet.
#include "ports/cairo/envelope_sheet.h"

#include <algorithm>
#include <string>
#include <vector>

#include "base/joined.h"
#include "card/figures.h"
#include "card/limits_words.h"
#include "card/words.h"
#include "ports/cairo/envelope_plot.h"
#include "ports/cairo/flow.h"
#include "ports/cairo/pages.h"

namespace rimehaul::ports::cairo {

namespace {

constexpr double kLeastPlot_pt = 300.0;
constexpr double kMostPlot_pt = 440.0;
constexpr double kLabel_pt = 84.0;

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

TableCell cell_of(const std::optional<passage::Limit>& limit) {
  return limit ? TableCell{card::limit_words(*limit), card::binding_words(*limit)}
               : TableCell{"closed", ""};
}

TableRow row_of_class(const card::LimitsReport& report, snow::Wetness wetness) {
  const card::LimitsRow* row = row_of(report, wetness);
  if (row == nullptr || row->limits.closed) {
    return {{{"", ""}, {snow::words_for(wetness), ""}, {"", ""}, {"", ""}, {"", ""}},
            row != nullptr ? card::closed_words(*row->limits.closed) : "closed"};
  }
  const CellSign sample = [wetness](Canvas& canvas, Spot left) {
    constexpr double kSample_pt = 36.0;
    canvas.line({left, {left.x_pt + kSample_pt, left.y_pt}}, stroke_of(wetness));
  };
  return {{{"", "", sample},
           {snow::words_for(wetness), ""},
           cell_of(row->limits.climb),
           cell_of(row->limits.descent),
           cell_of(row->limits.cross)},
          ""};
}

void write_table(Flow& flow, const card::LimitsReport& report) {
  constexpr double kSample_pt = 44.0;
  constexpr double kName_pt = 60.0;
  const double third_pt = (flow.column_width() - kSample_pt - kName_pt) / 3.0;
  std::vector<TableRow> rows;
  for (const card::SnowOutline& outline : report.outlines.outlines) {
    rows.push_back(row_of_class(report, outline.wetness));
  }
  flow.table({{"", kSample_pt},
              {"Snow", kName_pt},
              {"Climb, and what binds", third_pt},
              {"Descent, and what binds", third_pt},
              {"Cross-slope, and what binds", third_pt}},
             rows);
}

void write_head(Flow& flow, const card::LimitsReport& report) {
  const std::string surface = snow::words_for(report.outlines.surface);
  flow.title("Allowed grade and cross-slope: " + report.rig);
  flow.paragraph(report.site + "; " + surface + " snow; " +
                     card::towing_words(report.outlines.towing) + "; " +
                     card::words::load(report.outlines.load, report.outlines.towing),
                 {.size_pt = 9.0});
}

void write_foot(Flow& flow, const card::LimitsReport& report) {
  flow.gap(4.0);
  for (const card::LabelledLine& line : card::basis_of(report)) {
    flow.labelled({line.label, line.text}, kLabel_pt);
  }
  flow.labelled({"Ratings in force", base::joined(report.ratings, "; ")}, kLabel_pt);
  flow.labelled({"Estimates", base::joined(report.estimates, "; ")}, kLabel_pt);
  flow.paragraph(card::outranked(), {.size_pt = 9.0, .weight = Weight::bold});
  const std::string made = "Made " +
                           card::local_and_zone_text(report.made_from.made, report.local_clock) +
                           "; " + card::made_from_in_short(report.made_from, report.local_clock);
  // The libraries stand in the JSON; a sheet of the same rig is to look the same with the next
  // ones.
  flow.paragraph(made, {.size_pt = kSmallest_pt, .colour = kQuiet});
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
  Flow flow{canvas, {.area = endless({kMargin_pt, kMargin_pt}, width_pt)}, nullptr};
  write_head(flow, report);
  flow.gap(4.0);
  {
    const Canvas::Tag figure = Canvas::Tag::figure(canvas, figure_words(report));
    draw_envelopes(canvas, {kMargin_pt, flow.corner().y_pt, width_pt, plot_pt}, report.outlines);
  }
  flow.gap(plot_pt + 4.0);
  write_table(flow, report);
  write_foot(flow, report);
  return flow.corner().y_pt;
}

}  // namespace

card::Printed envelope_sheet(const card::LimitsReport& report, Form form) {
  const DocumentFacts facts{.title = "Allowed grade and cross-slope: " + report.rig,
                            .made = units::text_of(report.made_from.made)};
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
