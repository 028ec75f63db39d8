// A judge for whoever looks for ways alone, and keeps many judgements: it says little of each leg.
#pragma once

#include "passage/remembering_judge.h"

namespace rimehaul::day {

/// Judges as the judge does over ground that is remembered. Of a leg's findings it tells the one
/// that binds and those that do not pass, of a turn's the one that binds; a leg's pieces, snow and
/// exposed spans it leaves out. Verdict, share, time, fuel, hours and why it may not be driven are
/// the same.
class BriefJudge final : public passage::LegJudge {
 public:
  /// Holds references: both must outlive it. The ground must be of a rig with the same carrier
  /// and trailer.
  BriefJudge(const passage::Judge& judge, passage::GroundMemory& ground);

  [[nodiscard]] passage::LegAtBest at_best(trails::LegId leg) const override;
  [[nodiscard]] passage::LegJudgement judge(trails::LegId leg, units::Instant entry) const override;
  [[nodiscard]] passage::TurnJudgement judge_turn(trails::LegId from, trails::LegId to,
                                                  units::Instant entry) const override;
  [[nodiscard]] std::vector<units::Instant> turning_moments(trails::LegId leg,
                                                            units::Period during) const override;
  [[nodiscard]] std::vector<units::Instant> turning_moments(trails::LegId from, trails::LegId to,
                                                            units::Period during) const override;

 private:
  const passage::Judge* judge_;
  passage::GroundMemory* ground_;
};

}  // namespace rimehaul::day
