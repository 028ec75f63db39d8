// Angles measured by hand as text: one check in full, or a table of all and what they come to.
#include <string_view>

#include "card/field_check_report.h"
#include "card/figures.h"
#include "card/layout.h"
#include "units/rounding.h"

namespace rimehaul::card {

namespace {

using audit::AngleCheck;
using audit::Within;
using units::Round;
using units::Slope;

constexpr int kLabelWidth = 10;

void item(Sheet& sheet, std::string_view label, const std::string& text) {
  sheet.labelled({0, kLabelWidth, label}, text);
}

std::string with_sign(double number, int decimals) {
  const std::string text = units::text_of(number, decimals, Round::nearest);
  return number > 0.0 && text.find_first_of("123456789") != std::string::npos ? "+" + text : text;
}

/// "+2.50 deg (+4.4 %)"
std::string angle_text(Slope slope) {
  return with_sign(slope.degrees(), 2) + " deg (" + with_sign(slope.percent(), 1) + " %)";
}

std::string verdict_words(Within within) {
  switch (within) {
    case Within::yes:
      return "within what is judged by";
    case Within::no:
      return "OUTSIDE what is judged by";
    case Within::unknown:
      break;
  }
  return "unknown whether within what is judged by";
}

/// "by the heights +2.03 deg (+3.5 %), up to +3.58 deg (+6.3 %) and down to ... (95 %)"
std::string heights_words(const AngleCheck& angle, double confidence_k) {
  if (!angle.found) {
    return "the heights are not known here";
  }
  const std::string found = "by the heights " + angle_text(*angle.found);
  if (!angle.judged) {
    return found + "; their error is not declared, or heights are missing beside";
  }
  return found + ", up to " + angle_text(angle.judged->high) + ", down to " +
         angle_text(angle.judged->low) + " (" + confidence_text(confidence_k) + ")";
}

void write_angle(std::string_view label, const AngleCheck& angle, double confidence_k,
                 Sheet& sheet) {
  item(sheet, label,
       angle_text(angle.measured) + " by hand; " + heights_words(angle, confidence_k));
  const std::string off =
      angle.off_deg ? with_sign(*angle.off_deg, 2) + " deg by hand against the heights: " : "";
  item(sheet, "", off + verdict_words(angle.within));
}

std::string position_of(const geo::MapPoint& place) {
  return "east " + units::text_of(place.east.value(), 1, Round::nearest) + " m, north " +
         units::text_of(place.north.value(), 1, Round::nearest) + " m";
}

std::string who(const day::Done& done) {
  return done.by + (done.role.empty() ? "" : " (" + done.role + ")");
}

std::string tread_words(const FieldCheckReport& report) {
  return report.rig.empty() ? "the site has no rig whose tread could be looked at"
                            : "the ground under " + report.rig + ", the smallest tread of the site";
}

std::string kept_text(const FieldCheckReport& report, int columns) {
  const FieldCheckRow& row = report.rows.front();
  Sheet sheet{columns};
  sheet.both_ends({"FIELD CHECK", report.site});
  sheet.paragraph("kept as field check " + std::to_string(row.check.number));
  sheet.rule('=');
  const std::string on_trail =
      report.along ? report.trail + ", " + distance_text(*report.along) + " along it as drawn; "
                   : "";
  item(sheet, "Place", on_trail + position_of(row.check.at) + " (" + report.map_frame + ")");
  item(sheet, "Facing", bearing_text(row.check.heading));
  item(sheet, "By",
       who(row.check.measured) + ", " +
           local_and_zone_text(row.check.measured.at, report.local_clock) +
           ", with: " + row.check.instrument);
  item(sheet, "Heights", tread_words(report));
  write_angle("Grade", row.comparison.grade, report.confidence_k, sheet);
  write_angle("Across", row.comparison.cross, report.confidence_k, sheet);
  sheet.paragraph("Grade: + climbs. Across: + falls to the right of who faces so.");
  sheet.blank();
  sheet.paragraph(changes_nothing());
  return sheet.text();
}

constexpr int kNumber = 5;
constexpr int kDate = 12;
constexpr int kFacing = 8;
constexpr int kDegrees = 8;

std::string degrees_cell(const std::optional<Slope>& slope) {
  return set_right(slope ? with_sign(slope->degrees(), 2) : "?", kDegrees);
}

std::string cells_of(const AngleCheck& angle) {
  const std::string off = angle.off_deg ? with_sign(*angle.off_deg, 2) : "?";
  return degrees_cell(angle.measured) + degrees_cell(angle.found) + set_right(off, kDegrees - 1);
}

void write_row(const FieldCheckRow& row, const units::LocalClock& local_clock, Sheet& sheet) {
  const std::string date = local_text(row.check.measured.at, local_clock).substr(0, kDate - 2);
  sheet.as_it_stands(set_right(std::to_string(row.check.number), kNumber - 1) + " " +
                     filled(date, kDate) + filled(bearing_text(row.check.heading), kFacing) +
                     cells_of(row.comparison.grade) + cells_of(row.comparison.cross) + "  " +
                     word_for(row.comparison.within()));
}

void write_outside(const FieldCheckRow& row, double confidence_k, Sheet& sheet) {
  const auto write = [&](const std::string& name, const AngleCheck& angle) {
    if (angle.within == Within::no) {
      sheet.labelled({0, 4, " - "}, "check " + std::to_string(row.check.number) + ", " +
                                        position_of(row.check.at) + ": " + name + " " +
                                        angle_text(angle.measured) + " by hand; " +
                                        heights_words(angle, confidence_k));
    }
  };
  write("grade", row.comparison.grade);
  write("across", row.comparison.cross);
}

void write_together(std::string_view label, const std::optional<audit::OffTogether>& off,
                    Sheet& sheet) {
  item(sheet, label,
       off ? "mean difference " + with_sign(off->mean_deg, 2) + " deg, root mean square " +
                 units::text_of(off->root_mean_square_deg, 2, Round::up) + " deg, of " +
                 std::to_string(off->count)
           : "no difference is known");
}

std::string list_text(const FieldCheckReport& report, int columns) {
  Sheet sheet{columns};
  sheet.both_ends({"FIELD CHECKS", report.site});
  sheet.paragraph("Degrees by hand against the heights as they are now: " + tread_words(report) +
                  ". Grade: + climbs. Across: + falls to the right.");
  sheet.rule('=');
  sheet.as_it_stands("                         Grade                  Across");
  sheet.as_it_stands(
      " No. date        facing   by hand heights    off by hand heights    off  judged");
  for (const FieldCheckRow& row : report.rows) {
    write_row(row, report.local_clock, sheet);
  }
  const audit::FieldSummary& all = report.summary;
  if (all.outside > 0) {
    sheet.heading("OUTSIDE WHAT IS JUDGED BY");
    for (const FieldCheckRow& row : report.rows) {
      write_outside(row, report.confidence_k, sheet);
    }
  }
  sheet.rule('-');
  item(sheet, "Within",
       std::to_string(all.within) + " of " + std::to_string(all.checks) +
           " are within what is judged by, " + std::to_string(all.outside) + " OUTSIDE, " +
           std::to_string(all.checks - all.within - all.outside) + " unknown");
  write_together("Grade", all.grade, sheet);
  write_together("Across", all.cross, sheet);
  sheet.blank();
  sheet.paragraph(changes_nothing());
  return sheet.text();
}

}  // namespace

const char* word_for(Within within) {
  switch (within) {
    case Within::yes:
      return "within";
    case Within::no:
      return "OUTSIDE";
    case Within::unknown:
      break;
  }
  return "unknown";
}

std::string changes_nothing() {
  return "Checks change no error by themselves: k, errors and grips change only through a recorded "
         "measurement, and lowering an error takes at least 30 checks and their upper 95 % bound.";
}

std::string text_of(const FieldCheckReport& report, int columns) {
  if (report.rows.empty()) {
    return "no field check has been kept of " + report.site +
           "; say --as PERSON with a place and the angles to keep one\n";
  }
  return report.asked == FieldChecksAsked::keep ? kept_text(report, columns)
                                                : list_text(report, columns);
}

}  // namespace rimehaul::card
