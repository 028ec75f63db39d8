#include "ports/json/round_json.h"

#include <vector>

#include "ports/json/card_json.h"
#include "ports/json/object.h"
#include "ports/json/parts.h"

namespace rimehaul::ports::json {

namespace {

std::vector<Object> errands_json(const std::vector<day::Errand>& errands) {
  std::vector<Object> objects;
  objects.reserve(errands.size());
  for (const day::Errand& errand : errands) {
    objects.push_back(Object{}
                          .text("what", errand.what)
                          .text("from", errand.from)
                          .text("to", errand.to)
                          .number("load_kg", errand.bed.value())
                          .number("towed_load_kg", errand.towed.value())
                          .whole("passengers", errand.passengers));
  }
  return objects;
}

Object call_json(const card::RoundCall& call) {
  Object object;
  object.text("station", call.station);
  if (call.arrives) {
    object.text("arrives_utc", units::text_of(*call.arrives));
  }
  if (call.leaves) {
    object.text("leaves_utc", units::text_of(*call.leaves));
  }
  if (call.aboard) {
    object.object("aboard", load_json(*call.aboard));
  }
  object.list("put_off", errands_json(call.put_off));
  return object.list("taken_on", errands_json(call.taken_on));
}

Object not_ruled_out_json(const search::OrderWorth& least) {
  return Object{}
      .number("worst_share", least.worst_share)
      .text("ends_utc", units::text_of(least.arrives))
      .number("fuel_l", least.fuel.value())
      .truth("waits_for_a_decision", least.needs_permission ? Truth::yes : Truth::no);
}

Object unreached_json(const card::UnreachedCall& call) {
  return Object{}
      .text("station", call.station)
      .object("aboard", load_json(call.aboard))
      .text("ready_utc", units::text_of(call.ready))
      .text("why", call.why);
}

}  // namespace

std::string round_json(const card::RoundReport& report) {
  Object object;
  object.whole("schema", report.schema).text("kind", report.holds() ? "round" : "no_round");
  object.text("site", report.site).text("rig", report.rig).text("prefer", key_of(report.prefer));
  object.text("verdict", passage::words_for(card::verdict_of(report)));
  object.number("halt_s", report.halt.value());
  object.number("fuel_to_spare_l", report.fuel_to_spare.value());
  std::vector<Object> calls;
  for (const card::RoundCall& call : report.calls) {
    calls.push_back(call_json(call));
  }
  object.list("calls", calls).texts("orders", report.orders);
  object.truth("proven", report.not_ruled_out.has_value() ? Truth::no : Truth::yes);
  if (report.not_ruled_out) {
    object.object("not_ruled_out", not_ruled_out_json(*report.not_ruled_out));
  }
  if (report.holds()) {
    std::vector<Object> trips;
    for (const card::RouteCard& trip : report.trips) {
      trips.push_back(card_json(trip));
    }
    object.number("fuel_l", report.fuel.value()).list("trips", trips);
  } else {
    std::vector<Object> unreached;
    for (const card::UnreachedCall& call : report.unreached) {
      unreached.push_back(unreached_json(call));
    }
    object.list("unreached", unreached);
  }
  add_made_from(object, report.made_from);
  return object.bytes();
}

}  // namespace rimehaul::ports::json
