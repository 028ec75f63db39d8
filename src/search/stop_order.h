// The best order in which a round calls at its stops, by exact search over which have been called
// at.
#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <span>
#include <variant>
#include <vector>

#include "search/route.h"

namespace rimehaul::search {

/// A set of stops, one bit each, by their number.
using StopSet = std::uint32_t;
inline constexpr std::size_t kMostStops = 10;

/// From one stop to the next, with what is aboard once some have been called at.
struct Hop {
  StopSet called = 0;               ///< before it
  std::optional<std::size_t> from;  ///< nothing: where the round starts
  std::optional<std::size_t> to;    ///< nothing: where it ends

  auto operator<=>(const Hop&) const = default;
};

/// How a hop is driven when the rig is ready for it.
struct HopDriven {
  units::Instant departs;  ///< when it is ready, or later where no way is open before
  units::Instant arrives;
  double worst_share = 0.0;
  bool needs_permission = false;
  units::Litres fuel;
};

/// A hop and the hour at which the rig is ready for it.
struct HopAsked {
  Hop hop;
  units::Instant ready;

  auto operator<=>(const HopAsked&) const = default;
};

/// Who knows how hops are driven; tests bring their own.
class Hops {
 public:
  virtual ~Hops() = default;
  /// Told of many hops before any of them is asked for, so that whoever can finds them side by
  /// side.
  virtual void expect(std::span<const HopAsked> /*next*/) {}
  /// Nothing where there is no way.
  [[nodiscard]] virtual std::optional<HopDriven> driven(const Hop& hop, units::Instant ready) = 0;
};

struct OrderQuestion {
  std::vector<StopSet> after;    ///< by stop: those that must be called at before it; 10 at most
  bool comes_to_an_end = false;  ///< that the round drives to after its last stop
  units::Instant depart;
  units::Seconds halt{0};  ///< 0 or more: at every stop, before it is left
  Preference prefer = Preference::safest;
  units::Litres fuel;  ///< that may be used
};

/// Stops in the order in which they are called at, and the hop to each of them; to the end at last.
struct StopOrder {
  std::vector<std::size_t> stops;
  std::vector<HopDriven> hops;
};

/// No order holds. Those that call at the most stops, and of these the best.
struct NoOrder {
  StopOrder farthest;
};

/// Of all orders the best: first one that waits for no decision; then, safest: the least worst
/// share, then the earliest end; quickest: the earliest end; least fuel: the least fuel, then the
/// earliest end.
///
/// By dynamic programming over the set of stops called at and the last of them (Held and Karp 1962,
/// J. SIAM 10:196-210), with every label kept that no other is as good as in decision, share, hour
/// and fuel. Exact where a hop that is begun later ends later, no milder and for no less fuel, as
/// in snow that does not turn during the round; where it turns, an order may be missed that
/// profits from having come later. Throws OurFault where there are more stops than may be.
[[nodiscard]] std::variant<StopOrder, NoOrder> best_order(Hops& hops,
                                                          const OrderQuestion& question);

}  // namespace rimehaul::search
