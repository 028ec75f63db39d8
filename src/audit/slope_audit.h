// The slope audit: every metre of a trail, each way it may be driven, against every limit.
#pragma once

#include <vector>

#include "audit/audited_place.h"
#include "passage/judge.h"

namespace rimehaul::audit {

/// The ways in which a trail may be driven; both where nobody said, which closes them.
[[nodiscard]] std::vector<trails::Way> allowed_ways(const trails::Trail& trail);

/// A trail one way.
struct TrailWay {
  std::size_t trail = 0;  ///< index into Network::trails
  trails::Way way = trails::Way::as_drawn;
};

/// One leg of a trail, its ground measured.
struct MeasuredLeg {
  trails::LegId leg{};
  passage::Stretch stretch;
  std::vector<passage::Footfall> footfalls;
};

/// The legs of a trail in driving order. The ground does not depend on load and snow: it is
/// measured once for a rig.
struct MeasuredTrail {
  TrailWay which;
  std::vector<MeasuredLeg> legs;
};

[[nodiscard]] MeasuredTrail measure(const passage::Scene& scene, const rig::Rig& rig,
                                    const TrailWay& which);

/// The same scene as if heights and surveys had no error: k is 0, and nothing hides between cells.
/// For telling what was found apart from what it may be; never for a verdict.
[[nodiscard]] passage::Scene without_errors(const passage::Scene& scene);

/// The judge whose verdicts count, and the same question put to the scene without errors.
struct AuditJudges {
  const passage::Judge& judge;
  const passage::Judge& as_measured;
};

/// One trail, one way, for one rig as loaded and one snow.
struct TrailAudit {
  TrailWay which;
  std::vector<GradedPiece> pieces;        ///< in driving order; they cover the trail
  std::vector<AuditedPlace> exceedances;  ///< in the order in which they begin
  std::vector<AuditedPlace> tightest;     ///< open places of the largest shares, the largest first
  BandLengths lengths;
};

/// Every check at every footfall of the trail, as the judge finds them for a rig that enters each
/// leg at `when`: an exceedance is a stretch of consecutive pieces at which one check is over the
/// allowed share, refused or not known for one reason. A leg that the judge finds closed has one at
/// least, a leg that is not closed has none but on its joints. What holds for a whole leg (its
/// attributes, the weather, its hours) is told of the whole of it; a bend at the piece that holds
/// its tightest place. The joint of two legs is judged as the turn from one into the other.
[[nodiscard]] TrailAudit audit_trail(const MeasuredTrail& trail, const AuditJudges& judges,
                                     units::Instant when);

/// The places of the largest shares, largest first; of places on one trail within 50 m of each
/// other only the tightest counts.
inline constexpr std::size_t kTightestShown = 10;
[[nodiscard]] std::vector<AuditedPlace> tightest_of(std::vector<AuditedPlace> places);
[[nodiscard]] bool tighter(const AuditedPlace& lhs, const AuditedPlace& rhs);
/// Whether two places are within 50 m of each other on one trail, whichever way driven.
[[nodiscard]] bool near_each_other(const AuditedPlace& lhs, const AuditedPlace& rhs);

}  // namespace rimehaul::audit
