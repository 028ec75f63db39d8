// The loads that a way takes as canonical JSON.
#include "ports/json/payload_json.h"

#include "ports/json/parts.h"

namespace rimehaul::ports::json {

namespace {

Object place_json(const card::PayloadFinding& found) {
  const card::PayloadPlace& place = found.place;
  Object object;
  object.text("trail", place.trail).text("from", place.from).text("to", place.to);
  object.number("trail_at_m", place.trail_at.value());
  if (!place.turn_from.empty()) {
    object.text("turn_from", place.turn_from);
  }
  return object.object("finding", finding_json(found.finding, found.stand));
}

Object closed_json(const card::PayloadClosed& closed) {
  Object object;
  if (closed.at.has_value()) {
    object.object("at", place_json(*closed.at));
  } else {
    object.text("fuel", closed.fuel_short);
  }
  return object;
}

Object end_json(const card::PayloadEnd& end) {
  Object object;
  object.number("load_kg", end.load.value()).object("binds", place_json(end.binds));
  if (end.beyond.has_value()) {
    object.object("one_kg_beyond", closed_json(*end.beyond));
  }
  return object;
}

std::vector<Object> ranges_json(const std::vector<card::PayloadRange>& ranges) {
  std::vector<Object> objects;
  objects.reserve(ranges.size());
  for (const card::PayloadRange& range : ranges) {
    objects.push_back(
        Object{}.object("from", end_json(range.from)).object("to", end_json(range.to)));
  }
  return objects;
}

std::vector<Object> pairs_json(const card::PayloadGrid& grid) {
  std::vector<Object> objects;
  for (std::size_t i = 0; i < grid.cells.size(); ++i) {
    const card::PayloadCell& cell = grid.cells[i];
    Object object;
    object.number("bed_kg", grid.bed[i / grid.towed.size()].value());
    object.number("towed_kg", grid.towed[i % grid.towed.size()].value());
    object.text("verdict", cell.open ? "open" : "closed");
    if (cell.open) {
      object.number("worst_share", cell.share);
    } else {
      object.text("closed_by", cell.closed_by);
    }
    objects.push_back(object);
  }
  return objects;
}

}  // namespace

std::string payload_json(const card::PayloadReport& report) {
  Object object;
  object.whole("schema", report.schema).text("kind", "payload").text("site", report.site);
  object.text("title", report.title).texts("way", report.way);
  object.number("length_m", report.length.value()).text("rig", report.rig);
  object.text("found_for", report.found_for).text("permitted_by", report.permitted_by);
  object.text("driver_level", report.driver_level).text("trailer", report.trailer);
  object.object("load_asked", load_json(report.load));
  object.list("snow", snow_json(report.snow)).text("snow_told_by", told_utc(report.snow_told_by));
  object.object("weather", weather_json(report.weather));
  object.text("depart_utc", units::text_of(report.depart));
  object.number("allowed_share", report.allowed_share).number("step_kg", report.step.value());
  object.text("verdict_asked", report.open_as_asked ? "open" : "closed");
  if (report.open_as_asked) {
    object.object("binds_asked", place_json(report.binds_as_asked));
  } else {
    object.object("closed_asked", closed_json(report.closed_as_asked));
  }
  object.list("bed", ranges_json(report.bed)).list("towed", ranges_json(report.towed));
  object.list("pairs", pairs_json(report.both));
  object.whole("places_rewalked", static_cast<std::int64_t>(report.places_rewalked));
  object.texts("estimates", report.estimates);
  add_made_from(object, report.made_from);
  return object.bytes();
}

}  // namespace rimehaul::ports::json
