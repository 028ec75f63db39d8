// What the search remembers of a judged leg or turn, and whether that may be driven.
#pragma once

#include <string>
#include <vector>

#include "passage/judge.h"

namespace rimehaul::search {

/// Whether a named person permits what the rules leave to a decision.
enum class Permission { nobody, named_person };

/// The wrong way of a trail, outside its hours, against an order, a single lane, ground that is
/// forbidden or has no heights: no other load, trailer or snow opens that.
[[nodiscard]] bool bars(const passage::Finding& finding);

/// A judged leg in a few numbers: a network has many legs and a judgement is large.
struct LegFacts {
  passage::Verdict verdict = passage::Verdict::closed;
  double share = 0.0;  ///< largest of its findings; NaN: unknown
  double allowed_share = 0.0;
  double time_s = 0.0;
  double fuel_l = 0.0;
  bool barred = false;  ///< by some finding
  /// Closed for want of words about the day alone: nothing that is known stands against it.
  bool untold = false;
};

/// From the end of one leg into the start of another.
struct Turn {
  trails::LegId from{};
  trails::LegId to{};

  friend auto operator<=>(const Turn&, const Turn&) = default;
};

struct TurnFacts {
  passage::Verdict verdict = passage::Verdict::closed;
  double share = 0.0;  ///< NaN: unknown
};

[[nodiscard]] LegFacts facts_of(const passage::LegJudgement& judgement);
[[nodiscard]] TurnFacts facts_of(const passage::TurnJudgement& judgement);

/// Whether all is the same; what is no number is the same as what is none.
[[nodiscard]] bool are_same(const LegFacts& a, const LegFacts& b);
[[nodiscard]] bool are_same(const TurnFacts& a, const TurnFacts& b);

/// Passes only what is proven: open, or restricted and permitted; share known and at or under the
/// allowed one; a time above 0 and a fuel of 0 or more, both finite.
[[nodiscard]] bool may_drive(const LegFacts& leg, Permission permission);
/// The same of a turn; its share is held against what is allowed on the leg it leads into.
[[nodiscard]] bool may_turn(const TurnFacts& turn, const LegFacts& into, Permission permission);

/// Why a leg that may not be driven may not: what asks for a decision, else what binds. A leg that
/// every check passes and whose time or fuel is unknown lacks heights.
[[nodiscard]] passage::Finding blocking_finding(const passage::LegJudgement& judgement);
/// The decisions that a restricted leg waits for, "; " between them; empty for any other.
[[nodiscard]] std::string decisions_for(const passage::LegJudgement& judgement);

/// Every turn between legs that meet, sorted.
[[nodiscard]] std::vector<Turn> turns_of(const trails::Network& network);

}  // namespace rimehaul::search
