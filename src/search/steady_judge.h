// A judge that judges once for all hours of entry that come to the same.
#pragma once

#include <map>
#include <utility>
#include <vector>

#include "search/moments_ahead.h"

namespace rimehaul::search {

/// For many questions at many hours. What it answers for a leg or a turn is what the judge answered
/// for another entry from which no turning moment separates this one: verdict, shares, time and
/// fuel are the same, hours on the leg are moved along, figures shown beside them are those of the
/// other entry. Beyond the horizon it asks anew each time.
class SteadyJudge final : public passage::LegJudge {
 public:
  /// Holds a reference: the judge must outlive it.
  SteadyJudge(const passage::LegJudge& judge, units::Period horizon);

  [[nodiscard]] passage::LegAtBest at_best(trails::LegId leg) const override;
  [[nodiscard]] passage::LegJudgement judge(trails::LegId leg, units::Instant entry) const override;
  [[nodiscard]] passage::TurnJudgement judge_turn(trails::LegId from, trails::LegId to,
                                                  units::Instant entry) const override;
  [[nodiscard]] std::vector<units::Instant> turning_moments(trails::LegId leg,
                                                            units::Period during) const override;
  [[nodiscard]] std::vector<units::Instant> turning_moments(trails::LegId from, trails::LegId to,
                                                            units::Period during) const override;

 private:
  /// A judgement, the hour that it was asked for, and that from which on it is said no longer.
  template <class Judgement>
  struct Spell {
    units::Instant asked;
    units::Instant until;
    Judgement judged;
  };
  /// By the first hour that it is said for.
  template <class Judgement>
  using Spells = std::map<units::Instant, Spell<Judgement>>;
  struct LegKnown {
    MomentsAhead ahead;
    Spells<passage::LegJudgement> spells{};
  };
  struct TurnKnown {
    std::vector<units::Instant> moments;
    Spells<passage::TurnJudgement> spells{};
  };

  [[nodiscard]] bool looks_at(units::Instant entry) const;

  const passage::LegJudge* judge_;
  units::Period horizon_;
  mutable std::map<trails::LegId, LegKnown> legs_;
  mutable std::map<std::pair<trails::LegId, trails::LegId>, TurnKnown> turns_;
};

}  // namespace rimehaul::search
