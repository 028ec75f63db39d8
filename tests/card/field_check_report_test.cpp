// Field checks for people: one in full, the table of all, and the rows for a spreadsheet.
#include "card/field_check_report.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "card/sample_field_checks.h"

namespace rimehaul::card {
namespace {

using testing::sample_field_checks;

bool says(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

/// The report as if one of its checks had just been kept.
std::string kept(std::size_t index) {
  FieldCheckReport report = sample_field_checks();
  report.rows = {report.rows.at(index)};
  report.asked = FieldChecksAsked::keep;
  return text_of(report, 80);
}

}  // namespace

TEST_CASE("a table of checks tells each, what lies outside, and what all come to") {
  const std::string text = text_of(sample_field_checks(), 80);
  CAPTURE(text);
  CHECK(text ==
        "FIELD CHECKS                                                           Tiny Fell\n"
        "Degrees by hand against the heights as they are now: the ground under solo, the\n"
        "smallest tread of the site. Grade: + climbs. Across: + falls to the right.\n"
        "================================================================================\n"
        "                         Grade                  Across\n"
        " No. date        facing   by hand heights    off by hand heights    off  judged\n"
        "   1 2026-02-01  045 deg    +7.50   +7.00  +0.50   -2.80   -3.00  +0.20  within\n"
        "   2 2026-02-01  045 deg    +8.90   +7.00  +1.90   -4.00   -3.00  -1.00  OUTSIDE\n"
        "   3 2026-02-01  045 deg    +1.00       ?      ?   +2.00       ?      ?  unknown\n"
        "\n"
        "OUTSIDE WHAT IS JUDGED BY\n"
        " -  check 2, east 500000.0 m, north 5100000.2 m: grade +8.90 deg (+15.7 %) by\n"
        "    hand; by the heights +7.00 deg (+12.3 %), up to +8.50 deg (+14.9 %), down to\n"
        "    +5.50 deg (+9.6 %) (95 %)\n"
        "--------------------------------------------------------------------------------\n"
        "Within    1 of 3 are within what is judged by, 1 OUTSIDE, 1 unknown\n"
        "Grade     mean difference +1.20 deg, root mean square 1.39 deg, of 2\n"
        "Across    mean difference -0.40 deg, root mean square 0.73 deg, of 2\n"
        "\n"
        "Checks change no error by themselves: k, errors and grips change only through a\n"
        "recorded measurement, and lowering an error takes at least 30 checks and their\n"
        "upper 95 % bound.\n");
}

TEST_CASE("a check just kept is told in full, within, outside and unknown in words") {
  const std::string within = kept(0);
  CAPTURE(within);
  CHECK(says(within, "kept as field check 1\n"));
  CHECK(says(within, "D. Example (driver), 2026-02-01 07:00"));
  CHECK(says(within,
             "Grade     +7.50 deg (+13.2 %) by hand; by the heights +7.00 deg (+12.3 %), up to\n"
             "          +8.50 deg (+14.9 %), down to +5.50 deg (+9.6 %) (95 %)\n"
             "          +0.50 deg by hand against the heights: within what is judged by\n"));
  CHECK(says(kept(1), "+1.90 deg by hand against the heights: OUTSIDE what is judged by\n"));
  CHECK(says(kept(2), "by hand; the heights are not known here\n"));
  CHECK(says(kept(2), "          unknown whether within what is judged by\n"));
  CHECK(says(kept(2), changes_nothing().substr(0, 36)));
}

TEST_CASE("heights without a declared error have a difference and no bounds") {
  FieldCheckReport report = sample_field_checks();
  audit::GroundByHeights bare = testing::sample_ground();
  bare.judged.reset();
  report.rows = {testing::field_check_row(4, testing::attitude_in_degrees(7.5, -2.75), bare)};
  report.asked = FieldChecksAsked::keep;
  report.rows[0].check.measured.role = "";
  report.rig = "";
  const std::string text = text_of(report, 80);
  CAPTURE(text);
  CHECK(says(text, "their\n          error is not declared, or heights are"));
  CHECK(says(text, "+0.50 deg by hand against the heights: unknown whether within"));
  CHECK(says(text, "D. Example, 2026-02-01"));
  CHECK(says(text, "the site has no rig whose tread could be looked at"));
}

TEST_CASE("no check kept is one line") {
  FieldCheckReport none;
  none.site = "Tiny Fell";
  const std::string text = text_of(none, 80);
  CHECK(std::ranges::count(text, '\n') == 1);
  CHECK(says(text, "no field check has been kept of Tiny Fell; say --as PERSON"));
  CHECK(std::ranges::count(field_checks_csv(none), '\n') == 1);
}

TEST_CASE("the rows for a spreadsheet leave empty what is not known") {
  const std::string table = field_checks_csv(sample_field_checks());
  CAPTURE(table);
  CHECK(says(table,
             "\r\n1,2026-02-01T07:00:00Z,D. Example,driver,\"inclinometer, 1 m board\",500000.000,"
             "5100000.250,45.000,7.500,7.000,5.500,8.500,0.500,within,-2.800,-3.000,-4.500,-1.500,"
             "0.200,within\r\n"));
  CHECK(says(table, ",45.000,1.000,,,,,unknown,2.000,,,,,unknown\r\n"));
}

}  // namespace rimehaul::card
