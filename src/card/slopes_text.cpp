// The rasters of slopes that were written, told on a terminal.
#include "card/figures.h"
#include "card/layout.h"
#include "card/limits_words.h"
#include "card/slopes_report.h"
#include "card/words.h"
#include "units/rounding.h"

namespace rimehaul::card {

namespace {

constexpr int kLabelWidth = 16;

void item(Sheet& sheet, std::string_view label, const std::string& text) {
  sheet.labelled({0, kLabelWidth, label}, text);
}

/// "14 of 225 cells (6 %)", rounded down.
std::string cells_text(std::int64_t some, terrain::CellIndex size) {
  const std::int64_t all = size.column * size.row;
  return std::to_string(some) + " of " + std::to_string(all) + " cells (" +
         units::text_of(100.0 * static_cast<double>(some) / static_cast<double>(all), 0,
                        units::Round::down) +
         " %)";
}

std::string slope_or_unknown(const std::optional<units::Slope>& slope) {
  return slope ? units::text_of(*slope, units::Round::up) : "unknown";
}

void write_ground(const SlopesReport& report, Sheet& sheet) {
  item(sheet, "Map", report.map_frame);
  item(sheet, "Cells",
       std::to_string(report.size.column) + " x " + std::to_string(report.size.row) + ", " +
           units::text_of(report.cell.value(), 2, units::Round::up) + " m wide");
  for (const std::string& note : report.heights_notes) {
    item(sheet, "Heights", note);
  }
  item(sheet, "Known",
       cells_text(report.known, report.size) + " have a slope; the rest is a hole or an edge");
  item(sheet, "Steepest", slope_or_unknown(report.steepest) + ", as measured");
  item(sheet, "Error", "one standard deviation of level ground: " + slope_or_unknown(report.sigma));
}

void write_rig(const SlopesReport& report, Sheet& sheet) {
  const SlopeRig& rig = *report.rig;
  sheet.heading("RIG AND SNOW");
  item(sheet, "Rig", rig.name + ", " + towing_words(rig.towing));
  item(sheet, "Load", words::load(rig.load, rig.towing));
  item(sheet, "Snow",
       std::string{snow::words_for(rig.snow.wetness)} + ", " + snow::words_for(rig.snow.surface) +
           ", everywhere; no new snow");
  item(sheet, "Allowed", allowed_text(rig.allowed_share) + " of every limit");
  item(sheet, "Added",
       "to every gradient, in every direction: " + slope_or_unknown(rig.tolerance) +
           (rig.tolerance ? "" : ", so all is closed"));
  if (rig.closed) {
    item(sheet, "Closed", closed_words(*rig.closed));
  }
  item(sheet, "Open", cells_text(report.open, report.size) + " in some direction");
  for (const std::string& rating : rig.ratings) {
    item(sheet, "Rating in force", rating);
  }
}

}  // namespace

std::string slopes_caution() {
  return std::string{outranked()} +
         " Cells are judged as planes of their own: not counted are bends, width, marks, zones, "
         "avalanches, new snow and what lies between cells beyond the declared term. Only a route "
         "or an audit judges a way.";
}

std::string text_of(const SlopesReport& report, int columns) {
  Sheet sheet{columns};
  sheet.both_ends({"SLOPES", report.site});
  sheet.rule('=');
  write_ground(report, sheet);
  if (report.rig) {
    write_rig(report, sheet);
  }
  sheet.heading("WRITTEN");
  for (const SlopeRaster& raster : report.rasters) {
    item(sheet, raster.layer, raster.file + ": " + raster.meaning);
  }
  sheet.blank();
  sheet.paragraph(slopes_caution());
  if (!report.estimates.empty()) {
    sheet.heading("ESTIMATES IN USE");
    sheet.list("-", report.estimates);
  }
  return sheet.text();
}

}  // namespace rimehaul::card
