#include "app/plan_route.h"

#include <algorithm>
#include <iterator>
#include <utility>

#include "app/answer.h"
#include "app/open_ground.h"
#include "app/orders.h"
#include "app/print_card.h"
#include "app/print_doubts.h"
#include "app/question.h"
#include "app/refusal_answer.h"
#include "app/route_gpx.h"
#include "app/route_hours.h"
#include "app/versions.h"
#include "card/card_text.h"
#include "card/departure_lines.h"
#include "card/refusal.h"
#include "day/fuel.h"
#include "day/withhold.h"
#include "ports/json/answers.h"
#include "ports/json/card_json.h"

namespace rimehaul::app {

namespace {

/// Ways for which there is fuel, the reserve kept; or the reason for none.
search::RouteAnswer with_fuel_enough(search::RouteAnswer answer, const rig::Rig& rig,
                                     const passage::Rules& rules) {
  auto* routes = std::get_if<std::vector<search::Route>>(&answer);
  if (routes == nullptr) {
    return answer;
  }
  const units::Litres spare = day::fuel_to_spare(rig, rules);
  units::Litres least = routes->front().fuel;
  for (const search::Route& route : *routes) {
    least = std::min(least, route.fuel);
  }
  std::erase_if(*routes, [&](const search::Route& route) { return !(route.fuel <= spare); });
  if (!routes->empty()) {
    return answer;
  }
  return search::NoRoute{card::not_enough_fuel(rig, rules, least), {}};
}

/// Everything that a route is judged by and told with.
struct Case {
  const LoadedSite& site;
  const rig::Rig& rig;
  const ChosenSnow& snow;
  const search::RouteQuestion& question;
  std::optional<units::Litres> fuel_back{};  ///< from the end of the best route
  CardKeeper* keeper = nullptr;
  std::optional<card::CardIssue> issue{};
  std::optional<day::Departures> departures{};
};

card::RouteCard card_of(const search::Route& route, const Case& asked, const Outside& outside) {
  const passage::Scene& scene = *asked.site.scene;
  const audit::Rewalk rewalk =
      outside.rewalk(scene, asked.rig, *asked.snow.snow, day::promise_of(route, scene.network));
  day::withhold_if_worse(rewalk);
  const card::CardContext context{
      .scene = scene,
      .rig = asked.rig,
      .snow = *asked.snow.snow,
      .question = asked.question,
      .made_from = made_from(inputs_judged_by(asked.site, asked.snow), outside),
      .snow_valid_until = asked.snow.valid_until,
      .heights_notes = asked.site.heights_notes,
      .places_rewalked = rewalk.places_judged,
      .issue = asked.issue,
      .orders = asked.site.orders,
      .tow_out = tow_out_rig(asked.site),
      .fuel_back = asked.fuel_back,
      .departures = asked.departures};
  return card::make_card(route, context);
}

/// Of all its routes; none where there is none.
std::vector<trails::LegId> legs_of(const search::RouteAnswer& answer) {
  std::vector<trails::LegId> legs;
  if (const auto* routes = std::get_if<std::vector<search::Route>>(&answer)) {
    for (const search::Route& route : *routes) {
      std::ranges::transform(route.legs, std::back_inserter(legs), &search::RouteLeg::leg);
    }
  }
  return legs;
}

std::string text_of_all(const std::vector<card::RouteCard>& cards) {
  std::string text;
  for (std::size_t i = 0; i < cards.size(); ++i) {
    if (i > 0) {
      text += "\nANOTHER WAY (" + std::to_string(i) + ")\n\n";
    }
    text += card::text_of(cards[i], kColumns);
  }
  return text;
}

Status print_cards(const std::vector<search::Route>& routes, Case asked,
                   const RouteOptions& options, const Outside& outside) {
  if (asked.keeper != nullptr) {
    asked.issue = asked.keeper->begin();
  }
  std::vector<card::RouteCard> cards;
  cards.reserve(routes.size());
  for (const search::Route& route : routes) {
    cards.push_back(card_of(route, asked, outside));
  }
  Answer answer{.text = text_of_all(cards), .json = ports::json::routes_json(cards)};
  if (options.card) {
    doubt_letters_on_paper(asked.site, answer);
    answer.files = printed_card(*options.card, {.card = cards.front(),
                                                .profile = card::grade_profile_of(
                                                    routes.front(), {*asked.site.scene, asked.rig}),
                                                .site = asked.site});
  }
  if (options.gpx) {
    answer.files.push_back({*options.gpx, route_gpx(cards.front(), asked.site.scene->frame)});
  }
  if (asked.keeper != nullptr) {
    asked.keeper->keep(cards.front(), ports::json::canonical_json(cards.front()));
  }
  give_answer(std::move(answer), options.common, outside);
  return Status::yes;
}

}  // namespace

Status plan_route(const RouteOptions& options, const Outside& outside, CardKeeper* keeper) {
  // Files become ground, trails, rigs and rules.
  LoadedSite site = load_usable_site(options.common.site);

  // What was typed becomes a question.
  const rig::Rig rig = rig_as_loaded(site, options.rig);
  const std::optional<AskedBack> back = way_back_asked(site, options.rig, options.hours);
  const AskedHours hours = hours_asked(options, {outside.now, site.local_clock});
  heed_records(site, hours.depart, outside);
  const ChosenSnow snow = snow_to_judge_by(site, options.snow, hours.depart);

  // Ground, rig and snow become judged legs, over open ground too; legs become routes.
  search::RouteQuestion question = question_of(options.way, site.scene->network, hours.depart);
  question.most_alternatives = static_cast<std::size_t>(options.alternatives);
  question.arrive_by = hours.arrive_by;
  std::optional<day::Departures> departures;
  const search::RouteAnswer answer = asked_over_open_ground(
      site, {rig, {snow.snow.get()}, hours.depart},
      [&]() -> search::RouteAnswer {
        const passage::Scene& scene = *site.scene;
        const passage::Judge judge{scene, rig, *snow.snow};
        passage::GroundMemory ground;
        const passage::RememberingJudge remembering{judge, ground};
        search::LegHours through{remembering, hours.looked_at};
        question.depart = hours.depart;
        departures = departures_asked(options, {judge, ground, through}, question, back);
        if (hours.arrive_by) {
          const auto last = day::latest(departures->out);
          if (!last.has_value()) {
            return search::NoRoute{card::no_departure_arrives_in_time(), {}};
          }
          question.depart = *last;
        }
        return with_fuel_enough(search::find_routes_through(scene.network, through, question), rig,
                                scene.rules);
      },
      legs_of);
  const passage::Judge judge{*site.scene, rig, *snow.snow};

  // Every route is distrusted and walked again; what survives is printed.
  Case asked{site, rig, snow, question, {}, keeper, {}, departures};
  if (const auto* routes = std::get_if<std::vector<search::Route>>(&answer)) {
    asked.fuel_back = day::fuel_back(routes->front(), judge, question);
    return print_cards(*routes, asked, options, outside);
  }
  give_answer(refusal_of(std::get<search::NoRoute>(answer),
                         {judge, question, inputs_judged_by(site, snow), departures}, outside),
              options.common, outside);
  return Status::honest_no;
}

}  // namespace rimehaul::app
