#include "search/order_bounds.h"

#include <algorithm>
#include <cmath>

namespace rimehaul::search {

namespace {

/// Either way round.
// NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
StillToGo first_then(const HopAtBest& hop, const StillToGo& rest) {
  return {.worst_share = std::max(hop.worst_share, rest.worst_share),
          .needs_permission = hop.needs_permission || rest.needs_permission,
          .lasts_s = hop.lasts_s + rest.lasts_s,
          .fuel = hop.fuel + rest.fuel};
}

/// Figure by figure; which comes first does not matter.
// NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
StillToGo least_of(const StillToGo& a, const StillToGo& b) {
  return {.worst_share = std::min(a.worst_share, b.worst_share),
          .needs_permission = a.needs_permission && b.needs_permission,
          .lasts_s = std::min(a.lasts_s, b.lasts_s),
          .fuel = std::min(a.fuel, b.fuel)};
}

}  // namespace

OrderBounds::OrderBounds(Hops& hops, const OrderQuestion& question)
    : hops_{&hops},
      question_{&question},
      halt_s_{static_cast<std::int64_t>(std::floor(question.halt.value()))} {}

const std::optional<StillToGo>& OrderBounds::still_to_go(StopSet called,
                                                         std::optional<std::size_t> at) {
  const auto known = known_.find({called, at});
  if (known != known_.end()) {
    return known->second;
  }
  return known_.emplace(std::pair{called, at}, worked_out(called, at)).first->second;
}

std::optional<StillToGo> OrderBounds::worked_out(StopSet called, std::optional<std::size_t> at) {
  const std::size_t stops = question_->after.size();
  const bool all_called = called == (StopSet{1} << stops) - 1;
  if (all_called && !question_->comes_to_an_end) {
    return StillToGo{};
  }
  std::optional<StillToGo> least;
  const auto go_over = [&](std::optional<std::size_t> to, const std::optional<StillToGo>& rest) {
    const auto hop = rest.has_value() ? hops_->at_best({called, at, to}) : std::nullopt;
    if (hop.has_value()) {
      const StillToGo way = first_then(*hop, *rest);
      least = least.has_value() ? least_of(*least, way) : way;
    }
  };
  if (all_called) {
    go_over(std::nullopt, StillToGo{});
  }
  for (std::size_t stop = 0; stop < stops; ++stop) {
    if (may_be_next(*question_, stop, called)) {
      go_over(stop, still_to_go(called | bit_of(stop), stop));
    }
  }
  if (least.has_value() && at.has_value()) {
    least->lasts_s += halt_s_;
  }
  return least;
}

}  // namespace rimehaul::search
