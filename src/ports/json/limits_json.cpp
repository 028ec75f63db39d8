// The grade limits of a rig as canonical JSON.
#include "ports/json/limits_json.h"

#include "ports/json/parts.h"
#include "units/rounding.h"

namespace rimehaul::ports::json {

namespace {

std::string_view key_of(card::LoadCase load_case) {
  switch (load_case) {
    case card::LoadCase::empty:
      return "empty";
    case card::LoadCase::as_given:
      return "as_given";
    case card::LoadCase::full:
      return "full";
  }
  return "";
}

Object limit_json(const passage::Limit& limit, double allowed_share) {
  const auto down = [](double value) {
    return std::stod(units::text_of(value, 1, units::Round::down));
  };
  return Object{}
      .number("steepest_deg", down(limit.steepest.degrees()))
      .number("steepest_percent", down(limit.steepest.percent()))
      .truth("scan_end", limit.scan_end ? Truth::yes : Truth::no)
      .object("next_tenth",
              finding_json(limit.binding, passage::stand_of(limit.binding, allowed_share)));
}

Object row_json(const card::LimitsRow& row) {
  const passage::GradeLimits& limits = row.limits;
  Object object;
  object.text("wetness", snow::key_of(row.snow.wetness));
  object.text("surface", snow::key_of(row.snow.surface));
  object.truth("open", limits.closed ? Truth::no : Truth::yes);
  if (limits.closed) {
    return object.object(
        "closed",
        finding_json(*limits.closed, passage::stand_of(*limits.closed, limits.allowed_share)));
  }
  return object.object("climb", limit_json(*limits.climb, limits.allowed_share))
      .object("descent", limit_json(*limits.descent, limits.allowed_share))
      .object("cross", limit_json(*limits.cross, limits.allowed_share));
}

Object table_json(const card::LimitsTable& table) {
  std::vector<Object> rows;
  for (const card::LimitsRow& row : table.rows) {
    rows.push_back(row_json(row));
  }
  return Object{}
      .text("trailer", table.towing)
      .text("load_case", key_of(table.load_case))
      .object("load", load_json(table.load))
      .list("rows", rows);
}

Object point_json(const passage::EnvelopePoint& point) {
  const auto tenth = [](double degrees) {
    return std::stod(units::text_of(degrees, 1, units::Round::nearest));
  };
  return Object{}
      .number("grade_deg", tenth(point.plane.grade.degrees()))
      .number("cross_deg", tenth(point.plane.cross.degrees()))
      .truth("scan_end", point.scan_end ? Truth::yes : Truth::no)
      .text("binding", passage::facts_of(point.binding.check).key);
}

Object outline_json(const card::SnowOutline& outline, double allowed_share) {
  Object object;
  object.text("wetness", snow::key_of(outline.wetness));
  if (outline.envelope.closed) {
    object.object("closed",
                  finding_json(*outline.envelope.closed,
                               passage::stand_of(*outline.envelope.closed, allowed_share)));
  }
  std::vector<Object> points;
  for (const passage::EnvelopePoint& point : outline.envelope.outline) {
    points.push_back(point_json(point));
  }
  return object.list("points", points);
}

Object outlines_json(const card::LimitsReport& report) {
  std::vector<Object> outlines;
  for (const card::SnowOutline& outline : report.outlines.outlines) {
    outlines.push_back(outline_json(outline, report.allowed_share));
  }
  return Object{}
      .text("trailer", report.outlines.towing)
      .object("load", load_json(report.outlines.load))
      .text("surface", snow::key_of(report.outlines.surface))
      .list("outlines", outlines);
}

}  // namespace

std::string limits_json(const card::LimitsReport& report) {
  std::vector<Object> tables;
  for (const card::LimitsTable& table : report.tables) {
    tables.push_back(table_json(table));
  }
  Object object;
  object.whole("schema", report.schema).text("kind", "limits").text("site", report.site);
  object.text("rig", report.rig).text("driver_level", report.driver_level);
  object.number("allowed_share", report.allowed_share).number("sight_m", report.sight.value());
  object.list("tables", tables).object("envelope", outlines_json(report));
  object.texts("ratings", report.ratings).texts("estimates", report.estimates);
  add_made_from(object, report.made_from);
  return object.bytes();
}

}  // namespace rimehaul::ports::json
