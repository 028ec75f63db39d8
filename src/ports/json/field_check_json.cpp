#include "ports/json/field_check_json.h"

#include "ports/json/parts.h"

namespace rimehaul::ports::json {

namespace {

const char* key_of(audit::Within within) {
  switch (within) {
    case audit::Within::yes:
      return "yes";
    case audit::Within::no:
      return "no";
    case audit::Within::unknown:
      break;
  }
  return "unknown";
}

void add_degrees(Object& object, std::string_view key, const std::optional<units::Slope>& slope) {
  object.number(key, slope ? std::optional{slope->degrees()} : std::nullopt);
}

Object angle_json(const audit::AngleCheck& angle) {
  const auto judged = [&](units::Slope audit::JudgedSpan::*end) {
    return angle.judged ? std::optional{(*angle.judged).*end} : std::nullopt;
  };
  Object object;
  object.number("measured_deg", angle.measured.degrees()).number("off_deg", angle.off_deg);
  add_degrees(object, "heights_deg", angle.found);
  add_degrees(object, "judged_low_deg", judged(&audit::JudgedSpan::low));
  add_degrees(object, "judged_high_deg", judged(&audit::JudgedSpan::high));
  return object.text("within", key_of(angle.within));
}

Object row_json(const card::FieldCheckRow& row) {
  const day::FieldCheck& check = row.check;
  Object object;
  object.whole("number", check.number).text("measured_utc", units::text_of(check.measured.at));
  object.text("by", check.measured.by).text("role", check.measured.role);
  object.text("instrument", check.instrument);
  object.number("east_m", check.at.east.value()).number("north_m", check.at.north.value());
  object.number("heading_deg", check.heading.degrees());
  object.object("grade", angle_json(row.comparison.grade));
  object.object("cross_slope", angle_json(row.comparison.cross));
  return object.text("within", key_of(row.comparison.within()));
}

void add_together(Object& object, std::string_view key,
                  const std::optional<audit::OffTogether>& off) {
  if (!off) {
    object.unknown(key);
    return;
  }
  object.object(key, Object{}
                         .whole("count", static_cast<std::int64_t>(off->count))
                         .number("mean_deg", off->mean_deg)
                         .number("root_mean_square_deg", off->root_mean_square_deg));
}

Object summary_json(const audit::FieldSummary& summary) {
  Object object;
  object.whole("checks", static_cast<std::int64_t>(summary.checks));
  object.whole("within", static_cast<std::int64_t>(summary.within));
  object.whole("outside", static_cast<std::int64_t>(summary.outside));
  add_together(object, "grade_off", summary.grade);
  add_together(object, "cross_slope_off", summary.cross);
  return object;
}

}  // namespace

std::string field_checks_json(const card::FieldCheckReport& report) {
  Object object;
  object.whole("schema", report.schema).text("kind", "field_checks").text("site", report.site);
  object.text("map_frame", report.map_frame).number("confidence_k", report.confidence_k);
  if (report.along) {
    object.text("trail", report.trail).number("at_m", report.along->value());
  }
  if (report.rig.empty()) {
    object.unknown("rig");
  } else {
    object.text("rig", report.rig);
  }
  if (report.asked == card::FieldChecksAsked::keep && !report.rows.empty()) {
    object.whole("kept_as_field_check", report.rows.front().check.number);
  }
  std::vector<Object> checks;
  checks.reserve(report.rows.size());
  for (const card::FieldCheckRow& row : report.rows) {
    checks.push_back(row_json(row));
  }
  object.list("checks", checks).object("summary", summary_json(report.summary));
  add_made_from(object, report.made_from);
  return object.bytes();
}

}  // namespace rimehaul::ports::json
