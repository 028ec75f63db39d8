#include "ports/json/day_table_json.h"

#include "card/day_table_words.h"
#include "ports/json/board_json.h"
#include "ports/json/departures_json.h"
#include "ports/json/parts.h"

namespace rimehaul::ports::json {

namespace {

Object column_json(const card::DayColumn& column) {
  Object object;
  object.text("depart_utc", units::text_of(column.depart));
  if (column.snow) {
    object.text("wetness", snow::key_of(column.snow->wetness));
    object.text("surface", snow::key_of(column.snow->surface));
  }
  return object;
}

Object cell_json(const card::DayRow& row, std::size_t column) {
  Object object = board_cell_json(row.cells[column]);
  object.whole("column", static_cast<std::int64_t>(column));
  return object.text("verdict", passage::words_for(card::verdict_in(row, column)))
      .text("computed", passage::words_for(row.cells[column].verdict))
      .text("why", card::day_reason(row, column));
}

Object row_json(const card::DayRow& row) {
  std::vector<Object> cells;
  for (std::size_t i = 0; i < row.cells.size(); ++i) {
    cells.push_back(cell_json(row, i));
  }
  Object object;
  object.text("name", row.name).texts("by_way_of", row.by_way_of).text("rig", row.rig);
  if (!row.trail.empty()) {
    object.text("trail", row.trail);
  }
  object.text("trailer", row.trailer).text("driver_level", row.driver_level);
  object.object("load", load_json(row.load)).number("allowed_share", row.allowed_share);
  object.text("closed_by_hand", row.closed_by_hand).text("permitted", row.permitted);
  if (row.departures) {
    object.object("departures", departures_json(*row.departures));
  }
  return object.list("cells", cells);
}

Object signed_json(const card::SignedBy& by) {
  return Object{}
      .whole("board", by.board)
      .text("person", by.person)
      .text("role", by.role)
      .text("at_utc", units::text_of(by.at))
      .text("valid_until_utc", units::text_of(by.valid_until))
      .text("log_head", by.log_head);
}

}  // namespace

std::string day_table_json(const card::DayTable& table) {
  std::vector<Object> columns;
  std::vector<Object> rows;
  for (const card::DayColumn& column : table.columns) {
    columns.push_back(column_json(column));
  }
  for (const card::DayRow& row : table.rows) {
    rows.push_back(row_json(row));
  }
  Object object;
  object.whole("schema", table.schema).text("kind", "day_table").text("site", table.site);
  object.text("title", table.title)
      .text("depart_utc", units::text_of(table.depart))
      .list("columns", columns)
      .list("rows", rows);
  object.whole("places_rewalked", static_cast<std::int64_t>(table.places_rewalked));
  object.object("weather", weather_json(table.weather))
      .text("snow_told_by", told_utc(table.told_by));
  if (table.snow_valid_until) {
    object.text("snow_valid_until_utc", units::text_of(*table.snow_valid_until));
  }
  if (table.report_ran_out) {
    object.text("report_ran_out_utc", units::text_of(*table.report_ran_out));
  }
  object.texts("orders", table.orders).texts("today", table.today);
  object.texts("estimates", table.estimates);
  if (table.signed_by) {
    object.object("signed", signed_json(*table.signed_by));
  }
  add_made_from(object, table.made_from);
  return object.bytes();
}

}  // namespace rimehaul::ports::json
