// The refusal as JSON: every leg and turn by itself, the causes, and what would open which way.
#include "ports/json/answers.h"
#include "ports/json/departures_json.h"
#include "ports/json/parts.h"

namespace rimehaul::ports::json {

namespace {

/// What opens something, in numbers.
Object openings_json(const search::Openings& opens) {
  return Object{}
      .object("load_kg", loads_json(opens.loads))
      .truth("without_trailer", opens.without_trailer ? Truth::yes : Truth::no)
      .list("snow", snow_json(opens.snow))
      .list("bed_kg_without_trailer", intervals_json(opens.bed_without_trailer))
      .list("snow_without_trailer", snow_json(opens.snow_without_trailer))
      .truth("asks_for_a_decision", opens.and_decision ? Truth::yes : Truth::no);
}

Object leg_json(const card::RefusedLeg& leg) {
  Object object;
  object.text("trail", leg.trail).text("from", leg.from).text("to", leg.to);
  object.object("span", span_json(leg.span)).text("direction", key_of(leg.way));
  object.object("finding", finding_json(leg.finding, leg.stand));
  std::vector<Object> findings;
  for (const card::RefusedFinding& refused : leg.findings) {
    findings.push_back(finding_json(refused.finding, refused.stand));
  }
  object.list("findings", findings).text("verdict", passage::words_for(leg.verdict));
  object.object("load_kg", loads_json(leg.opens.loads)).object("opens", openings_json(leg.opens));
  if (!leg.turn_from.empty()) {
    object.text("turn_from", leg.turn_from);
  }
  if (!leg.remedy.empty()) {
    object.text("say_it_by", leg.remedy);
  }
  return object.texts("opens_by", leg.opens_it);
}

Object cause_json(const card::RefusalCause& cause) {
  Object object;
  object.object("worst", finding_json(cause.finding, cause.stand)).text("where", cause.where);
  std::vector<Object> places;
  for (const std::size_t index : cause.places) {
    places.push_back(Object{}.whole("obstacle", static_cast<std::int64_t>(index)));
  }
  object.list("places", places).whole("worst_obstacle", static_cast<std::int64_t>(cause.worst));
  if (!cause.remedy.empty()) {
    object.text("say_it_by", cause.remedy);
  }
  return object.object("lifts", openings_json(cause.lifts)).texts("lifted_by", cause.lifted_by);
}

Object way_json(const card::RefusedWay& way) {
  return Object{}
      .texts("trails", way.trails)
      .object("opens", openings_json(way.opens))
      .texts("opens_by", way.opens_it);
}

template <class Thing>
std::vector<Object> all_of(const std::vector<Thing>& things, Object (*to_json)(const Thing&)) {
  std::vector<Object> objects;
  objects.reserve(things.size());
  for (const Thing& thing : things) {
    objects.push_back(to_json(thing));
  }
  return objects;
}

}  // namespace

std::string refusal_json(const card::Refusal& refusal) {
  Object object;
  object.whole("schema", refusal.schema).text("kind", "no_route").text("site", refusal.site);
  object.text("title", refusal.title).text("rig", refusal.rig).text("load", refusal.load);
  object.text("snow", refusal.snow).text("snow_told_by", told_utc(refusal.snow_told_by));
  object.text("depart_utc", units::text_of(refusal.depart));
  if (refusal.departures) {
    object.object("departures", departures_json(*refusal.departures));
  }
  object.number("allowed_share", refusal.allowed_share).text("why", refusal.why);
  object.text("verdict", passage::words_for(refusal.verdict()));
  object.object("load_kg", loads_json(refusal.nearest.opens.loads));
  object.object("nearest_way", way_json(refusal.nearest));
  object.list("other_ways", all_of(refusal.other_ways, way_json));
  object.list("causes", all_of(refusal.causes, cause_json));
  object.list("obstacles", all_of(refusal.legs, leg_json));
  add_made_from(object, refusal.made_from);
  return object.bytes();
}

}  // namespace rimehaul::ports::json
