// The rig sheet as a printed page.
#include "ports/cairo/rig_page.h"

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include "card/figures.h"
#include "card/limits_words.h"
#include "card/rig_words.h"
#include "card/words.h"
#include "ports/cairo/column.h"
#include "ports/cairo/rig_drawing.h"

namespace rimehaul::ports::cairo {

namespace {

constexpr double kMargin_pt = 30.0;
constexpr double kLabel_pt = 78.0;
constexpr Lettering kText{.size_pt = kSmallest_pt};
constexpr Lettering kBold{.size_pt = kSmallest_pt, .weight = Weight::bold};
constexpr Lettering kNumber{.size_pt = kSmallest_pt, .align = Align::right};

void write_head(Column& column, const card::RigSheet& sheet) {
  column.title("Rig sheet: " + sheet.rig);
  column.paragraph(sheet.site + "; " +
                       card::words::load(sheet.load, sheet.trailer ? sheet.trailer->name : "") +
                       "; " + card::scale_words(sheet.total) + " in all; " +
                       card::pressure_words(sheet.pressure) +
                       " under the carrier's driven tracks; driver level " + sheet.driver_level,
                   {.size_pt = 9.0});
  column.paragraph(card::outranked(), kBold);
  // The libraries stand in the JSON; a sheet of the same rig is to look the same with the next
  // ones.
  std::string made = "Made " + card::local_text(sheet.made, sheet.utc_offset_minutes);
  if (!sheet.versions.empty()) {
    made += "; " + sheet.versions.front();
  }
  column.paragraph(made, {.size_pt = kSmallest_pt, .colour = kQuiet});
}

void write_mass(Column& column, const card::NamedMass& mass, const Lettering& lettering) {
  const double place_pt = column.width_pt() - 210.0;
  column.row({{150.0, mass.name, lettering},
              {60.0, card::scale_words(mass.placed.mass), kNumber},
              {place_pt, card::place_words(mass.placed.at), lettering}});
}

void write_masses(Canvas& canvas, Column& column, const card::SheetBody& body) {
  const Canvas::Tag table{canvas, "Table"};
  column.row({{150.0, "Mass", kBold},
              {60.0, "", kBold},
              {column.width_pt() - 210.0, "Where, from the rear end of the contact", kBold}});
  for (const card::NamedMass& mass : body.masses) {
    write_mass(column, mass, kText);
  }
  write_mass(column, {"all, as loaded", {body.as_loaded.mass, body.as_loaded.centre}}, kBold);
  write_mass(column, {"all, without load", {body.empty.mass, body.empty.centre}}, kText);
}

void write_tips(Canvas& canvas, Column& column, const card::SheetBody& body) {
  const Canvas::Tag table{canvas, "Table"};
  const double each_pt = (column.width_pt() - 150.0) / 3.0;
  column.row({{150.0, "Tip angle over the", kBold},
              {each_pt, "as loaded", kBold},
              {each_pt, "without load", kBold},
              {each_pt, "usable as loaded", kBold}});
  for (const card::TipAngle& tip : body.tips) {
    column.row({{150.0, std::string{card::tip_way_words(tip.way)}, kText},
                {each_pt, card::tip_words(tip.as_loaded), kText},
                {each_pt, card::tip_words(tip.empty), kText},
                {each_pt, card::tip_words(tip.usable), kText}});
  }
}

void write_body(Canvas& canvas, Column& column, const card::SheetBody& body,
                const std::string& kind) {
  const double line_pt = 13.0;
  column.keep_together(line_pt * static_cast<double>(body.masses.size() + 10));
  column.heading(kind + " " + body.name);
  column.paragraph(body.provenance);
  write_masses(canvas, column, body);
  column.rule();
  write_tips(canvas, column, body);
}

std::string joined(const std::vector<std::string>& parts) {
  std::string line;
  for (const std::string& part : parts) {
    line += (line.empty() ? "" : "; ") + part;
  }
  return line;
}

void write_foot(Column& column, const card::RigSheet& sheet) {
  column.gap(3.0);
  column.paragraph(card::tips_note(sheet));
  column.heading("Loads against ratings");
  for (const std::string& line : card::load_lines(sheet)) {
    column.paragraph(line);
  }
  column.heading("Ratings for slopes");
  for (const card::SheetRatings& ratings : sheet.ratings) {
    column.labelled(
        {ratings.way, (ratings.in_force ? "in force: " : "") + card::ratings_line(ratings)},
        kLabel_pt);
  }
  column.labelled({"Estimates", joined(sheet.estimates)}, kLabel_pt);
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
  Column column{canvas, {{kMargin_pt, kMargin_pt}, width_pt, bottom_pt}};
  write_head(column, sheet);
  column.gap(4.0);
  const DrawingScale scale{sheet, width_pt};
  const double height_pt = scale.height_pt(sheet);
  {
    const Canvas::Tag figure = Canvas::Tag::figure(canvas, figure_words(sheet));
    draw_rig(canvas, {kMargin_pt, column.at_pt(), width_pt, height_pt}, sheet, scale);
  }
  column.gap(height_pt);
  write_body(canvas, column, sheet.carrier, "Carrier");
  if (sheet.trailer) {
    write_body(canvas, column, *sheet.trailer, "Trailer");
  }
  write_foot(column, sheet);
  return column.at_pt();
}

}  // namespace

card::Printed rig_page(const card::RigSheet& sheet, Form form) {
  const DocumentFacts facts{.title = "Rig sheet: " + sheet.rig, .made = units::text_of(sheet.made)};
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
