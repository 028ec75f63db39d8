// Field checks as JSON: golden, since programs read it.
#include "ports/json/field_check_json.h"

#include <doctest/doctest.h>

#include <nlohmann/json.hpp>

#include "card/sample_field_checks.h"

namespace rimehaul::ports::json {
namespace {

using nlohmann::json;
using testing::sample_field_checks;

TEST_CASE("field checks as JSON are what they were") {
  card::FieldCheckReport report = sample_field_checks();
  report.rows.erase(report.rows.begin() + 1, report.rows.end());
  // Angles whose degrees are the same on every machine: none at all.
  const terrain::Attitude level{};
  report.rows[0].check.grade = level.grade;
  report.rows[0].check.cross_slope = level.cross;
  report.rows[0].comparison = audit::compared(
      level, audit::GroundByHeights{.found = level, .judged = terrain::AttitudeBox{}});
  report.summary = audit::summary_of(std::vector{report.rows[0].comparison});
  const std::string angle =
      R"({"heights_deg":0.0,"judged_high_deg":0.0,"judged_low_deg":0.0,"measured_deg":0.0,)"
      R"("off_deg":0.0,"within":"yes"})";
  const std::string off = R"({"count":1,"mean_deg":0.0,"root_mean_square_deg":0.0})";
  CHECK(field_checks_json(report) ==
        R"({"checks":[{"by":"D. Example","cross_slope":)" + angle +
            R"(,"east_m":500000.0,"grade":)" + angle +
            R"(,"heading_deg":45.0,"instrument":"inclinometer, 1 m board",)"
            R"("measured_utc":"2026-02-01T07:00:00Z","north_m":5100000.25,"number":1,)"
            R"("role":"driver","within":"yes"}],"confidence_k":1.645,"inputs":[],)"
            R"("kind":"field_checks","made_utc":"2026-02-01T08:00:00Z",)"
            R"("map_frame":"WGS 84 / UTM zone 5N","rig":"solo","schema":1,"site":"Tiny Fell",)"
            R"("summary":{"checks":1,"cross_slope_off":)" +
            off + R"(,"grade_off":)" + off + R"(,"outside":0,"within":1},"versions":[]})");
}

TEST_CASE("what is outside says no, and what is not known is null and among the missing") {
  const json read = json::parse(field_checks_json(sample_field_checks()));
  CHECK(read["checks"][1]["within"] == "no");
  CHECK(read["checks"][1]["grade"]["within"] == "no");
  CHECK(read["checks"][1]["cross_slope"]["within"] == "yes");
  const json& unknown = read["checks"][2];
  CHECK(unknown["within"] == "unknown");
  CHECK(unknown["grade"]["heights_deg"].is_null());
  CHECK(unknown["grade"]["missing"] ==
        json({"off_deg", "heights_deg", "judged_low_deg", "judged_high_deg"}));
  CHECK(read["summary"]["outside"] == 1);
  CHECK(read["summary"]["grade_off"]["count"] == 2);
}

TEST_CASE("a check just kept has its number and its trail") {
  card::FieldCheckReport report = sample_field_checks();
  report.asked = card::FieldChecksAsked::keep;
  report.trail = "Low Way";
  report.along = units::Metres{12.5};
  report.rig = "";
  const json read = json::parse(field_checks_json(report));
  CHECK(read["kept_as_field_check"] == 1);
  CHECK(read["trail"] == "Low Way");
  CHECK(read["at_m"] == 12.5);
  CHECK(read["rig"].is_null());
}

}  // namespace
}  // namespace rimehaul::ports::json
