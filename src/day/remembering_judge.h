// A judge that judges each leg and turn once for each hour, and measures each leg's ground once.
#pragma once

#include <map>
#include <tuple>

#include "passage/judge.h"

namespace rimehaul::day {

/// The ground under one rig, leg by leg: neither snow nor load changes where it stands.
using GroundMemory = std::map<trails::LegId, std::vector<passage::Footfall>>;

/// Answers as the judge does, to the last digit, for many questions about one snow.
class RememberingJudge final : public passage::LegJudge {
 public:
  /// Holds references: both must outlive it. The ground must be of a rig with the same carrier
  /// and trailer.
  RememberingJudge(const passage::Judge& judge, GroundMemory& ground);

  [[nodiscard]] passage::LegAtBest at_best(trails::LegId leg) const override;
  [[nodiscard]] passage::LegJudgement judge(trails::LegId leg, units::Instant entry) const override;
  [[nodiscard]] passage::TurnJudgement judge_turn(trails::LegId from, trails::LegId to,
                                                  units::Instant entry) const override;

 private:
  [[nodiscard]] const std::vector<passage::Footfall>& ground_under(trails::LegId leg) const;

  const passage::Judge* judge_;
  GroundMemory* ground_;
  mutable std::map<std::pair<trails::LegId, units::Instant>, passage::LegJudgement> legs_;
  mutable std::map<std::tuple<trails::LegId, trails::LegId, units::Instant>, passage::TurnJudgement>
      turns_;
};

}  // namespace rimehaul::day
