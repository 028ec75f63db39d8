#include "ports/json/audit_json.h"

#include <cmath>

#include "base/require.h"
#include "card/audit_words.h"
#include "card/words.h"
#include "ports/json/object.h"
#include "ports/json/parts.h"

namespace rimehaul::ports::json {

namespace {

using card::AuditReport;

void add_case(const card::AuditedCase& one, const AuditReport& report, Object& object) {
  const card::AuditedRig& rig = report.rigs.at(one.rig);
  object.text("rig", rig.name).text("load", one.load_name);
  object.number("bed_kg", one.load.bed.value());
  if (!rig.trailer.empty()) {
    object.number("towed_kg", one.load.towed.value());
  }
  object.text("snow", snow::key_of(one.snow.wetness));
  object.text("surface", snow::key_of(one.snow.surface));
  object.number("allowed_share", rig.allowed_share);
}

Object case_json(const card::AuditedCase& one, const AuditReport& report) {
  Object object;
  add_case(one, report, object);
  object.whole("passengers", one.load.passengers).number("fuel_l", one.load.fuel.value());
  Object metres;
  for (int i = 0; i < audit::kBandCount; ++i) {
    const auto band = static_cast<audit::Band>(i);
    metres.number(std::string{card::key_of(band)} + "_m", one.lengths.of(band).value());
  }
  object.object("bands", metres);
  object.number("length_m", one.lengths.total().value());
  object.number("waiting_m", one.lengths.waiting.value());
  return object.whole("exceedances", static_cast<std::int64_t>(one.exceedances));
}

/// What is the same in JSON and GeoJSON. The inputs of the formula are left to `explain`.
void add_place(const audit::AuditedPlace& place, const AuditReport& report, Object& object) {
  const passage::Finding& finding = place.finding;
  object.text("trail", report.trails.at(place.trail).name);
  object.text("direction", key_of(place.way));
  object.text("on", place.on == audit::On::joint ? "joint" : "trail");
  object.number("from_m", place.span.from.value()).number("to_m", place.span.to.value());
  object.number("at_m", place.at.value());
  object.number("east_m", place.place.east.value()).number("north_m", place.place.north.value());
  passage::Finding bare = finding;
  bare.inputs = {};
  bare.at = place.at;
  object.object("finding", finding_json(bare, place.stand));
  if (place.found_share) {
    object.number("share_found", *place.found_share);
  }
}

Object row_json(const card::AuditRow& row, const AuditReport& report) {
  Object object;
  object.whole("case", static_cast<std::int64_t>(row.audited_case));
  add_place(row.place, report, object);
  return object;
}

std::vector<Object> rows_json(const std::vector<card::AuditRow>& rows, const AuditReport& report) {
  std::vector<Object> objects;
  objects.reserve(rows.size());
  for (const card::AuditRow& row : rows) {
    objects.push_back(row_json(row, report));
  }
  return objects;
}

Object rig_json(const card::AuditedRig& rig) {
  Object object;
  object.text("name", rig.name).text("carrier", rig.carrier).text("trailer", rig.trailer);
  object.text("driver_level", rig.driver_level).number("allowed_share", rig.allowed_share);
  object.number("tolerance_tangent",
                rig.tolerance ? std::optional{rig.tolerance->ratio()} : std::nullopt);
  return object.texts("sources", rig.sources);
}

/// Properties of a feature: flat, because many map programs read nothing else.
Object properties_json(const card::AuditRow& row, const AuditReport& report) {
  const audit::AuditedPlace& place = row.place;
  const passage::Finding& finding = place.finding;
  const passage::CheckFacts& facts = passage::facts_of(finding.check);
  Object object;
  add_case(report.cases.at(row.audited_case), report, object);
  object.text("trail", report.trails.at(place.trail).name);
  object.text("direction", key_of(place.way));
  object.text("on", place.on == audit::On::joint ? "joint" : "trail");
  object.number("from_m", place.span.from.value()).number("to_m", place.span.to.value());
  object.number("at_m", place.at.value());
  object.text("check", facts.key).text("stand", key_of(place.stand));
  object.text("outcome", card::interval_words(place)).text("numbers", card::numbers_words(place));
  object.text("source", facts.source);
  if (finding.share) {
    object.number("share_up_to", *finding.share);
  }
  if (place.found_share) {
    object.number("share_found", *place.found_share);
  }
  return object;
}

}  // namespace

std::string audit_json(const AuditReport& report) {
  Object object;
  object.whole("schema", report.schema).text("kind", "slope_audit").text("site", report.site);
  object.text("map_frame", report.map_frame).text("vertical_datum", report.vertical_datum);
  object.text("judged_for_utc", units::text_of(report.when));
  object.text("for", report.for_whom);
  object.truth("passed", report.failed() ? Truth::no : Truth::yes);
  object.text("snow_told_by", told_utc(report.snow_told_by))
      .object("weather", weather_json(report.weather));
  object.number("confidence_k", report.confidence_k);
  std::vector<Object> rigs;
  for (const card::AuditedRig& rig : report.rigs) {
    rigs.push_back(rig_json(rig));
  }
  std::vector<Object> cases;
  for (const card::AuditedCase& one : report.cases) {
    cases.push_back(case_json(one, report));
  }
  std::vector<Object> trails;
  for (const card::AuditedTrail& trail : report.trails) {
    trails.push_back(
        Object{}.text("name", trail.name).number("length_m", trail.line.length().value()));
  }
  object.list("rigs", rigs).texts("loads", report.loads).list("cases", cases);
  object.list("trails", trails);
  object.list("exceedances", rows_json(report.exceedances, report));
  object.list("tightest", rows_json(report.tightest, report));
  object.texts("estimates", report.estimates).texts("heights", report.heights_notes);
  object.text("caution", card::cautions_words());
  add_made_from(object, report.made_from);
  return object.bytes();
}

std::string audit_geojson(const AuditReport& report,
                          const std::vector<std::vector<geo::GlobePoint>>& lines) {
  base::require(lines.size() == report.exceedances.size(), "each exceedance has its line");
  std::vector<Object> features;
  features.reserve(lines.size());
  for (std::size_t i = 0; i < lines.size(); ++i) {
    base::require(!lines[i].empty(), "a line has a point");
    Object geometry;
    if (lines[i].size() == 1) {
      geometry.text("type", "Point").position("coordinates", lines[i].front());
    } else {
      geometry.text("type", "LineString").positions("coordinates", lines[i]);
    }
    features.push_back(Object{}
                           .text("type", "Feature")
                           .object("geometry", geometry)
                           .object("properties", properties_json(report.exceedances[i], report)));
  }
  return Object{}.text("type", "FeatureCollection").list("features", features).bytes();
}

}  // namespace rimehaul::ports::json
