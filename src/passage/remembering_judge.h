// A judge that judges each leg and turn once for each hour, and measures each leg's ground once.
#pragma once

#include <map>
#include <tuple>

#include "passage/judge.h"

namespace rimehaul::passage {

/// The ground under one rig, leg by leg: neither snow nor load changes where it stands.
using GroundMemory = std::map<trails::LegId, std::vector<Footfall>>;

/// The ground of a leg out of the memory, measured first if it is not in it. The memory must be of
/// a rig with the same carrier and trailer as the judge's.
const std::vector<Footfall>& ground_under(trails::LegId leg, const Judge& judge,
                                          GroundMemory& ground);

/// Answers as the judge does, to the last digit, for many questions about one snow.
class RememberingJudge final : public LegJudge {
 public:
  /// Holds references: both must outlive it. The ground must be of a rig with the same carrier
  /// and trailer.
  RememberingJudge(const Judge& judge, GroundMemory& ground);

  [[nodiscard]] LegAtBest at_best(trails::LegId leg) const override;
  [[nodiscard]] LegJudgement judge(trails::LegId leg, units::Instant entry) const override;
  [[nodiscard]] TurnJudgement judge_turn(trails::LegId from, trails::LegId to,
                                         units::Instant entry) const override;
  [[nodiscard]] std::vector<units::Instant> turning_moments(trails::LegId leg,
                                                            units::Period during) const override;
  [[nodiscard]] std::vector<units::Instant> turning_moments(trails::LegId from, trails::LegId to,
                                                            units::Period during) const override;

 private:
  const Judge* judge_;
  GroundMemory* ground_;
  mutable std::map<std::pair<trails::LegId, units::Instant>, LegJudgement> legs_;
  mutable std::map<std::tuple<trails::LegId, trails::LegId, units::Instant>, TurnJudgement> turns_;
};

}  // namespace rimehaul::passage
