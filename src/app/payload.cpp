// The verb `payload`: how much may be loaded for a way.
#include "app/payload.h"

#include <utility>

#include "app/answer.h"
#include "app/open_ground.h"
#include "app/orders.h"
#include "app/progress.h"
#include "app/question.h"
#include "app/refusal_answer.h"
#include "app/versions.h"
#include "card/payload_report.h"
#include "ports/json/payload_json.h"

namespace rimehaul::app {

namespace {

/// The way whose loads are asked for; no legs: there is none, for the reason given.
struct FoundWay {
  std::vector<trails::LegId> legs{};
  std::string found_for{};
  search::NoRoute none{};
};

/// Of the rig as asked, else of the rig with nothing on bed and trailer.
FoundWay way_for(const passage::Judge& judge, const search::RouteQuestion& question) {
  const trails::Network& network = judge.scene().network;
  search::RouteAnswer answer = search::find_routes(network, judge, question);
  FoundWay way;
  if (auto* none = std::get_if<search::NoRoute>(&answer)) {
    way.none = std::move(*none);
    way.found_for = "the way with nothing loaded, as none is open with the load asked for";
    const rig::Rig unloaded = rig::without_cargo(judge.rig());
    answer = search::find_routes(network, judge.with_rig(unloaded), question);
  }
  if (const auto* routes = std::get_if<std::vector<search::Route>>(&answer)) {
    for (const search::RouteLeg& leg : routes->front().legs) {
      way.legs.push_back(leg.leg);
    }
  }
  return way;
}

}  // namespace

Status payload(const PayloadOptions& options, const Outside& outside) {
  LoadedSite site = load_usable_site(options.common.site);
  RigOptions asked = options.rig;
  asked.towed_kg = asked.towed_kg.value_or(0.0);
  const rig::Rig rig = rig_as_loaded(site, asked);
  const units::Instant depart = departure(options.way.depart, {outside.now, site.local_clock});
  heed_records(site, depart, outside);
  const ChosenSnow snow = snow_to_judge_by(site, options.snow, depart);
  const search::RouteQuestion question = question_of(options.way, site.scene->network, depart);
  const FoundWay way = asked_over_open_ground(
      site, {rig, {snow.snow.get()}, depart},
      [&] {
        return way_for(passage::Judge{*site.scene, rig, *snow.snow}, question);
      },
      [](const FoundWay& found) { return found.legs; });
  const passage::Judge judge{*site.scene, rig, *snow.snow};
  if (way.legs.empty()) {
    give_answer(refusal_of(way.none, {judge, question, inputs_judged_by(site, snow)}, outside),
                options.common, outside);
    return Status::honest_no;
  }
  const day::Payload found = [&] {
    Progress progress{outside, "judging loads"};
    return day::payload_of(judge, {.way = way.legs,
                                   .depart = depart,
                                   .permission = search::permission_of(question),
                                   .step = units::Kilograms{static_cast<double>(options.step_kg)},
                                   .rewalk = outside.rewalk,
                                   .watcher = &progress});
  }();
  card::PayloadReport report = card::payload_report(found, {judge, question, way.legs});
  report.found_for = way.found_for;
  report.made_from = made_from(inputs_judged_by(site, snow), outside);
  give_answer({.text = card::text_of(report, kColumns), .json = ports::json::payload_json(report)},
              options.common, outside);
  return card::any_open(report) ? Status::yes : Status::honest_no;
}

}  // namespace rimehaul::app
