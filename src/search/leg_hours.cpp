#include "search/leg_hours.h"

#include <algorithm>

#include "search/moments_ahead.h"

namespace rimehaul::search {

using trails::LegId;
using units::Instant;
using units::Period;

namespace {

/// Adds a piece, or makes the last one longer where nothing is found otherwise.
template <class Piece>
void add_piece(std::vector<Piece>& pieces, Piece piece) {
  if (!pieces.empty() && are_same(pieces.back().facts, piece.facts)) {
    pieces.back().entries.to = piece.entries.to;
  } else {
    pieces.push_back(piece);
  }
}

}  // namespace

LegHours::LegHours(const passage::LegJudge& judge, Period horizon)
    : judge_{&judge}, horizon_{horizon} {}

std::span<const LegPiece> LegHours::of(LegId leg) {
  const auto [known, is_new] = legs_.try_emplace(leg);
  if (is_new) {
    MomentsAhead ahead{*judge_, leg, horizon_};
    for (Instant entry = horizon_.from; entry <= horizon_.to;) {
      const passage::LegJudgement judged = judge_->judge(leg, entry);
      const Instant next = ahead.next_entry(judged.hours, entry);
      add_piece(known->second,
                LegPiece{.entries = {entry, {next.seconds - 1}}, .facts = facts_of(judged)});
      entry = next;
      ++judged_;
    }
  }
  return known->second;
}

std::span<const TurnPiece> LegHours::of(Turn turn) {
  const auto [known, is_new] = turns_.try_emplace(turn);
  if (is_new) {
    std::vector<Instant> starts = judge_->turning_moments(turn.from, turn.to, horizon_);
    starts.insert(starts.begin(), horizon_.from);
    for (std::size_t i = 0; i < starts.size(); ++i) {
      const Instant end = i + 1 < starts.size() ? Instant{starts[i + 1].seconds - 1} : horizon_.to;
      add_piece(known->second,
                TurnPiece{.entries = {starts[i], end},
                          .facts = facts_of(judge_->judge_turn(turn.from, turn.to, starts[i]))});
      ++judged_;
    }
  }
  return known->second;
}

}  // namespace rimehaul::search
