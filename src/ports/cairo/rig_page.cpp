// The rig sheet as a printed page.
#include "ports/cairo/rig_page.h"

#include <algorithm>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "base/joined.h"
#include "card/figures.h"
#include "card/limits_words.h"
#include "card/rig_words.h"
#include "card/words.h"
#include "ports/cairo/flow.h"
#include "ports/cairo/pages.h"
#include "ports/cairo/rig_drawing.h"

namespace rimehaul::ports::cairo {

namespace {

constexpr double kLabel_pt = 78.0;
constexpr Lettering kBold{.size_pt = kSmallest_pt, .weight = Weight::bold};

void write_head(Flow& flow, const card::RigSheet& sheet) {
  flow.title("Rig sheet: " + sheet.rig);
  if (const std::string headline = card::load_headline(sheet); !headline.empty()) {
    flow.paragraph(headline, {.size_pt = 12.0, .weight = Weight::bold, .colour = kClosed});
  }
  flow.paragraph(sheet.site + "; " +
                     card::words::load(sheet.load, sheet.trailer ? sheet.trailer->name : "") +
                     "; " + card::scale_words(sheet.total) + " in all; " +
                     card::pressure_words(sheet.pressure) +
                     " under the carrier's driven tracks; driver level " + sheet.driver_level,
                 {.size_pt = 9.0});
  flow.paragraph(card::outranked(), kBold);
  // The libraries stand in the JSON; a sheet of the same rig is to look the same with the next
  // ones.
  const std::string made = "Made " +
                           card::local_and_zone_text(sheet.made_from.made, sheet.local_clock) +
                           "; " + card::made_from_in_short(sheet.made_from, sheet.local_clock);
  flow.paragraph(made, {.size_pt = kSmallest_pt, .colour = kQuiet});
}

TableRow row_of(const card::NamedMass& mass) {
  return {{{"", mass.name},
           {"", card::scale_words(mass.placed.mass)},
           {"", card::place_words(mass.placed.at)}},
          ""};
}

TableRow in_bold(TableRow row) {
  for (TableCell& cell : row.cells) {
    std::swap(cell.strong, cell.plain);
  }
  return row;
}

void write_masses(Flow& flow, const card::SheetBody& body) {
  std::vector<TableRow> rows;
  for (const card::NamedMass& mass : body.masses) {
    rows.push_back(row_of(mass));
  }
  rows.push_back(in_bold(row_of({"all, as loaded", {body.as_loaded.mass, body.as_loaded.centre}})));
  rows.push_back(row_of({"all, without load", {body.empty.mass, body.empty.centre}}));
  flow.table({{"Mass", 150.0},
              {"", 60.0, Align::right},
              {"Where, from the rear end of the contact", flow.column_width() - 210.0}},
             rows);
}

void write_tips(Flow& flow, const card::SheetBody& body) {
  const double each_pt = (flow.column_width() - 150.0) / 3.0;
  std::vector<TableRow> rows;
  for (const card::TipAngle& tip : body.tips) {
    rows.push_back({{{"", std::string{card::tip_way_words(tip.way)}},
                     {"", card::tip_words(tip.as_loaded)},
                     {"", card::tip_words(tip.empty)},
                     {"", card::tip_words(tip.usable)}},
                    ""});
  }
  flow.table({{"Tip angle over the", 150.0},
              {"as loaded", each_pt},
              {"without load", each_pt},
              {"usable as loaded", each_pt}},
             rows);
}

void write_body(Flow& flow, const card::SheetBody& body, const std::string& kind) {
  const double line_pt = 13.0;
  flow.make_room(line_pt * static_cast<double>(body.masses.size() + 10));
  flow.heading(kind + " " + body.name);
  flow.paragraph(body.provenance);
  write_masses(flow, body);
  flow.gap(3.0);
  write_tips(flow, body);
}

void write_foot(Flow& flow, const card::RigSheet& sheet) {
  flow.gap(3.0);
  if (sheet.hitch) {
    flow.labelled({"Hitch", base::joined(card::hitch_lines(sheet), "; ")}, kLabel_pt);
  }
  flow.paragraph(card::tips_note(sheet));
  flow.heading("Loads against ratings");
  for (const std::string& line : card::load_lines(sheet)) {
    flow.paragraph(line);
  }
  flow.heading("Ratings for slopes");
  for (const card::SheetRatings& ratings : sheet.ratings) {
    flow.labelled(
        {ratings.way, (ratings.in_force ? "in force: " : "") + card::ratings_line(ratings)},
        kLabel_pt);
  }
  flow.labelled({"Estimates", base::joined(sheet.estimates, "; ")}, kLabel_pt);
}

std::string figure_words(const card::RigSheet& sheet) {
  std::string words = "The rig to scale, from above and from the side: centre of gravity of " +
                      sheet.carrier.name + " " + card::place_words(sheet.carrier.as_loaded.centre);
  if (sheet.trailer) {
    words +=
        "; of " + sheet.trailer->name + " " + card::place_words(sheet.trailer->as_loaded.centre);
  }
  return words;
}

/// Draws the sheet, on further pages where the first has a lower end; returns where its words end.
double draw(Canvas& canvas, const card::RigSheet& sheet, std::optional<double> bottom_pt) {
  const double width_pt = canvas.size().width_pt - 2 * kMargin_pt;
  const Box area = bottom_pt ? Box{kMargin_pt, kMargin_pt, width_pt, *bottom_pt - kMargin_pt}
                             : endless({kMargin_pt, kMargin_pt}, width_pt);
  Flow flow{canvas, {.area = area}, [&canvas, area] {
              canvas.next_page();
              return area;
            }};
  write_head(flow, sheet);
  flow.gap(4.0);
  const DrawingScale scale{sheet, width_pt};
  const double height_pt = scale.height_pt(sheet);
  {
    const Canvas::Tag figure = Canvas::Tag::figure(canvas, figure_words(sheet));
    draw_rig(canvas, {kMargin_pt, flow.corner().y_pt, width_pt, height_pt}, sheet, scale);
  }
  flow.gap(height_pt);
  write_body(flow, sheet.carrier, "Carrier");
  if (sheet.trailer) {
    write_body(flow, *sheet.trailer, "Trailer");
  }
  write_foot(flow, sheet);
  return flow.corner().y_pt;
}

}  // namespace

card::Printed rig_page(const card::RigSheet& sheet, Form form) {
  const DocumentFacts facts{.title = "Rig sheet: " + sheet.rig,
                            .made = units::text_of(sheet.made_from.made)};
  PageSize size;
  if (form == Form::svg) {
    Canvas trial{form, size, facts};  // drawn for its height alone
    size.height_pt = std::max(size.height_pt, draw(trial, sheet, std::nullopt) + kMargin_pt);
  }
  Canvas canvas{form, size, facts};
  draw(canvas, sheet,
       form == Form::pdf ? std::optional{size.height_pt - kMargin_pt} : std::nullopt);
  return canvas.finish();
}

}  // namespace rimehaul::ports::cairo
