// A report of field checks with one within, one outside and one unknown, for tests of its forms.
#pragma once

#include <vector>

#include "card/field_check_report.h"

namespace rimehaul::testing {

inline terrain::Attitude attitude_in_degrees(double grade_deg, double cross_deg) {
  return {units::Slope::from_degrees(grade_deg), units::Slope::from_degrees(cross_deg)};
}

/// A check by D. Example at 07:00 on the first of February; the ground by the heights is 7 degrees
/// up and 3 to the left, judged a degree and a half either way, where it is known.
inline card::FieldCheckRow field_check_row(std::int64_t number, const terrain::Attitude& measured,
                                           const std::optional<audit::GroundByHeights>& ground) {
  return {.check = {.number = number,
                    .at = {units::Metres{500'000}, units::Metres{5'100'000.25}},
                    .heading = units::Bearing::from_degrees(45),
                    .grade = measured.grade,
                    .cross_slope = measured.cross,
                    .instrument = "inclinometer, 1 m board",
                    .measured = {.at = *units::parse_instant("2026-02-01T07:00:00Z"),
                                 .by = "D. Example",
                                 .role = "driver"}},
          .comparison = audit::compared(measured, ground)};
}

inline audit::GroundByHeights sample_ground() {
  using units::Slope;
  return {.found = attitude_in_degrees(7, -3),
          .judged = terrain::AttitudeBox{.grade_low = Slope::from_degrees(5.5),
                                         .grade_high = Slope::from_degrees(8.5),
                                         .cross_low = Slope::from_degrees(-4.5),
                                         .cross_high = Slope::from_degrees(-1.5)}};
}

inline card::FieldCheckReport sample_field_checks() {
  card::FieldCheckReport report;
  report.site = "Tiny Fell";
  report.map_frame = "WGS 84 / UTM zone 5N";
  report.rig = "solo";
  report.confidence_k = 1.645;
  report.made_from.made = *units::parse_instant("2026-02-01T08:00:00Z");
  report.rows = {field_check_row(1, attitude_in_degrees(7.5, -2.8), sample_ground()),
                 field_check_row(2, attitude_in_degrees(8.9, -4), sample_ground()),
                 field_check_row(3, attitude_in_degrees(1, 2), std::nullopt)};
  std::vector<audit::FieldComparison> all;
  for (const card::FieldCheckRow& row : report.rows) {
    all.push_back(row.comparison);
  }
  report.summary = audit::summary_of(all);
  return report;
}

}  // namespace rimehaul::testing
