#include "ports/json/departures_json.h"

namespace rimehaul::ports::json {

namespace {

Object period_json(units::Period period) {
  return Object{}
      .text("from_utc", units::text_of(period.from))
      .text("to_utc", units::text_of(period.to));
}

std::vector<Object> windows_json(const units::TimeSpans& windows) {
  std::vector<Object> objects;
  for (const units::Period& window : windows.periods()) {
    objects.push_back(period_json(window));
  }
  return objects;
}

}  // namespace

Object departures_json(const day::Departures& departures) {
  Object object = period_json(departures.hours);
  object.number("late_s", departures.late.value());
  object.list("windows", windows_json(departures.out));
  if (departures.back.has_value() && departures.turn_round.has_value()) {
    object.list("back", windows_json(*departures.back));
    object.number("turn_round_s", departures.turn_round->value());
  }
  return object;
}

}  // namespace rimehaul::ports::json
