// Which states a search has reached, and by which move and turn: a quarter of a byte a state.
#pragma once

#include <array>
#include <cstdint>
#include <span>
#include <vector>

#include "crossing/move_prices.h"

namespace rimehaul::crossing {

/// A way over a lattice: every state the rig leaves on it, and the one it ends in.
struct Way {
  std::vector<State> states;  ///< at least one
  std::uint64_t price = 0;    ///< ticks; the sum over all states but the last

  friend bool operator==(const Way&, const Way&) = default;
};

/// The tree of ways from a set of starts. A search that works off the ends of moves in the order of
/// their prices reaches every state at its least price the first time that it reaches it at all, as
/// all the turns out of one end cost the same: nothing. So no prices need to be kept.
class SearchTree {
 public:
  /// Holds a reference: the prices must outlive it. Requires sound prices, starts of the lattice.
  SearchTree(const MovePrices& prices, std::span<const State> starts);

  [[nodiscard]] const MovePrices& prices() const { return *prices_; }
  /// The numbers of the start states, from the lowest, each once.
  [[nodiscard]] std::span<const std::uint32_t> starts() const { return starts_; }
  [[nodiscard]] bool reached(std::uint32_t state) const {
    return (marks_[state / kHeadings] >> (state % kHeadings * 2) & 3U) != 0;
  }
  /// The way from a start to a state that was reached.
  [[nodiscard]] Way way_to(std::uint32_t state) const;

  /// The cell in which a state's move ends. Requires a move that is not barred.
  [[nodiscard]] std::uint32_t end_of(std::uint32_t state) const {
    return state / kHeadings + offsets_[state % kHeadings];
  }
  /// Tells the processor that the move of this state ends next but a few.
  void foresee(std::uint32_t state) const {
    const std::uint32_t cell = end_of(state);
    __builtin_prefetch(&marks_[cell], 1);
    __builtin_prefetch(&prices_->turns[cell]);
    __builtin_prefetch(&prices_->price[std::size_t{cell} * kHeadings]);
  }
  /// A state's move has come to its end: calls `on_new` with each state that is reached by it
  /// first.
  template <class OnNew>
  void arrive(std::uint32_t state, const OnNew& on_new) {
    const std::uint32_t heading = state % kHeadings;
    const std::uint32_t cell = end_of(state);
    const std::uint32_t turns = prices_->turns[cell];
    const std::uint32_t before = marks_[cell];
    std::uint32_t marks = before;
    for (std::uint32_t turn = kLeft; turn <= kRight; ++turn) {
      const std::uint32_t next = (heading + turn - kStraight) % kHeadings;
      const std::uint32_t bit = turn == kRight ? heading : next;
      const bool allowed = turn == kStraight || (turns >> bit & 1U) != 0;
      if (allowed && (before >> (next * 2) & 3U) == 0) {
        marks |= turn << (next * 2);
        on_new(cell * kHeadings + next);
      }
    }
    marks_[cell] = marks;
  }

 private:
  // How a state was reached: by which turn at the end of the move before. 0 is not at all.
  static constexpr std::uint32_t kLeft = 1;
  static constexpr std::uint32_t kStraight = 2;  ///< a start is marked so too
  static constexpr std::uint32_t kRight = 3;

  const MovePrices* prices_;
  std::array<std::uint32_t, kHeadings> offsets_;
  std::vector<std::uint32_t> starts_;
  std::vector<std::uint32_t> marks_;  ///< by cell, two bits a heading
};

}  // namespace rimehaul::crossing
