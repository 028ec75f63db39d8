#include "passage/remembering_judge.h"

#include "passage/stretch_judge.h"

namespace rimehaul::passage {

using trails::LegId;

const std::vector<Footfall>& ground_under(LegId leg, const Judge& judge, GroundMemory& ground) {
  auto found = ground.find(leg);
  if (found == ground.end()) {
    found =
        ground.emplace(leg, ground_under(judge.scene(), judge.rig(), judge.stretch_of(leg))).first;
  }
  return found->second;
}

RememberingJudge::RememberingJudge(const Judge& judge, GroundMemory& ground)
    : judge_{&judge}, ground_{&ground} {}

LegAtBest RememberingJudge::at_best(LegId leg) const {
  return judge_->at_best(leg);
}

LegJudgement RememberingJudge::judge(LegId leg, units::Instant entry) const {
  const auto key = std::pair{leg, entry};
  auto found = legs_.find(key);
  if (found == legs_.end()) {
    found = legs_
                .emplace(key, judge_->judge_over(judge_->stretch_of(leg),
                                                 ground_under(leg, *judge_, *ground_), entry))
                .first;
  }
  return found->second;
}

// From and to, as the judge has them.
// NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
TurnJudgement RememberingJudge::judge_turn(LegId from, LegId to, units::Instant entry) const {
  const auto key = std::tuple{from, to, entry};
  auto found = turns_.find(key);
  if (found == turns_.end()) {
    found = turns_.emplace(key, judge_->judge_turn(from, to, entry)).first;
  }
  return found->second;
}

std::vector<units::Instant> RememberingJudge::turning_moments(LegId leg,
                                                              units::Period during) const {
  return judge_->turning_moments(leg, during);
}

// NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
std::vector<units::Instant> RememberingJudge::turning_moments(LegId from, LegId to,
                                                              units::Period during) const {
  return judge_->turning_moments(from, to, during);
}

}  // namespace rimehaul::passage
