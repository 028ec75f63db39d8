// The rig sheet as text for a terminal or a plain printer.
#include "card/figures.h"
#include "card/layout.h"
#include "card/limits_words.h"
#include "card/rig_words.h"
#include "card/words.h"
#include "units/rounding.h"

namespace rimehaul::card {

namespace {

constexpr int kLabelWidth = 16;

void item(Sheet& sheet, std::string_view label, const std::string& text) {
  sheet.labelled({0, kLabelWidth, label}, text);
}

void write_masses(const SheetBody& body, Sheet& sheet) {
  constexpr int kName = 28;
  constexpr int kMass = 9;
  for (const NamedMass& mass : body.masses) {
    sheet.labelled({2, kName + kMass + 2,
                    filled(mass.name, kName) + set_right(scale_words(mass.placed.mass), kMass)},
                   place_words(mass.placed.at));
  }
  sheet.labelled(
      {2, kName + kMass + 2,
       filled("all, as loaded", kName) + set_right(scale_words(body.as_loaded.mass), kMass)},
      place_words(body.as_loaded.centre));
  sheet.labelled(
      {2, kName + kMass + 2,
       filled("all, without load", kName) + set_right(scale_words(body.empty.mass), kMass)},
      place_words(body.empty.centre));
}

void write_tips(const SheetBody& body, Sheet& sheet) {
  constexpr int kWay = 20;
  constexpr int kAngle = 20;
  sheet.as_it_stands("  " + filled("Tips over", kWay) + filled("as loaded", kAngle) +
                     filled("without load", kAngle) + "usable");
  for (const TipAngle& tip : body.tips) {
    sheet.as_it_stands("  " + filled(std::string{tip_way_words(tip.way)}, kWay) +
                       filled(tip_words(tip.as_loaded), kAngle) +
                       filled(tip_words(tip.empty), kAngle) + tip_words(tip.usable));
  }
}

void write_body(const SheetBody& body, std::string_view kind, Sheet& sheet) {
  const auto metres = [](units::Metres length) {
    return units::text_of(length.value(), 2, units::Round::nearest) + " m";
  };
  sheet.heading(std::string{kind} + " " + body.name);
  item(sheet, "Sheet", body.provenance);
  item(sheet, "Contact",
       "length " + metres(body.contact_length) + ", gauge over the edges " + metres(body.gauge) +
           ", width over all " + metres(body.overall_width));
  sheet.paragraph("Masses, and where they sit from the rear end of the contact:");
  write_masses(body, sheet);
  write_tips(body, sheet);
}

}  // namespace

std::string text_of(const RigSheet& rig, int columns) {
  Sheet sheet{columns};
  sheet.both_ends({"RIG SHEET", rig.site});
  sheet.paragraph(rig.rig);
  sheet.rule('=');
  if (const std::string headline = load_headline(rig); !headline.empty()) {
    sheet.paragraph(headline);
  }
  item(sheet, "Load", words::load(rig.load, rig.trailer ? rig.trailer->name : ""));
  item(sheet, "Mass in all", scale_words(rig.total));
  item(sheet, "On the snow", pressure_words(rig.pressure) + " under the carrier's driven tracks");
  item(sheet, "Allowed",
       rig.allowed_share > 0.0
           ? allowed_text(rig.allowed_share) + " of every limit, driver level " + rig.driver_level
           : "unknown: the rules have no driver level '" + rig.driver_level + "'");
  sheet.paragraph(outranked());
  sheet.heading("LOADS AGAINST RATINGS");
  sheet.list("-", load_lines(rig));
  write_body(rig.carrier, "CARRIER", sheet);
  if (rig.trailer) {
    write_body(*rig.trailer, "TRAILER", sheet);
  }
  if (rig.hitch) {
    sheet.heading("HITCH");
    sheet.list("-", hitch_lines(rig));
  }
  sheet.blank();
  sheet.paragraph(tips_note(rig));
  sheet.heading("RATINGS FOR SLOPES");
  for (const SheetRatings& ratings : rig.ratings) {
    item(sheet, ratings.way, (ratings.in_force ? "in force: " : "") + ratings_line(ratings));
  }
  sheet.heading("ESTIMATES IN USE");
  sheet.list("-", rig.estimates);
  return sheet.text();
}

}  // namespace rimehaul::card
