#include "search/outlook.h"

#include <algorithm>
#include <limits>

namespace rimehaul::search {

using trails::LegId;

namespace {

/// Guesses at the best way before everything is judged at once: where guessing does not end soon,
/// the searches would come to cost more than the judging that they spare.
constexpr int kMostGuesses = 24;

/// Of all legs judged so far, the part that is judged at once from each end of a path: 1 in so
/// many.
constexpr std::size_t kPart = 12;

/// A cost of at least `least`, which also stands for what is no number.
struct Cost {
  double least = 0.0;

  [[nodiscard]] double at_least(double value) const { return value >= least ? value : least; }
};

/// A leg takes some time, so no less than the least number above 0.
LegFacts facts_at_best(const passage::LegAtBest& best) {
  return {.verdict = passage::Verdict::open,
          .share = 0.0,
          .allowed_share = std::numeric_limits<double>::infinity(),
          .time_s = Cost{std::numeric_limits<double>::denorm_min()}.at_least(best.time.value()),
          .fuel_l = Cost{}.at_least(best.fuel.value())};
}

constexpr TurnFacts kFree{.verdict = passage::Verdict::open, .share = 0.0};

}  // namespace

Outlook::Outlook(const trails::Network& network, const passage::LegJudge& judge,
                 units::Instant entry)
    : network_{&network},
      judge_{&judge},
      entry_{entry},
      turns_{turns_of(network)},
      turn_facts_(turns_.size(), kFree),
      leg_judged_(network.legs.size(), false),
      turn_judged_(turns_.size(), false) {
  leg_facts_.reserve(network.legs.size());
  for (std::uint32_t leg = 0; leg < network.legs.size(); ++leg) {
    leg_facts_.push_back(facts_at_best(judge.at_best(LegId{leg})));
  }
}

const LegFacts& Outlook::leg(LegId leg) const {
  return leg_facts_[static_cast<std::size_t>(leg)];
}

TurnFacts Outlook::turn_into(const Step& step) const {
  return step.turn.has_value() ? turn_facts_[*step.turn] : kFree;
}

bool Outlook::judge(LegId leg) {
  const auto index = static_cast<std::size_t>(leg);
  if (leg_judged_[index]) {
    return false;
  }
  leg_facts_[index] = facts_of(judge_->judge(leg, entry_));
  leg_judged_[index] = true;
  ++legs_judged_;
  return true;
}

bool Outlook::judge(TurnIndex turn) {
  if (turn_judged_[turn]) {
    return false;
  }
  turn_facts_[turn] = facts_of(judge_->judge_turn(turns_[turn].from, turns_[turn].to, entry_));
  turn_judged_[turn] = true;
  ++turns_judged_;
  return true;
}

bool Outlook::judge_some_of(const LegGraph& legs, const Path& path) {
  bool judged_some = false;
  for (const ArcIndex arc : path.arcs) {
    const std::optional<TurnIndex> turn = legs.steps[arc].turn;
    judged_some |= turn.has_value() && judge(*turn);
  }
  std::vector<LegId> left = legs_of(legs, path);
  std::erase_if(left, [&](LegId leg) { return leg_judged_[static_cast<std::size_t>(leg)]; });
  const std::size_t from_each_end = 1 + legs_judged_ / kPart;
  for (std::size_t i = 0; i < std::min(from_each_end, left.size()); ++i) {
    judged_some |= judge(left[i]);
    judged_some |= judge(left[left.size() - 1 - i]);
  }
  guesses_ += judged_some ? 1 : 0;
  if (guesses_ == kMostGuesses) {
    judge_all();
  }
  return judged_some;
}

void Outlook::judge_all() {
  for (std::uint32_t leg = 0; leg < leg_facts_.size(); ++leg) {
    judge(LegId{leg});
  }
  for (TurnIndex turn = 0; turn < turns_.size(); ++turn) {
    judge(turn);
  }
}

}  // namespace rimehaul::search
