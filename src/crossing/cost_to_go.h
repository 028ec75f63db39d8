// What is still to pay at the least from each cell to a goal, were the rig free to turn anywhere.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "crossing/move_prices.h"

namespace rimehaul::crossing {

/// The relaxed problem searched backward from all goals at once: every cell allows every turn, on
/// the spot. What it asks for is never more than what the rig must pay, and falls by no more than
/// its price over any move: an admissible and consistent heuristic (Hart, Nilsson and Raphael
/// 1968). Serves every start to these goals. Takes four bytes a cell beside the prices.
class CostToGo {
 public:
  /// Holds a reference: the prices must outlive it. Requires sound prices, goals of the lattice,
  /// and that no way of least price costs 2^32 - 1 ticks or more (OurFault otherwise).
  CostToGo(const MovePrices& prices, std::span<const State> goals);

  [[nodiscard]] const MovePrices& prices() const { return *prices_; }
  /// Ticks from any state of a cell to the nearest goal cell, at the least; nothing if even a rig
  /// that turns on the spot has no way. Requires a cell of the lattice.
  [[nodiscard]] std::optional<std::uint32_t> from(Cell cell) const;

  /// By number of cell; kNoWay where there is none.
  [[nodiscard]] std::span<const std::uint32_t> by_cell() const { return ticks_; }
  static constexpr std::uint32_t kNoWay = 0xffffffff;
  /// Whether a state, by its number, is one of the goals.
  [[nodiscard]] bool is_goal(std::uint32_t state) const;

 private:
  const MovePrices* prices_;
  std::vector<std::uint32_t> goals_;  ///< by number of state, from the lowest
  std::vector<std::uint32_t> ticks_;
};

}  // namespace rimehaul::crossing
