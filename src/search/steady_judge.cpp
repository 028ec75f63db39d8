#include "search/steady_judge.h"

#include <algorithm>
#include <iterator>
#include <utility>

namespace rimehaul::search {

using passage::LegJudgement;
using passage::TurnJudgement;
using trails::LegId;
using units::Instant;
using units::Period;

namespace {

/// The spell that an entry lies in; the end where there is none.
template <class Spells>
auto spell_around(const Spells& spells, Instant entry) {
  auto after = spells.upper_bound(entry);
  if (after == spells.begin()) {
    return spells.end();
  }
  const auto before = std::prev(after);
  return entry < before->second.until ? before : spells.end();
}

/// The same, so much later or earlier.
LegJudgement moved(LegJudgement judged, std::int64_t seconds) {
  for (Instant& asked : judged.hours.asked) {
    asked.seconds += seconds;
  }
  return judged;
}

}  // namespace

SteadyJudge::SteadyJudge(const passage::LegJudge& judge, Period horizon)
    : judge_{&judge}, horizon_{horizon} {}

bool SteadyJudge::looks_at(Instant entry) const {
  return horizon_.from <= entry && entry <= horizon_.to;
}

passage::LegAtBest SteadyJudge::at_best(LegId leg) const {
  return judge_->at_best(leg);
}

LegJudgement SteadyJudge::judge(LegId leg, Instant entry) const {
  if (!looks_at(entry)) {
    return judge_->judge(leg, entry);
  }
  LegKnown& known =
      legs_.try_emplace(leg, LegKnown{.ahead = MomentsAhead{*judge_, leg, horizon_}}).first->second;
  if (const auto spell = spell_around(known.spells, entry); spell != known.spells.end()) {
    return moved(spell->second.judged, entry.seconds - spell->second.asked.seconds);
  }
  LegJudgement judged = judge_->judge(leg, entry);
  known.spells.emplace(
      known.ahead.first_entry(judged.hours, entry),
      Spell<LegJudgement>{
          .asked = entry, .until = known.ahead.next_entry(judged.hours, entry), .judged = judged});
  return judged;
}

// From and to, as the judge has them.
// NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
TurnJudgement SteadyJudge::judge_turn(LegId from, LegId to, Instant entry) const {
  if (!looks_at(entry)) {
    return judge_->judge_turn(from, to, entry);
  }
  const auto [place, is_new] = turns_.try_emplace({from, to});
  TurnKnown& known = place->second;
  if (is_new) {
    known.moments = judge_->turning_moments(from, to, horizon_);
  }
  if (const auto spell = spell_around(known.spells, entry); spell != known.spells.end()) {
    return spell->second.judged;
  }
  const auto turn = std::ranges::upper_bound(known.moments, entry);
  const Instant until = turn == known.moments.end() ? Instant{horizon_.to.seconds + 1} : *turn;
  const Instant first = turn == known.moments.begin() ? horizon_.from : *std::prev(turn);
  TurnJudgement judged = judge_->judge_turn(from, to, entry);
  known.spells.emplace(first,
                       Spell<TurnJudgement>{.asked = entry, .until = until, .judged = judged});
  return judged;
}

std::vector<Instant> SteadyJudge::turning_moments(LegId leg, Period during) const {
  return judge_->turning_moments(leg, during);
}

// NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
std::vector<Instant> SteadyJudge::turning_moments(LegId from, LegId to, Period during) const {
  return judge_->turning_moments(from, to, during);
}

}  // namespace rimehaul::search
