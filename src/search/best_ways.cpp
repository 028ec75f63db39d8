#include "search/best_ways.h"

#include <utility>

namespace rimehaul::search {

namespace {

std::vector<bool> usable(const Prices& prices) {
  std::vector<bool> usable;
  usable.reserve(prices.size());
  for (const double price : prices) {
    usable.push_back(price < kBarred);
  }
  return usable;
}

std::vector<Node> ends_of(const LegGraph& legs) {
  std::vector<Node> ends = legs.starts;
  ends.insert(ends.end(), legs.goals.begin(), legs.goals.end());
  return ends;
}

}  // namespace

BestWays::BestWays(const LegGraph& legs, const Outlook& outlook, Preference prefer)
    : legs_{&legs}, outlook_{&outlook}, prefer_{prefer} {}

std::optional<Path> BestWays::way(Ends ends, Permission permission) {
  std::optional<Known>& known = known_.at(static_cast<std::size_t>(permission));
  if (!known.has_value() || known->judged != outlook_->judged()) {
    known.emplace(known_now(permission));
  }
  const auto [found, is_new] = known->ways.try_emplace(ends.goal);
  if (is_new) {
    found->second = ways_to(legs_->goals.at(ends.goal), *known);
  }
  return found->second.at(ends.start);
}

BestWays::Known BestWays::known_now(Permission permission) const {
  PricedSteps steps =
      priced_steps(*legs_, *outlook_, prefer_, {.permission = permission, .left_out = {}});
  Chains chains{legs_->graph, usable(steps.prices), ends_of(*legs_)};
  PricedSteps links{.prices = chains.fold(steps.prices, Combining::sum),
                    .shares = chains.fold(steps.shares, Combining::maximum)};
  return {.judged = outlook_->judged(),
          .steps = std::move(steps.prices),
          .chains = std::move(chains),
          .links = std::move(links),
          .ways = {}};
}

/// One tree for all starts from which the worst share need be no worse.
BestWays::FromAllStarts BestWays::ways_to(Node goal, const Known& known) const {
  std::map<double, std::vector<std::size_t>> starts_by_worst;
  const std::vector<double> worst = worst_shares(goal, known);
  for (std::size_t start = 0; start < worst.size(); ++start) {
    starts_by_worst[worst[start]].push_back(start);
  }
  FromAllStarts found(legs_->starts.size());
  if (prefer_ == Preference::safest) {
    starts_by_worst.erase(kBarred);  // no way at all
  }
  for (const auto& [worst_share, starts] : starts_by_worst) {
    const LinkPrices links = known.links.up_to(worst_share);
    const WaysTo ways = known.chains.ways_to(goal, links, Combining::sum);
    for (const std::size_t start : starts) {
      found[start] = known.chains.path_from(legs_->starts[start], ways, {links, known.steps});
    }
  }
  return found;
}

/// By start, the worst share that a way is to have at most: the least possible, or any.
std::vector<double> BestWays::worst_shares(Node goal, const Known& known) const {
  std::vector<double> worst(legs_->starts.size(), kBarred);
  if (prefer_ == Preference::safest) {
    const WaysTo ways = known.chains.ways_to(goal, known.links.shares, Combining::maximum);
    for (std::size_t start = 0; start < worst.size(); ++start) {
      worst[start] = known.chains.price_from(legs_->starts[start], ways);
    }
  }
  return worst;
}

}  // namespace rimehaul::search
