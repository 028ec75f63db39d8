// The day board as canonical JSON.
#include "ports/json/board_json.h"

#include "ports/json/parts.h"

namespace rimehaul::ports::json {

namespace {

Object row_json(const card::BoardRow& row) {
  Object object = board_cell_json(row);
  object.text("from", row.from).text("to", row.to);
  object.text("wetness", snow::key_of(row.snow.wetness));
  return object.text("surface", snow::key_of(row.snow.surface));
}

}  // namespace

Object board_cell_json(const card::BoardRow& row) {
  Object object;
  object.text("verdict", passage::words_for(row.verdict)).texts("way", row.way);
  if (row.binding) {
    object.object("binding", finding_json(*row.binding, row.stand));
    object.text("trail", row.trail);
    if (!row.turn_from.empty()) {
      object.text("turn_from", row.turn_from);
    }
    if (!row.where_on_trail.empty()) {
      object.text("where_on_trail", row.where_on_trail);
    }
    if (!row.binding->missing.empty()) {
      object.missing(row.binding->missing);
    }
  }
  if (row.verdict == passage::Verdict::open) {
    object.number("worst_share", row.worst_share).number("time_s", row.time.value());
    object.number("length_m", row.length.value()).number("fuel_l", row.fuel.value());
    return object;
  }
  object.text("reason", card::reason_of(row)).text("decision", row.decision);
  object.object("opens_with_load", loads_json(row.loads));
  return object.truth("and_decision", row.and_decision ? Truth::yes : Truth::no);
}

std::string board_json(const card::BoardReport& report) {
  std::vector<Object> rows;
  rows.reserve(report.rows.size());
  for (const card::BoardRow& row : report.rows) {
    rows.push_back(row_json(row));
  }
  Object object;
  object.whole("schema", report.schema).text("kind", "board").text("site", report.site);
  object.text("rig", report.rig).text("trailer", report.trailer);
  object.text("driver_level", report.driver_level).object("load", load_json(report.load));
  object.number("allowed_share", report.allowed_share).list("pairs", rows);
  object.whole("places_rewalked", static_cast<std::int64_t>(report.places_rewalked));
  object.object("weather", weather_json(report.weather))
      .text("snow_told_by", told_utc(report.told_by));
  if (report.snow_valid_until) {
    object.text("snow_valid_until_utc", units::text_of(*report.snow_valid_until));
  }
  if (report.report_ran_out) {
    object.text("report_ran_out_utc", units::text_of(*report.report_ran_out));
  }
  object.text("depart_utc", units::text_of(report.depart)).texts("today", report.today);
  object.texts("estimates", report.estimates);
  add_made_from(object, report.made_from);
  return object.bytes();
}

}  // namespace rimehaul::ports::json
