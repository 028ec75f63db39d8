#include "ports/json/answers.h"

#include "ports/json/card_json.h"
#include "ports/json/parts.h"

namespace rimehaul::ports::json {

namespace {

void add_verdict(Object& object, const card::ExplainedVerdict& told) {
  object.text("verdict", passage::words_for(told.verdict));
  object.object("load_kg", loads_json(told.loads));
  if (!told.decision.empty()) {
    object.text("decision", told.decision);
  }
}

Object leg_json(const card::ExplainedLeg& leg, double allowed_share) {
  Object object;
  add_verdict(object, leg.verdict);
  object.number("length_m", leg.length.value());
  return object.object("binding",
                       finding_json(leg.binding, passage::stand_of(leg.binding, allowed_share)));
}

void add_ground(Object& object, std::string_view key, const std::optional<passage::Lie>& lie) {
  if (!lie) {
    object.unknown(key);
    return;
  }
  const auto box = [](const terrain::AttitudeBox& ground) {
    return Object{}
        .number("grade_low_deg", ground.grade_low.degrees())
        .number("grade_high_deg", ground.grade_high.degrees())
        .number("cross_low_deg", ground.cross_low.degrees())
        .number("cross_high_deg", ground.cross_high.degrees());
  };
  object.object(key, box(lie->found).object("up_to", box(lie->up_to)));
}

Object explained_json(const card::ExplainedFinding& explained) {
  Object object = finding_json(explained.finding, explained.stand);
  object.text("formula", explained.formula).text("source", explained.source);
  object.truth("binds", explained.binds ? Truth::yes : Truth::no);
  object.text("when_utc", units::text_of(explained.when));
  if (explained.snow) {
    object.list("snow", snow_json({*explained.snow}));
  }
  return object.list("besides", workings_json(explained.besides));
}

std::vector<Object> what_if_json(const std::vector<card::MovingShare>& shares) {
  std::vector<Object> objects;
  for (const card::MovingShare& moving : shares) {
    std::vector<Object> then;
    for (const card::ChangedShare& changed : moving.then) {
      then.push_back(Object{}.text("change", changed.change).number("share", changed.share));
    }
    objects.push_back(Object{}
                          .text("check", passage::facts_of(moving.check).key)
                          .number("share", moving.now)
                          .list("then", then));
  }
  return objects;
}

Object way_json(const card::ExplainedWay& way, double allowed_share) {
  Object object;
  object.text("direction", key_of(way.way)).text("from", way.from).text("to", way.to);
  object.number("at_m", way.at.value()).number("heading_deg", way.heading.degrees());
  object.object("piece", span_json(way.piece));
  add_verdict(object, way.verdict);
  object.object("leg", leg_json(way.leg, allowed_share));
  add_ground(object, "ground", way.ground.carrier);
  add_ground(object, "trailer_ground", way.ground.trailer);
  std::vector<Object> shared;
  for (const card::SharedNumbers& numbers : way.shared) {
    shared.push_back(Object{}
                         .list("snow", snow_json({numbers.snow}))
                         .text("tank", key_of(numbers.tank))
                         .list("numbers", workings_json(numbers.numbers)));
  }
  object.list("shared", shared);
  std::vector<Object> findings;
  for (const card::ExplainedFinding& explained : way.findings) {
    findings.push_back(explained_json(explained));
  }
  object.list("findings", findings);
  return way.what_if.empty() ? object : object.list("what_if", what_if_json(way.what_if));
}

Object fault_json(const base::Fault& fault) {
  return Object{}
      .text("file", fault.file)
      .text("place", fault.place)
      .text("problem", fault.problem)
      .text("remedy", fault.remedy)
      .text("weight", fault.weight == base::Weight::fault ? "fault" : "doubt");
}

Object report_json(const card::SiteReport& report) {
  Object object;
  object.whole("schema", report.schema).text("kind", "site_check").text("site", report.site);
  object.truth("usable", report.usable() ? Truth::yes : Truth::no);
  object.texts("contents", report.contents).list("inputs", inputs_json(report.inputs));
  std::vector<Object> faults;
  for (const base::Fault& fault : report.faults) {
    faults.push_back(fault_json(fault));
  }
  return object.list("faults", faults);
}

}  // namespace

std::string routes_json(const std::vector<card::RouteCard>& cards) {
  std::vector<Object> routes;
  routes.reserve(cards.size());
  for (const card::RouteCard& card : cards) {
    routes.push_back(card_json(card));
  }
  return Object{}.whole("schema", 1).text("kind", "routes").list("routes", routes).bytes();
}

std::string explanation_json(const card::Explanation& explanation) {
  Object object;
  object.whole("schema", explanation.schema).text("kind", "explanation");
  object.text("site", explanation.site).text("trail", explanation.trail);
  object.number("at_m", explanation.at.value());
  object.number("east_m", explanation.place.east.value());
  object.number("north_m", explanation.place.north.value());
  object.text("map_frame", explanation.map_frame).text("rig", explanation.rig);
  object.number("height_m", explanation.height ? std::optional{explanation.height->above_datum_m()}
                                               : std::nullopt);
  object.text("snow", explanation.snow).text("snow_told_by", told_utc(explanation.snow_told_by));
  object.text("when_utc", units::text_of(explanation.when));
  object.number("allowed_share", explanation.allowed_share);
  object.number("tolerance_tangent", explanation.tolerance
                                         ? std::optional{explanation.tolerance->ratio()}
                                         : std::nullopt);
  object.texts("sources", explanation.sources);
  std::vector<Object> ways;
  for (const card::ExplainedWay& way : explanation.ways) {
    ways.push_back(way_json(way, explanation.allowed_share));
  }
  object.list("ways", ways);
  add_made_from(object, explanation.made_from);
  return object.bytes();
}

std::string site_report_json(const card::SiteReport& report) {
  return report_json(report).bytes();
}

std::string new_site_json(const card::NewSite& made) {
  Object object;
  object.whole("schema", made.schema).text("kind", "new_site").text("folder", made.folder);
  object.texts("files", made.files).texts("found", made.found);
  std::vector<Object> to_say;
  for (const card::ToSay& say : made.to_say) {
    to_say.push_back(Object{}.text("file", say.file).text("key", say.key).text("what", say.what));
  }
  return object.list("to_say", to_say).object("check", report_json(made.check)).bytes();
}

}  // namespace rimehaul::ports::json
