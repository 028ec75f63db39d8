// What is found of legs and turns by the hour of entry: pieces of time over which it stays.
#pragma once

#include <map>
#include <span>

#include "search/usable.h"
#include "units/time_spans.h"

namespace rimehaul::search {

/// Hours of entry, both ends included, for which one judgement holds.
struct LegPiece {
  units::Period entries;
  LegFacts facts;
};
struct TurnPiece {
  units::Period entries;
  TurnFacts facts;
};

/// Judges legs and turns through the hours, each when it is first asked for, and remembers them. A
/// leg is judged once for each stretch of entries that no turning moment separates, neither on
/// entering nor at any later hour that it was asked for (LegJudge::turning_moments).
class LegHours {
 public:
  /// Holds a reference: the judge must outlive it.
  LegHours(const passage::LegJudge& judge, units::Period horizon);

  /// In order, without gaps, over the whole horizon; neighbours differ.
  [[nodiscard]] std::span<const LegPiece> of(trails::LegId leg);
  [[nodiscard]] std::span<const TurnPiece> of(Turn turn);

  [[nodiscard]] units::Period horizon() const { return horizon_; }
  [[nodiscard]] const passage::LegJudge& judge() const { return *judge_; }
  /// How often a leg or a turn has been judged so far.
  [[nodiscard]] std::size_t judged() const { return judged_; }

 private:
  const passage::LegJudge* judge_;
  units::Period horizon_;
  std::map<trails::LegId, std::vector<LegPiece>> legs_;
  std::map<Turn, std::vector<TurnPiece>> turns_;
  std::size_t judged_ = 0;
};

}  // namespace rimehaul::search
