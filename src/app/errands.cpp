#include "app/errands.h"

#include <algorithm>
#include <iterator>
#include <utility>

#include "app/answer.h"
#include "app/crew_on_cores.h"
#include "app/folder_to_fill.h"
#include "app/input_files.h"
#include "app/names_meant.h"
#include "app/open_ground.h"
#include "app/orders.h"
#include "app/print_card.h"
#include "app/print_doubts.h"
#include "app/progress.h"
#include "app/question.h"
#include "app/refusal_answer.h"
#include "app/versions.h"
#include "card/round_report.h"
#include "day/fuel.h"
#include "ports/json/round_json.h"
#include "ports/openssl/digest.h"
#include "ports/toml/errands_file.h"

namespace rimehaul::app {

namespace {

using RoundAnswer = std::variant<day::RoundPlan, day::NoRound>;

/// The list in a file, and what a round of it comes to.
struct ReadRound {
  day::Round round;
  day::RoundStops stops;
};

ReadRound round_in(const std::string& path, const LoadedSite& site) {
  base::Reading<day::Round> reading = ports::toml::read_errands({path, path});
  const trails::Network& network = site.scene->network;
  std::ranges::move(unknown_names(reading.data, path, network), std::back_inserter(reading.faults));
  if (!reading.faults.empty()) {
    throw UnfitInput{std::move(reading.faults)};
  }
  auto stops = day::stops_of(reading.data, network);
  if (const auto* unfit = std::get_if<day::UnfitRound>(&stops)) {
    throw UnfitInput{{{path, "", unfit->problem, unfit->remedy, {}}}};
  }
  return {std::move(reading.data), std::get<day::RoundStops>(std::move(stops))};
}

void expect_a_trailer_where_towed(const day::Round& round, const rig::Rig& rig,
                                  const std::string& file) {
  for (const day::Errand& errand : round.errands) {
    if (!rig.trailer && errand.towed > units::Kilograms{0}) {
      throw UnfitInput{{{file,
                         "errand \"" + errand.what + "\"",
                         "is to be towed, and the rig " + rig.name + " tows nothing",
                         "write load_kg in place of towed_load_kg, or take a rig with a trailer",
                         {}}}};
    }
  }
}

/// Everything that a round is judged by and told with.
struct Case {
  const LoadedSite& site;
  const ChosenSnow& snow;
  const ReadRound& read;
  const day::RoundQuestion& question;
  card::MadeFrom made_from;
};

search::RouteQuestion question_of_trip(const search::Hop& hop, units::Instant departs,
                                       const Case& asked) {
  return {.stations = {asked.read.stops.departed(hop), asked.read.stops.reached(hop)},
          .prefer = asked.question.prefer,
          .depart = departs,
          .most_alternatives = 0,
          .permitted_by = asked.question.permitted_by};
}

/// The card of a trip, with the fuel that is still aboard when it begins.
card::RouteCard card_of(const day::RoundHop& hop, units::Litres used, const Case& asked) {
  const passage::Scene& scene = *asked.site.scene;
  rig::Rig rig = hop.rig;
  rig.load.fuel = rig.load.fuel - used;
  const search::RouteQuestion question = question_of_trip(hop.hop, hop.departs, asked);
  const passage::Judge judge{scene, rig, *asked.snow.snow};
  return card::make_card(hop.route, {.scene = scene,
                                     .rig = rig,
                                     .snow = *asked.snow.snow,
                                     .question = question,
                                     .made_from = asked.made_from,
                                     .snow_valid_until = asked.snow.valid_until,
                                     .heights_notes = asked.site.heights_notes,
                                     .places_rewalked = hop.places_rewalked,
                                     .orders = asked.site.orders,
                                     .tow_out = tow_out_rig(asked.site),
                                     .fuel_back = day::fuel_back(hop.route, judge, question)});
}

std::string card_file(std::size_t trip) {
  return "trip-" + std::to_string(trip + 1) + ".pdf";
}

card::RoundReport blank_report(const Case& asked, const rig::Rig& rig) {
  return {.site = asked.site.name,
          .rig = rig.name,
          .trailer = rig.trailer ? rig.trailer->name : "",
          .prefer = asked.question.prefer,
          .halt = asked.question.halt,
          .local_clock = asked.site.local_clock,
          .calls = {},
          .orders = asked.site.orders,
          .made_from = asked.made_from};
}

card::RoundContext context_of(const Case& asked) {
  return {
      .network = asked.site.scene->network, .round = asked.read.round, .stops = asked.read.stops};
}

Status tell_round(const day::RoundPlan& plan, const Case& asked, const rig::Rig& rig,
                  const ErrandsOptions& options, const Outside& outside) {
  card::RoundReport report = blank_report(asked, rig);
  report.calls = card::calls_of(plan.hops, context_of(asked));
  report.fuel = plan.fuel;
  report.fuel_to_spare = plan.fuel_to_spare;
  report.not_ruled_out = plan.not_ruled_out;
  units::Litres used{0};
  for (const day::RoundHop& hop : plan.hops) {
    report.trips.push_back(card_of(hop, used, asked));
    used = used + hop.route.fuel;
  }
  Answer answer{.text = card::text_of(report, kColumns), .json = ports::json::round_json(report)};
  std::optional<FolderToFill> folder;
  if (options.into) {
    folder.emplace(*options.into);
    doubt_letters_on_paper(asked.site, answer);
    for (std::size_t i = 0; i < plan.hops.size(); ++i) {
      const auto printed =
          printed_card(path_of({*options.into, card_file(i)}),
                       {.card = report.trips[i],
                        .profile = card::grade_profile_of(plan.hops[i].route,
                                                          {*asked.site.scene, plan.hops[i].rig}),
                        .site = asked.site});
      std::ranges::copy(printed, std::back_inserter(answer.files));
    }
  }
  give_answer(std::move(answer), options.common, outside);
  if (folder) {
    folder->keep();
  }
  return Status::yes;
}

Status tell_no_round(const day::NoRound& none, const Case& asked, const rig::Rig& rig,
                     const ErrandsOptions& options, const Outside& outside) {
  card::RoundReport report = blank_report(asked, rig);
  report.calls = card::calls_of(none.farthest, context_of(asked));
  report.fuel_to_spare = none.fuel_to_spare;
  report.not_ruled_out = none.not_ruled_out;
  for (const day::UnreachedStop& stop : none.unreached) {
    report.unreached.push_back(card::unreached_call(stop, context_of(asked)));
  }
  std::string text = card::text_of(report, kColumns);
  const auto blocked = std::ranges::find_if(
      none.unreached, [](const day::UnreachedStop& stop) { return stop.none.has_value(); });
  if (blocked != none.unreached.end()) {
    const search::RouteQuestion question = question_of_trip(blocked->hop, blocked->ready, asked);
    const passage::Judge judge{*asked.site.scene, blocked->rig, *asked.snow.snow};
    text += "\n" + refusal_of(*blocked->none,
                              {judge, question, inputs_judged_by(asked.site, asked.snow)}, outside)
                       .text;
  }
  give_answer({.text = std::move(text), .json = ports::json::round_json(report)}, options.common,
              outside);
  return Status::honest_no;
}

std::vector<trails::LegId> legs_of(const RoundAnswer& answer) {
  const auto* plan = std::get_if<day::RoundPlan>(&answer);
  const auto& hops = plan != nullptr ? plan->hops : std::get<day::NoRound>(answer).farthest;
  std::vector<trails::LegId> legs;
  for (const day::RoundHop& hop : hops) {
    std::ranges::transform(hop.route.legs, std::back_inserter(legs), &search::RouteLeg::leg);
  }
  return legs;
}

}  // namespace

std::vector<std::string> trip_files() {
  std::vector<std::string> names;
  for (std::size_t trip = 0; trip <= search::kMostStops; ++trip) {
    names.push_back(card_file(trip));
    names.push_back(record_beside(card_file(trip)));
  }
  return names;
}

Status errands(const ErrandsOptions& options, const Outside& outside) {
  LoadedSite site = load_usable_site(options.common.site);
  const ReadRound read = round_in(options.list, site);
  RigOptions stays = options.rig;
  stays.towed_kg = stays.towed_kg.value_or(0.0);
  const rig::Rig rig = rig_as_loaded(site, stays);
  expect_a_trailer_where_towed(read.round, rig, options.list);
  const units::Instant depart = departure(options.depart, {outside.now, site.local_clock});
  heed_records(site, depart, outside);
  const ChosenSnow snow = snow_to_judge_by(site, options.snow, depart);
  day::RoundQuestion question{
      .round = read.round,
      .stops = read.stops,
      .hours = {depart, {site.local_clock.next_day_begins(depart).seconds - 1}},
      .halt = units::Seconds{options.halt_min * 60.0},
      .prefer = preference_typed(options.prefer),
      .permitted_by = options.permitted_by,
      .rewalk = outside.rewalk};
  const rig::Rig at_the_start = day::rig_with(rig, read.round, read.stops, 0);
  const RoundAnswer answer = asked_over_open_ground(
      site, {at_the_start, {snow.snow.get()}, depart},
      [&]() -> RoundAnswer {
        Progress progress{outside, "ordering stops"};
        CrewOnCores crew;
        question.watcher = &progress;
        question.crew = &crew;
        return day::plan_round(passage::Judge{*site.scene, rig, *snow.snow}, question);
      },
      legs_of);
  std::vector<card::InputFile> inputs = inputs_judged_by(site, snow);
  inputs.push_back(errands_file(options.list));
  const Case asked{site, snow, read, question, made_from(std::move(inputs), outside)};
  if (const auto* plan = std::get_if<day::RoundPlan>(&answer)) {
    return tell_round(*plan, asked, rig, options, outside);
  }
  return tell_no_round(std::get<day::NoRound>(answer), asked, rig, options, outside);
}

}  // namespace rimehaul::app
