#include "day/remembering_judge.h"

#include "passage/stretch_judge.h"

namespace rimehaul::day {

using trails::LegId;

RememberingJudge::RememberingJudge(const passage::Judge& judge, GroundMemory& ground)
    : judge_{&judge}, ground_{&ground} {}

const std::vector<passage::Footfall>& RememberingJudge::ground_under(LegId leg) const {
  auto found = ground_->find(leg);
  if (found == ground_->end()) {
    found = ground_
                ->emplace(leg, passage::ground_under(judge_->scene(), judge_->rig(),
                                                     judge_->stretch_of(leg)))
                .first;
  }
  return found->second;
}

passage::LegAtBest RememberingJudge::at_best(LegId leg) const {
  return judge_->at_best(leg);
}

passage::LegJudgement RememberingJudge::judge(LegId leg, units::Instant entry) const {
  const auto key = std::pair{leg, entry};
  auto found = legs_.find(key);
  if (found == legs_.end()) {
    found =
        legs_.emplace(key, judge_->judge_over(judge_->stretch_of(leg), ground_under(leg), entry))
            .first;
  }
  return found->second;
}

// From and to, as the judge has them.
// NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
passage::TurnJudgement RememberingJudge::judge_turn(LegId from, LegId to,
                                                    units::Instant entry) const {
  const auto key = std::tuple{from, to, entry};
  auto found = turns_.find(key);
  if (found == turns_.end()) {
    found = turns_.emplace(key, judge_->judge_turn(from, to, entry)).first;
  }
  return found->second;
}

}  // namespace rimehaul::day
