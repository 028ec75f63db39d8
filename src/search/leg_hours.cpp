#include "search/leg_hours.h"

#include <algorithm>
#include <cmath>

namespace rimehaul::search {

using trails::LegId;
using units::Instant;
using units::Period;

namespace {

/// How long after the hour of entry anything was asked for.
std::vector<std::int64_t> hours_asked(const passage::HoursOnLeg& hours, Instant entry) {
  std::vector<std::int64_t> later{0};
  for (const Instant asked : hours.asked) {
    later.push_back(asked.seconds - entry.seconds);
  }
  if (hours.staying.has_value() && std::isfinite(hours.staying->value())) {
    later.push_back(units::after(entry, *hours.staying).seconds - entry.seconds);
  }
  return later;
}

/// The turning moments of one leg, asked for as far ahead as they are needed.
class MomentsAhead {
 public:
  MomentsAhead(const passage::LegJudge& judge, LegId leg, Period horizon)
      : judge_{judge}, leg_{leg}, horizon_{horizon} {
    look_until(horizon_.to);
  }

  /// The first entry of the horizon later than this one for which one of the hours asked has come
  /// to or past a turning moment; the end of the horizon, and a second, where there is none.
  [[nodiscard]] Instant next_entry(Instant entry, const std::vector<std::int64_t>& hours) {
    Instant next{horizon_.to.seconds + 1};
    for (const std::int64_t later : hours) {
      look_until({horizon_.to.seconds + later});
      const auto turn = std::ranges::upper_bound(moments_, Instant{entry.seconds + later});
      if (turn != moments_.end()) {
        next = std::min(next, Instant{turn->seconds - later});
      }
    }
    return next;
  }

 private:
  void look_until(Instant until) {
    if (looked_until_ < until) {
      looked_until_ = until;
      moments_ = judge_.turning_moments(leg_, {horizon_.from, until});
    }
  }

  const passage::LegJudge& judge_;
  LegId leg_;
  Period horizon_;
  Instant looked_until_{horizon_.from};
  std::vector<Instant> moments_;
};

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
      const Instant next = ahead.next_entry(entry, hours_asked(judged.hours, entry));
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
