// Every finding on a measured leg, footfall by footfall, as the judge finds them.
#pragma once

#include <optional>
#include <vector>

#include "audit/slope_audit.h"
#include "passage/stretch_judge.h"

namespace rimehaul::audit {

/// Asks one judge about one leg. References must outlive it.
class PieceFindings {
 public:
  PieceFindings(const passage::Judge& judge, const MeasuredLeg& leg, units::Instant when);

  /// All that is found on a footfall: its ground and snow in every state that it may have, its
  /// marks, what holds for the whole leg, and the leg's tightest bend where it holds that.
  [[nodiscard]] std::vector<passage::Finding> at(std::size_t footfall) const;
  /// What closes the leg though none of its footfalls tells: the hours that the whole drive keeps
  /// or not, snow that turns on the way.
  [[nodiscard]] std::vector<passage::Finding> only_of_whole_leg(
      const std::vector<std::vector<passage::Finding>>& of_footfalls) const;

  [[nodiscard]] double allowed_share() const { return asked_.allowed_share(); }

 private:
  [[nodiscard]] std::vector<std::optional<snow::SnowState>> states_at(
      const passage::Footfall& footfall) const;

  const passage::Judge* judge_;
  const MeasuredLeg* leg_;
  units::Instant when_;
  passage::StretchJudge asked_;
  passage::LegJudgement judged_;
  std::vector<units::Instant> hours_;     ///< of entering and, where it is known, of leaving
  std::vector<passage::Finding> whole_;   ///< told of every piece
  std::vector<passage::Finding> placed_;  ///< told of the piece that holds their place
};

}  // namespace rimehaul::audit
