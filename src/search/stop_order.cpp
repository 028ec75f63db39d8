#include "search/stop_order.h"

#include <algorithm>
#include <tuple>

#include "base/require.h"
#include "search/order_search.h"

namespace rimehaul::search {

namespace {

std::tuple<double, double, double> in_order_of(Preference prefer, const OrderWorth& worth) {
  const auto hour = static_cast<double>(worth.arrives.seconds);
  switch (prefer) {
    case Preference::quickest:
      return {hour, worth.worst_share, worth.fuel.value()};
    case Preference::least_fuel:
      return {worth.fuel.value(), hour, worth.worst_share};
    case Preference::safest:
      break;
  }
  return {worth.worst_share, hour, worth.fuel.value()};
}

OrderWorth worth_of(const StopOrder& order, const OrderQuestion& question) {
  OrderWorth worth{.arrives = question.depart};
  for (const HopDriven& hop : order.hops) {
    worth.needs_permission = worth.needs_permission || hop.needs_permission;
    worth.worst_share = std::max(worth.worst_share, hop.worst_share);
    worth.arrives = hop.arrives;
    worth.fuel = worth.fuel + hop.fuel;
  }
  return worth;
}

}  // namespace

bool OrderWorth::is_as_good_as(const OrderWorth& other) const {
  return (other.needs_permission || !needs_permission) && worst_share <= other.worst_share &&
         arrives <= other.arrives && fuel <= other.fuel;
}

bool OrderWorth::is_better_than(const OrderWorth& other, Preference prefer) const {
  if (needs_permission != other.needs_permission) {
    return other.needs_permission;
  }
  return in_order_of(prefer, *this) < in_order_of(prefer, other);
}

bool may_be_next(const OrderQuestion& question, std::size_t stop, StopSet called) {
  return (called & bit_of(stop)) == 0 && (question.after[stop] & ~called) == 0;
}

std::variant<StopOrder, NoOrder> best_order(Hops& hops, const OrderQuestion& question) {
  base::require(question.after.size() <= kMostStops, "a round has more stops than can be ordered");
  OrderSearch search{hops, question};
  std::optional<StopOrder> best = search.best();
  const std::optional<units::Instant> last_turn = hops.last_turn();
  if (!last_turn.has_value()) {
    return best.has_value() ? std::variant<StopOrder, NoOrder>{*best} : NoOrder{search.farthest()};
  }
  OrderBounds bounds{hops, question};
  const ToBeat to_beat{
      .found = best.has_value() ? std::optional{worth_of(*best, question)} : std::nullopt,
      .bounds = bounds,
      .last_turn = *last_turn,
      .most_hops = kMostProving};
  OrderSearch proof{hops, question, to_beat};
  if (std::optional<StopOrder> better = proof.best(); better.has_value()) {
    best = std::move(better);
  }
  if (best.has_value()) {
    best->not_ruled_out = proof.given_up();
    return *best;
  }
  NoOrder none{search.farthest()};
  if (StopOrder farther = proof.farthest(); farther.stops.size() > none.farthest.stops.size()) {
    none.farthest = std::move(farther);
  }
  none.farthest.not_ruled_out = proof.given_up();
  return none;
}

}  // namespace rimehaul::search
