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

/// No way of a hop, whatever its hour, takes less of any of these; each by itself.
struct HopAtBest {
  double worst_share = 0.0;
  bool needs_permission = false;
  std::int64_t lasts_s = 0;
  units::Litres fuel{0};
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
  /// From when on hops are driven alike whenever the rig is ready, but for ending later; nothing:
  /// they always are. Asked once hops have been driven.
  [[nodiscard]] virtual std::optional<units::Instant> last_turn() const = 0;
  /// Nothing where there is no way at any hour. Asked only where the hour matters.
  [[nodiscard]] virtual std::optional<HopAtBest> at_best(const Hop& hop) = 0;
};

struct OrderQuestion {
  std::vector<StopSet> after;    ///< by stop: those that must be called at before it; 10 at most
  bool comes_to_an_end = false;  ///< that the round drives to after its last stop
  units::Instant depart;
  units::Seconds halt{0};  ///< 0 or more: at every stop, before it is left
  Preference prefer = Preference::safest;
  units::Litres fuel;  ///< that may be used
};

[[nodiscard]] constexpr StopSet bit_of(std::size_t stop) {
  return StopSet{1} << stop;
}

/// Whether a stop may be called at once others have been.
[[nodiscard]] bool may_be_next(const OrderQuestion& question, std::size_t stop, StopSet called);

/// What an order comes to, or part of one.
struct OrderWorth {
  bool needs_permission = false;
  double worst_share = 0.0;
  units::Instant arrives;
  units::Litres fuel{0};

  /// In all four.
  [[nodiscard]] bool is_as_good_as(const OrderWorth& other) const;
  /// First one that waits for no decision; then, safest: the least worst share, then the earliest
  /// end; quickest: the earliest end; least fuel: the least fuel, then the earliest end.
  [[nodiscard]] bool is_better_than(const OrderWorth& other, Preference prefer) const;
};

/// Stops in the order in which they are called at, and the hop to each of them; to the end at last.
struct StopOrder {
  std::vector<std::size_t> stops;
  std::vector<HopDriven> hops;
  /// What other orders may come to that were not followed to their end, at best and figure by
  /// figure; nothing: all of them are known to come to no better.
  std::optional<OrderWorth> not_ruled_out{};
};

/// No order was found to hold. One that calls at as many stops as any that was followed, and of
/// these the best; whether some that were not followed may hold, as above.
struct NoOrder {
  StopOrder farthest;
};

/// How often hops are driven, after the first search, to prove that its order is the best.
inline constexpr std::size_t kMostProving = 4'000;

/// The best order of all (OrderWorth::is_better_than); the rig leaves a stop as soon as it is
/// ready and a way is open.
///
/// By dynamic programming over the set of stops called at and the last of them (Held and Karp 1962,
/// J. SIAM 10:196-210), with every label kept that no other is as good as in decision, share, hour
/// and fuel. That is exact where no hop depends on the hour. Where one does, having come later may
/// turn out for the better, so the orders are searched once more: labels of different hours before
/// the last turn are kept beside each other, and those alone are left off which cannot come to
/// better than what was found, by the least that is still to go (order_bounds.h). Where that takes
/// more than kMostProving hops, it is told what is not ruled out. Throws OurFault where there are
/// more stops than may be.
[[nodiscard]] std::variant<StopOrder, NoOrder> best_order(Hops& hops,
                                                          const OrderQuestion& question);

}  // namespace rimehaul::search
