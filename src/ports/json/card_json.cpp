#include "ports/json/card_json.h"

#include <algorithm>

#include "card/exposed.h"
#include "ports/json/departures_json.h"
#include "ports/json/parts.h"

namespace rimehaul::ports::json {

namespace {

void add_steepness(Object& leg, std::string_view key,
                   const std::optional<passage::Steepness>& steepness) {
  if (!steepness) {
    leg.unknown(key);
    return;
  }
  // What goes the other way is none this way.
  const units::Slope found = std::max(steepness->found, units::Slope{});
  const units::Slope up_to = std::max(steepness->up_to, units::Slope{});
  leg.object(key, Object{}
                      .number("found_deg", found.degrees())
                      .number("found_percent", found.percent())
                      .number("up_to_deg", up_to.degrees())
                      .number("up_to_percent", up_to.percent())
                      .number("at_m", steepness->at.value()));
}

void add_ahead(Object& leg, std::string_view key, const card::Ahead& ahead) {
  Object object;
  if (ahead.distance) {
    object.number("distance_m", ahead.distance->value()).text("name", ahead.name);
  }
  leg.object(key, object);
}

Object leg_json(const card::CardLeg& leg) {
  Object object;
  object.whole("number", leg.number).text("trail", leg.trail).object("span", span_json(leg.span));
  object.text("direction", key_of(leg.way)).text("from", leg.from).text("to", leg.to);
  object.text("entry_utc", units::text_of(leg.entry));
  if (leg.waits_before > units::Seconds{0}) {
    object.number("waits_before_s", leg.waits_before.value());
  }
  object.number("start_bearing_deg", leg.start_bearing.degrees());
  object.number("length_m", leg.length.value()).number("climb_m", leg.climb.value());
  object.number("drop_m", leg.drop.value()).number("speed_m_per_s", leg.speed.value());
  object.number("time_s", leg.time.value()).number("fuel_l", leg.fuel.value());
  object.text("verdict", passage::words_for(leg.verdict));
  Object binding;
  binding.text("check", leg.binding_key).text("title", leg.binding_check);
  binding.number("share", leg.binding_share);
  if (leg.binding_at) {
    binding.number("at_m", leg.binding_at->value());
  }
  object.object("binding", binding);
  add_steepness(object, "steepest_up", leg.up);
  add_steepness(object, "steepest_down", leg.down);
  add_steepness(object, "steepest_across", leg.across);
  object.list("snow", snow_json(leg.snow));
  std::vector<Object> notices;
  for (const card::Notice& notice : leg.notices) {
    notices.push_back(span_json(notice.span).text("words", notice.words));
  }
  object.list("notices", notices);
  std::vector<Object> exposed;
  for (const geo::Span& span : leg.exposed) {
    exposed.push_back(span_json(span));
  }
  object.list("exposed", exposed).number("exposed_m", card::metres_of(leg.exposed).value());
  add_ahead(object, "next_turn_round", leg.turn_round);
  add_ahead(object, "next_refuge", leg.refuge);
  return object;
}

Object rig_json(const card::RouteCard& card) {
  Object object;
  object.text("name", card.rig).text("carrier", card.carrier);
  object.text("driver_level", card.driver_level);
  if (!card.trailer.empty()) {
    object.text("trailer", card.trailer);
    object.truth("trailer_braked", card.trailer_braked ? Truth::yes : Truth::no);
  }
  object.number("bed_kg", card.load.bed.value()).number("towed_kg", card.load.towed.value());
  object.whole("passengers", card.load.passengers);
  object.number("passenger_kg", card.load.passenger_mass.value());
  object.number("fuel_l", card.load.fuel.value());
  object.number("total_kg", card.total_mass.value());
  object.number("tongue_kg", card.tongue_mass.value());
  return object;
}

Object snow_part(const card::RouteCard& card) {
  Object object;
  object.text("told_by", told_utc(card.snow_told_by)).list("states", snow_json(card.snow));
  object.object("weather", weather_json(card.weather));
  if (card.snow_valid_until) {
    object.text("valid_until_utc", units::text_of(*card.snow_valid_until));
  }
  return object;
}

std::vector<Object> trace_json(const card::RouteCard& card) {
  std::vector<Object> points;
  for (const card::TracePoint& point : card.trace) {
    Object object;
    object.number("east_m", point.place.east.value()).number("north_m", point.place.north.value());
    object.number("chainage_m", point.chainage.value()).whole("leg", point.leg + 1);
    object.number("height_m",
                  point.height ? std::optional{point.height->above_datum_m()} : std::nullopt);
    points.push_back(object);
  }
  return points;
}

Object totals_json(const card::RouteCard& card) {
  Object waits;
  if (card.waits > units::Seconds{0}) {
    waits.number("waits_s", card.waits.value());
  }
  return waits.number("length_m", card.length.value())
      .number("climb_m", card.climb.value())
      .number("drop_m", card.drop.value())
      .number("time_s", card.time.value())
      .number("fuel_l", card.fuel.value())
      .number("fuel_reserve_l", card.fuel_reserve.value());
}

Object issue_json(const card::CardIssue& issue) {
  return Object{}
      .whole("number", issue.number)
      .whole("board", issue.board)
      .text("route", issue.route)
      .text("driver", issue.driver)
      .text("signed_by", issue.signed_by)
      .text("log_head", issue.log_head);
}

void add_lists(const card::RouteCard& card, Object& object) {
  object.texts("fuel_warnings", card.fuel_warnings);
  object.texts("turn_back_triggers", card.turn_back_triggers);
  object.texts("radio", card.radio);
  object.texts("people", card.people);
  object.texts("help", card.help);
  object.texts("pre_start_checks", card.pre_start_checks);
  object.texts("parking_steps", card.parking_steps);
  object.texts("cautions", card.cautions);
  if (!card.orders.empty()) {
    object.texts("orders", card.orders);
  }
  object.texts("estimates", card.estimates);
  object.texts("heights", card.heights_notes);
  add_made_from(object, card.made_from);
}

}  // namespace

Object card_json(const card::RouteCard& card) {
  Object object;
  object.whole("schema", card.schema).text("kind", "route_card").text("site", card.site);
  object.text("title", card.title).text("map_frame", card.map_frame);
  object.text("vertical_datum", card.vertical_datum);
  object.text("prefer", key_of(card.prefer));
  object.text("depart_utc", units::text_of(card.depart));
  object.text("arrive_utc", units::text_of(card.arrive));
  object.whole("utc_offset_minutes", card.local_clock.offset_minutes(card.depart));
  object.text("verdict", passage::words_for(card.verdict));
  object.number("allowed_share", card.allowed_share).number("worst_share", card.worst_share);
  object.number("confidence_k", card.confidence_k);
  if (card.issue) {
    object.object("issue", issue_json(*card.issue));
  }
  object.text("permitted_by", card.permitted_by).texts("permitted", card.permitted);
  object.object("rig", rig_json(card)).object("snow", snow_part(card));
  object.object("totals", totals_json(card));
  if (card.departures) {
    object.object("departures", departures_json(*card.departures));
  }
  std::vector<Object> legs;
  for (const card::CardLeg& leg : card.legs) {
    legs.push_back(leg_json(leg));
  }
  object.list("legs", legs);
  add_lists(card, object);
  object.whole("places_rewalked", static_cast<std::int64_t>(card.places_rewalked));
  object.list("trace", trace_json(card));
  return object;
}

std::string canonical_json(const card::RouteCard& card) {
  return card_json(card).bytes();
}

}  // namespace rimehaul::ports::json
