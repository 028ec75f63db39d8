#include "ports/json/snow_day_json.h"

#include "ports/json/parts.h"

namespace rimehaul::ports::json {

namespace {

const char* key_of(card::SaidBy said_by) {
  switch (said_by) {
    case card::SaidBy::seen:
      return "seen";
    case card::SaidBy::forecast:
      return "forecast";
    case card::SaidBy::nobody:
      break;
  }
  return "nobody";
}

void add_state(Object& object, std::string_view key, const std::optional<snow::SnowState>& state) {
  if (state) {
    object.object(key, Object{}
                           .text("wetness", snow::key_of(state->wetness))
                           .text("surface", snow::key_of(state->surface)));
  } else {
    object.unknown(key);
  }
}

Object hour_json(const card::SnowHour& hour) {
  Object object;
  object.text("start_utc", units::text_of(hour.start)).number("air_c", hour.air.value());
  object.number("sun_w_m2", hour.soft.sun.value());
  object.number("water_percent",
                hour.soft.state ? std::optional{hour.soft.water.value()} : std::nullopt);
  add_state(object, "likely", hour.soft.state);
  if (!hour.soft.state) {
    object.missing(snow::words_for(hour.soft.blind));
  }
  add_state(object, "judged_as", hour.counts);
  return object.text("said_by", key_of(hour.said_by));
}

}  // namespace

std::string snow_day_json(const card::SnowDay& day) {
  Object object;
  object.whole("schema", day.schema).text("kind", "snow_day").text("site", day.site);
  if (day.along) {
    object.text("trail", day.trail).number("at_m", day.along->value());
  }
  object.number("east_m", day.place.east.value()).number("north_m", day.place.north.value());
  object.text("map_frame", day.map_frame).number("height_m", day.height.above_datum_m());
  object.number("slope_deg", day.slope ? std::optional{day.slope->degrees()} : std::nullopt);
  object.number("aspect_deg", day.aspect ? std::optional{day.aspect->degrees()} : std::nullopt);
  add_state(object, "observed", day.observed);
  object.text("snow_told_by", told_utc(day.told)).text("forecast_by", day.forecast_by);
  if (day.valid_until) {
    object.text("snow_valid_until_utc", units::text_of(*day.valid_until));
  }
  object.texts("likely", card::sentences_of(day));
  std::vector<Object> hours;
  hours.reserve(day.hours.size());
  for (const card::SnowHour& hour : day.hours) {
    hours.push_back(hour_json(hour));
  }
  object.list("hours", hours);
  if (day.kept) {
    object.whole("kept_as_report", day.kept->number);
    object.truth("kept_already", day.kept->already ? Truth::yes : Truth::no);
  }
  add_made_from(object, day.made_from);
  return object.bytes();
}

std::string snow_record_json(const card::SnowRecord& record) {
  Object object;
  object.whole("schema", record.schema).text("kind", "snow_record").text("site", record.site);
  object.whole("days", record.days).whole("seen", record.seen);
  if (record.shown) {
    object.whole("known_days", record.shown->days).whole("known", record.shown->seen);
    object.whole("met", record.shown->met).number("melt_factor", record.shown->melt);
    object.number("off_h", record.shown->off.value() / 3600.0);
  } else {
    object.unknown("melt_factor").unknown("off_h");
  }
  add_made_from(object, record.made_from);
  return object.bytes();
}

}  // namespace rimehaul::ports::json
