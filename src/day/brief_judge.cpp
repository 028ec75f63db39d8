#include "day/brief_judge.h"

#include <utility>

namespace rimehaul::day {

using passage::LegJudgement;
using passage::TurnJudgement;
using trails::LegId;
using units::Instant;
using units::Period;

BriefJudge::BriefJudge(const passage::Judge& judge, passage::GroundMemory& ground)
    : judge_{&judge}, ground_{&ground} {}

passage::LegAtBest BriefJudge::at_best(LegId leg) const {
  return judge_->at_best(leg);
}

LegJudgement BriefJudge::judge(LegId leg, Instant entry) const {
  LegJudgement brief =
      judge_->judge_over(judge_->stretch_of(leg), ground_under(leg, *judge_, *ground_), entry);
  std::vector<passage::Finding> told{brief.bind()};
  for (std::size_t i = 0; i < brief.findings.size(); ++i) {
    if (i != brief.binding &&
        passage::stand_of(brief.findings[i], brief.allowed_share) != passage::Stand::passes) {
      told.push_back(std::move(brief.findings[i]));
    }
  }
  brief.findings = std::move(told);
  brief.binding = 0;
  brief.pieces = {};
  brief.snow = {};
  brief.exposed = {};
  return brief;
}

// From and to, as the judge has them.
// NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
TurnJudgement BriefJudge::judge_turn(LegId from, LegId to, Instant entry) const {
  TurnJudgement turn = judge_->judge_turn(from, to, entry);
  turn.findings = {};
  return turn;
}

std::vector<Instant> BriefJudge::turning_moments(LegId leg, Period during) const {
  return judge_->turning_moments(leg, during);
}

// NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
std::vector<Instant> BriefJudge::turning_moments(LegId from, LegId to, Period during) const {
  return judge_->turning_moments(from, to, during);
}

}  // namespace rimehaul::day
