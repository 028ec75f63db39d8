#include "search/route_search.h"

#include <algorithm>
#include <utility>

#include "passage/share_penalty.h"

namespace rimehaul::search {

using trails::LegId;

namespace {

double price_of_share(const LegFacts& /*leg*/, double share) {
  return share;
}
double price_of_safety(const LegFacts& leg, double share) {
  return leg.time_s * passage::share_penalty(share, leg.allowed_share);
}
double price_of_time(const LegFacts& leg, double /*share*/) {
  return leg.time_s;
}
double price_of_fuel(const LegFacts& leg, double /*share*/) {
  return leg.fuel_l;
}

/// The same ground, whichever way it is driven.
std::uint32_t stretch_of(LegId leg) {
  return static_cast<std::uint32_t>(leg) / 2;
}

}  // namespace

RouteSearch::RouteSearch(const trails::Network& network, const passage::LegJudge& judge,
                         Outlook& outlook, const RouteQuestion& question,
                         std::span<const trails::JunctionId> stops)
    : network_{&network},
      outlook_{&outlook},
      question_{question},
      legs_{make_leg_graph(network, stops, outlook.turns())},
      timekeeper_{judge, question.depart} {}

Prices RouteSearch::prices_by(double (*price)(const LegFacts&, double share),
                              double worst_share) const {
  Prices prices;
  prices.reserve(legs_.steps.size());
  for (const Step& step : legs_.steps) {
    if (!step.leg.has_value()) {
      prices.push_back(0.0);
      continue;
    }
    const LegFacts& leg = outlook_->leg(*step.leg);
    const TurnFacts turn = outlook_->turn_into(step);
    const double share = std::max(leg.share, turn.share);
    const bool usable = may_drive(leg, permission_) && may_turn(turn, leg, permission_) &&
                        share <= worst_share && !left_out_.contains(*step.leg);
    prices.push_back(usable ? price(leg, share) : kBarred);
  }
  return prices;
}

double RouteSearch::least_worst_share() const {
  const Reach reach = legs_.graph.reach_from(legs_.journey.from, prices_by(price_of_share, kBarred),
                                             Combining::maximum);
  return reach.price[index_of(legs_.journey.to)];
}

Prices RouteSearch::prices() const {
  return prices(question_.prefer == Preference::safest ? least_worst_share() : kBarred);
}

Prices RouteSearch::prices(double worst_share) const {
  switch (question_.prefer) {
    case Preference::safest:
      return prices_by(price_of_safety, worst_share);
    case Preference::quickest:
      return prices_by(price_of_time, worst_share);
    case Preference::least_fuel:
      return prices_by(price_of_fuel, worst_share);
  }
  return prices_by(price_of_safety, worst_share);
}

RouteSearch::Way RouteSearch::way_of(const Path& path) const {
  Way way{.legs = legs_of(legs_, path)};
  std::set<std::pair<std::size_t, trails::JunctionId>> passed;
  for (const ArcIndex arc : path.arcs) {
    const Step& step = legs_.steps[arc];
    if (!step.leg.has_value()) {
      continue;
    }
    const trails::Leg& leg = network_->legs[static_cast<std::size_t>(*step.leg)];
    const std::size_t stage = legs_.stage_of(legs_.graph.arcs()[arc].to);
    if (passed.empty()) {
      passed.emplace(stage, leg.from);
    }
    way.returns += passed.emplace(stage, leg.to).second ? 0 : 1;
  }
  return way;
}

bool RouteSearch::truly_differs(const Way& way) const {
  const auto length_of = [&](LegId leg) {
    return network_->legs[static_cast<std::size_t>(leg)].line.length().value();
  };
  if (!kept_ways_.empty() && way.returns > kept_ways_.front().returns) {
    return false;
  }
  std::set<std::uint32_t> own;
  for (const LegId leg : way.legs) {
    own.insert(stretch_of(leg));
  }
  return std::ranges::all_of(kept_ways_, [&](const Way& better) {
    std::set<std::uint32_t> known;
    for (const LegId leg : better.legs) {
      known.insert(stretch_of(leg));
    }
    if (std::ranges::includes(own, known)) {
      return false;  // the better one, and something besides
    }
    double all = 0.0;
    double shared = 0.0;
    for (const LegId leg : way.legs) {
      all += length_of(leg);
      shared += known.contains(stretch_of(leg)) ? length_of(leg) : 0.0;
    }
    return shared <= kMostShared * all;
  });
}

void RouteSearch::keep_from(Prices prices) {
  Candidates candidates{legs_.graph, std::move(prices), legs_.journey};
  int timed = 0;
  while (!has_enough() && timed < kMostTimed) {
    const std::optional<Path> path = candidates.next();
    if (!path.has_value()) {
      return;
    }
    Way way = way_of(*path);
    if (!truly_differs(way)) {
      continue;
    }
    ++timed;
    auto driven = timekeeper_.drive(way.legs, permission_);
    if (auto* route = std::get_if<Route>(&driven)) {
      kept_.push_back(std::move(*route));
      kept_ways_.push_back(std::move(way));
    } else {
      blocked_.push_back(std::get<Blocked>(driven));
    }
  }
}

std::vector<Route> RouteSearch::routes() {
  search_with(Permission::nobody);
  if (!has_enough() && permission_of(question_) == Permission::named_person) {
    search_with(Permission::named_person);
  }
  return std::move(kept_);
}

void RouteSearch::search_with(Permission permission) {
  permission_ = permission;
  left_out_.clear();
  blocked_.clear();
  if (question_.most_alternatives == 0 && settled_by_best_alone()) {
    return;
  }
  outlook_->judge_all();
  search_all();
}

/// Whether there is no way at the departure, or the best of them is kept, as its hours keep it
/// open.
bool RouteSearch::settled_by_best_alone() {
  const auto best = cheapest_judged(legs_, *outlook_, [this] { return prices(); });
  if (!best.has_value()) {
    return true;
  }
  auto driven = timekeeper_.drive(legs_of(legs_, *best), permission_);
  if (auto* route = std::get_if<Route>(&driven)) {
    kept_.push_back(std::move(*route));
    return true;
  }
  return false;
}

void RouteSearch::search_all() {
  const bool has_better = !kept_.empty();
  for (int round = 0; round < kMostRounds && kept_.empty(); ++round) {
    const std::size_t known_blocked = blocked_.size();
    keep_from(prices());
    if (blocked_.size() == known_blocked) {
      break;
    }
    if (kept_.empty()) {
      for (std::size_t i = known_blocked; i < blocked_.size(); ++i) {
        left_out_.insert(blocked_[i].leg);
      }
    }
  }
  if (has_better || (question_.prefer == Preference::safest && !kept_.empty())) {
    keep_from(prices(kBarred));
  }
}

}  // namespace rimehaul::search
