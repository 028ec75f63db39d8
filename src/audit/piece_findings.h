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
  /// `hours`: at which the snow is asked for, the first of entering.
  PieceFindings(const passage::Judge& judge, const MeasuredLeg& leg,
                std::vector<units::Instant> hours);

  /// All that is found on a footfall: its ground and snow in every state that it may have, its
  /// marks, what holds for the whole leg, and the leg's tightest bend where it holds that.
  [[nodiscard]] std::vector<passage::Finding> at(std::size_t footfall) const;

  [[nodiscard]] double allowed_share() const { return asked_.allowed_share(); }

 private:
  [[nodiscard]] std::vector<std::optional<snow::SnowState>> states_at(
      const passage::Footfall& footfall) const;

  const passage::Judge* judge_;
  const MeasuredLeg* leg_;
  std::vector<units::Instant> hours_;
  passage::StretchJudge asked_;
  std::vector<passage::Finding> whole_;   ///< told of every piece
  std::vector<passage::Finding> placed_;  ///< told of the piece that holds their place
};

}  // namespace rimehaul::audit
