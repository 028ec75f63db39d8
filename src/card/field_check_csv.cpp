// Angles measured by hand as a table for a spreadsheet.
#include <cmath>

#include "card/csv.h"
#include "card/field_check_report.h"
#include "units/rounding.h"

namespace rimehaul::card {

namespace {

constexpr int kDecimals = 3;

std::string number(double value) {
  return std::isfinite(value) ? units::text_of(value, kDecimals, units::Round::nearest) : "";
}

std::string degrees_cell(const std::optional<units::Slope>& slope) {
  return slope ? number(slope->degrees()) : "";
}

void add_angle(const audit::AngleCheck& angle, std::vector<std::string>& cells) {
  cells.push_back(number(angle.measured.degrees()));
  cells.push_back(degrees_cell(angle.found));
  cells.push_back(angle.judged ? number(angle.judged->low.degrees()) : "");
  cells.push_back(angle.judged ? number(angle.judged->high.degrees()) : "");
  cells.push_back(angle.off_deg ? number(*angle.off_deg) : "");
  cells.emplace_back(word_for(angle.within));
}

std::vector<std::string> row_of(const FieldCheckRow& row) {
  const day::FieldCheck& check = row.check;
  std::vector<std::string> cells{std::to_string(check.number),   units::text_of(check.measured.at),
                                 csv_text(check.measured.by),    csv_text(check.measured.role),
                                 csv_text(check.instrument),     number(check.at.east.value()),
                                 number(check.at.north.value()), number(check.heading.degrees())};
  add_angle(row.comparison.grade, cells);
  add_angle(row.comparison.cross, cells);
  return cells;
}

}  // namespace

std::string field_checks_csv(const FieldCheckReport& report) {
  std::string table = csv_record({"number",
                                  "measured_utc",
                                  "by",
                                  "role",
                                  "instrument",
                                  "east_m",
                                  "north_m",
                                  "heading_deg",
                                  "grade_deg",
                                  "grade_heights_deg",
                                  "grade_judged_low_deg",
                                  "grade_judged_high_deg",
                                  "grade_off_deg",
                                  "grade_within",
                                  "cross_slope_deg",
                                  "cross_slope_heights_deg",
                                  "cross_slope_judged_low_deg",
                                  "cross_slope_judged_high_deg",
                                  "cross_slope_off_deg",
                                  "cross_slope_within"});
  for (const FieldCheckRow& row : report.rows) {
    table += csv_record(row_of(row));
  }
  return table;
}

}  // namespace rimehaul::card
