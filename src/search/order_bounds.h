// The least that is still to go of a round, wherever it stands.
#pragma once

#include <map>

#include "search/stop_order.h"

namespace rimehaul::search {

/// What no way to go on takes less of, from arriving at a stop to the end of the round: as of one
/// hop, of all that are left.
using StillToGo = HopAtBest;

/// Worked out backwards from the end, over every set of stops that have been called at and the last
/// of them, from the best of every hop whatever its hour. Each figure is the least by itself: no
/// order need have them all.
class OrderBounds {
 public:
  /// Holds references: both must outlive it.
  OrderBounds(Hops& hops, const OrderQuestion& question);

  /// From a stop, or where nothing has been called at from the start. Nothing: no order goes on
  /// from there to the end.
  [[nodiscard]] const std::optional<StillToGo>& still_to_go(StopSet called,
                                                            std::optional<std::size_t> at);

 private:
  [[nodiscard]] std::optional<StillToGo> worked_out(StopSet called, std::optional<std::size_t> at);

  Hops* hops_;
  const OrderQuestion* question_;
  std::int64_t halt_s_ = 0;
  std::map<std::pair<StopSet, std::optional<std::size_t>>, std::optional<StillToGo>> known_;
};

}  // namespace rimehaul::search
