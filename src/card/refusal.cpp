#include "card/refusal.h"

#include <algorithm>
#include <cstdint>

#include "card/figures.h"
#include "card/layout.h"
#include "card/notices.h"
#include "card/words.h"

namespace rimehaul::card {

namespace {

RefusedLeg refused_leg(const search::Obstacle& obstacle, const RefusalContext& context) {
  const trails::Network& network = context.scene.network;
  const trails::Leg& leg = network.legs[static_cast<std::uint32_t>(obstacle.leg)];
  const double allowed =
      passage::allowed_share_for(context.scene.rules, context.rig.driver_level).value_or(0.0);
  RefusedLeg refused;
  refused.trail = network.trails[leg.trail].name;
  refused.from = name_of(network, leg.from);
  refused.to = name_of(network, leg.to);
  refused.span = leg.span;
  refused.way = leg.way;
  if (obstacle.turn_from) {
    const trails::Leg& before = network.legs[static_cast<std::uint32_t>(*obstacle.turn_from)];
    refused.turn_from = network.trails[before.trail].name;
  }
  refused.finding = obstacle.finding;
  refused.stand = passage::stand_of(obstacle.finding, allowed);
  if (refused.stand == passage::Stand::missing) {
    refused.remedy = words::where_to_say(obstacle.finding.check);
  }
  for (const passage::LoadInterval& loads : obstacle.open_bed_loads) {
    refused.opens_it.push_back(words::opens_with_load(passage::LoadPlace::bed, loads));
  }
  for (const passage::LoadInterval& loads : obstacle.open_towed_loads) {
    refused.opens_it.push_back(words::opens_with_load(passage::LoadPlace::towed, loads));
  }
  if (obstacle.open_without_trailer) {
    refused.opens_it.push_back(words::opens_without_trailer());
  }
  if (!obstacle.open_in.empty()) {
    refused.opens_it.push_back(words::opens_in_snow(obstacle.open_in));
  }
  if (!obstacle.decision.empty()) {
    refused.opens_it.push_back(words::opens_by_decision(obstacle.decision));
  }
  return refused;
}

std::string snow_at_departure(const RefusalContext& context) {
  const trails::Station& start = context.scene.network.stations[context.question.stations.front()];
  const auto height = context.scene.heights.at(start.place);
  const auto state =
      height ? context.snow.at({*height, std::nullopt, context.question.depart}) : std::nullopt;
  return state ? words::snow_state(*state) : "unknown";
}

void write_leg(const RefusedLeg& leg, Sheet& sheet) {
  const passage::CheckFacts& facts = passage::facts_of(leg.finding.check);
  sheet.labelled({0, 2, "-"},
                 (leg.turn_from.empty() ? "" : "turn from " + leg.turn_from + " into ") +
                     leg.trail + ", " + leg.from + " to " + leg.to);
  sheet.labelled({4, 10, "check"}, std::string{facts.title} +
                                       (words::has_place(leg.finding.check)
                                            ? " " + where_text({leg.finding.at, leg.finding.at},
                                                               leg.span.to - leg.span.from)
                                            : ""));
  sheet.labelled({4, 10, "result"}, words::outcome(leg.finding));
  if (leg.finding.share) {
    sheet.labelled({4, 10, "numbers"}, "demand " + amount_text(leg.finding.demand, Side::demand) +
                                           ", capacity " +
                                           amount_text(leg.finding.capacity, Side::capacity));
  }
  if (!leg.remedy.empty()) {
    sheet.labelled({4, 10, "say it by"}, leg.remedy);
  }
  std::string_view label = "opens by";
  for (const std::string& opens : leg.opens_it) {
    sheet.labelled({4, 10, label}, opens);
    label = "or by";
  }
}

}  // namespace

std::string title_of(const trails::Network& network, const search::RouteQuestion& question) {
  const auto& stations = question.stations;
  std::string title =
      network.stations[stations.front()].name + " to " + network.stations[stations.back()].name;
  for (std::size_t i = 1; i + 1 < stations.size(); ++i) {
    title += (i == 1 ? " via " : ", ") + network.stations[stations[i]].name;
  }
  return title;
}

bool Refusal::only_by_decision() const {
  return !legs.empty() && std::ranges::all_of(legs, [](const RefusedLeg& leg) {
    return leg.stand == passage::Stand::asks;
  });
}

Refusal make_refusal(const search::NoRoute& answer, const RefusalContext& context) {
  Refusal refusal;
  refusal.site = context.scene.site_name;
  refusal.title = title_of(context.scene.network, context.question);
  refusal.rig = context.rig.name;
  refusal.snow = snow_at_departure(context);
  refusal.snow_told_by = context.snow.told_by();
  refusal.depart = context.question.depart;
  refusal.utc_offset_minutes = context.scene.rules.utc_offset_minutes;
  refusal.allowed_share =
      passage::allowed_share_for(context.scene.rules, context.rig.driver_level).value_or(0.0);
  refusal.why = answer.why;
  for (const search::Obstacle& obstacle : answer.obstacles) {
    refusal.legs.push_back(refused_leg(obstacle, context));
  }
  return refusal;
}

std::string not_enough_fuel(const rig::Rig& rig, const passage::Rules& rules, units::Litres route) {
  return words::fuel_short({rig.load.fuel, route + rig.carrier.tank * rules.fuel_reserve});
}

std::string text_of(const Refusal& refusal, int columns) {
  Sheet sheet{columns};
  sheet.both_ends({"NO ROUTE", refusal.site});
  sheet.paragraph(refusal.title);
  sheet.rule('=');
  sheet.paragraph(refusal.why);
  sheet.labelled({0, 10, "Rig"}, refusal.rig);
  sheet.labelled({0, 10, "Leave"}, local_text(refusal.depart, refusal.utc_offset_minutes));
  sheet.labelled({0, 10, "Snow"}, refusal.snow + " at the start; " + refusal.snow_told_by);
  sheet.labelled({0, 10, "Allowed"}, allowed_text(refusal.allowed_share) + " of every limit");
  if (!refusal.legs.empty()) {
    sheet.heading("IN THE WAY, nearest to a way first");
  }
  for (const RefusedLeg& leg : refusal.legs) {
    write_leg(leg, sheet);
  }
  return sheet.text();
}

}  // namespace rimehaul::card
