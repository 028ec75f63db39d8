#include "card/route_card.h"

#include <algorithm>
#include <cmath>
#include <cstdint>

#include "base/require.h"
#include "card/departure_lines.h"
#include "card/exposed.h"
#include "card/figures.h"
#include "card/help.h"
#include "card/notices.h"
#include "card/refusal.h"
#include "card/strap_stop.h"
#include "card/trace.h"
#include "card/triggers.h"
#include "card/words.h"
#include "passage/estimates.h"

namespace rimehaul::card {

namespace {

const trails::Leg& leg_of(const CardContext& context, const search::RouteLeg& part) {
  return context.scene.network.legs[static_cast<std::uint32_t>(part.leg)];
}

/// What binds: the leg itself or the turn into it, whichever is worse.
void set_binding(const search::RouteLeg& part, CardLeg& leg) {
  const passage::Finding& own = part.judgement.bind();
  const passage::Finding& turn = part.turn_into.binding;
  const bool turn_binds = passage::binds_before(turn, own);
  const passage::Finding& binding = turn_binds ? turn : own;
  const passage::CheckFacts& facts = passage::facts_of(binding.check);
  leg.binding_check = turn_binds ? "turn into the leg: " : "";
  leg.binding_check += facts.title;
  leg.binding_key = facts.key;
  leg.binding_share = binding.share.value_or(std::nan(""));
  if (turn_binds) {
    leg.binding_at = units::Metres{0};
  } else if (words::has_place(binding.check)) {
    leg.binding_at = binding.at;
  }
}

CardLeg make_leg(const search::RouteLeg& part, const CardContext& context) {
  const trails::Network& network = context.scene.network;
  const trails::Leg& drawn = leg_of(context, part);
  const passage::LegJudgement& judged = part.judgement;
  CardLeg leg;
  leg.trail = network.trails[drawn.trail].name;
  leg.span = drawn.span;
  leg.way = drawn.way;
  leg.from = name_of(network, drawn.from);
  leg.to = name_of(network, drawn.to);
  leg.entry = part.entry;
  leg.waits_before = part.waits_before;
  leg.start_bearing = drawn.line.segment_bearing(0);
  leg.length = judged.length;
  leg.climb = judged.climb;
  leg.drop = judged.drop;
  leg.up = judged.steepest_up;
  leg.down = judged.steepest_down;
  leg.across = judged.steepest_across;
  leg.verdict = judged.verdict;
  set_binding(part, leg);
  leg.speed = judged.slowest;
  leg.time = judged.time;
  leg.fuel = judged.fuel;
  leg.snow = judged.snow;
  leg.notices = notices_along(network, drawn);
  if (leg.waits_before > units::Seconds{0}) {
    const Wait wait{
        .station = leg.from, .until = leg.entry, .local_clock = context.scene.rules.local_clock};
    leg.notices.insert(leg.notices.begin(), {.words = wait_words(wait)});
  }
  return leg;
}

void add_legs(const search::Route& route, const CardContext& context, RouteCard& card) {
  const std::vector<WaysOut> ways = ways_out(context.scene.network, context.rig, route);
  const std::vector<std::vector<geo::Span>> exposed = exposed_spans(route, context.rig);
  for (std::size_t i = 0; i < route.legs.size(); ++i) {
    CardLeg leg = make_leg(route.legs[i], context);
    leg.number = static_cast<int>(i) + 1;
    leg.turn_round = ways[i].turn_round;
    leg.refuge = ways[i].refuge;
    leg.exposed = exposed[i];
    for (const geo::Span& span : leg.exposed) {
      add_notice(leg, {span, span == leg.exposed.front() ? words::exposed(metres_of(leg.exposed))
                                                         : words::exposed_too()});
    }
    card.climb += leg.climb;
    card.drop += leg.drop;
    card.legs.push_back(std::move(leg));
  }
  add_strap_stop(route, context, card.legs);
  card.length = route.length;
  card.time = route.time;
  card.waits = route.waits;
  card.fuel = route.fuel;
}

/// A decision, and the legs that it lets be driven.
struct Decision {
  std::string words;
  std::vector<int> legs;
};

/// Every decision that the route rests on, once. Legs that rest on one are restricted, also where
/// only the turn into them does.
std::vector<Decision> decisions_in(const search::Route& route, std::vector<CardLeg>& legs) {
  std::vector<Decision> decisions;
  for (std::size_t i = 0; i < legs.size(); ++i) {
    const passage::LegJudgement& judged = route.legs[i].judgement;
    const auto add = [&](const passage::Finding& finding) {
      if (passage::stand_of(finding, judged.allowed_share) != passage::Stand::asks) {
        return;
      }
      legs[i].verdict = std::max(legs[i].verdict, passage::Verdict::restricted);
      auto known = std::ranges::find(decisions, finding.asks, &Decision::words);
      if (known == decisions.end()) {
        known = decisions.insert(known, {finding.asks, {}});
      }
      if (known->legs.empty() || known->legs.back() != legs[i].number) {
        known->legs.push_back(legs[i].number);
      }
    };
    std::ranges::for_each(judged.findings, add);
    add(route.legs[i].turn_into.binding);
  }
  return decisions;
}

void add_decisions(const search::Route& route, const CardContext& context, RouteCard& card) {
  card.verdict = passage::Verdict::open;
  for (const Decision& decision : decisions_in(route, card.legs)) {
    card.verdict = passage::Verdict::restricted;
    card.permitted_by = context.question.permitted_by;
    card.permitted.push_back(words::legs(decision.legs) + ": " + decision.words);
  }
}

void add_rig(const CardContext& context, RouteCard& card) {
  const rig::Rig& rig = context.rig;
  const rig::Weighed weighed = rig::weigh(rig);
  card.rig = rig.name;
  card.carrier = rig.carrier.name;
  card.trailer = rig.trailer ? rig.trailer->name : "";
  card.trailer_braked = rig.trailer && rig.trailer->brake_force > units::Newtons{0};
  card.driver_level = rig.driver_level;
  card.load = rig.load;
  card.total_mass = weighed.total();
  card.tongue_mass = weighed.tongue_mass;
}

void add_lists(const search::Route& route, const CardContext& context, RouteCard& card) {
  card.fuel_reserve = fuel_reserve(context);
  card.fuel_warnings = fuel_warnings(route, context);
  card.turn_back_triggers = turn_back_triggers(route, context);
  card.radio = radio_lines(route, context);
  card.people = people_lines(context);
  card.help = help_lines(route, context);
  card.pre_start_checks = words::pre_start_checks(context.rig);
  card.parking_steps = words::parking_steps(context.rig);
  card.cautions = words::cautions();
  card.cautions.emplace_back(words::creep_round_turns());
  card.estimates = passage::estimates_in(
      {.rules = context.scene.rules, .towing = passage::towing_of(context.rig), .snow = card.snow});
  card.heights_notes = context.heights_notes;
  card.issue = context.issue;
  card.orders = context.orders;
  card.places_rewalked = context.places_rewalked;
  card.trace = trace_of(route, context.scene);
}

}  // namespace

RouteCard make_card(const search::Route& route, const CardContext& context) {
  base::require(!route.legs.empty(), "a route card needs a leg");
  base::require(context.question.stations.size() >= 2, "a route card needs two stations");
  RouteCard card;
  card.site = context.scene.site_name;
  card.map_frame = context.scene.frame.horizontal_name;
  card.vertical_datum = context.scene.frame.vertical_name;
  card.title = title_of(context.scene.network, context.question);
  card.prefer = context.question.prefer;
  card.made_from = context.made_from;
  card.depart = context.question.depart;
  card.departures = context.departures;
  card.arrive = units::after(context.question.depart, route.time);
  card.local_clock = context.scene.rules.local_clock;
  card.snow = snow_on(route);
  card.snow_told_by = context.snow.told_by();
  card.snow_valid_until = context.snow_valid_until;
  card.weather = context.snow.weather();
  card.allowed_share = route.legs.front().judgement.allowed_share;
  card.worst_share = route.worst_share;
  card.confidence_k = context.scene.rules.confidence_k;
  add_rig(context, card);
  add_legs(route, context, card);
  add_decisions(route, context, card);
  add_lists(route, context, card);
  return card;
}

}  // namespace rimehaul::card
