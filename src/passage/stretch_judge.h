// Everything that is asked of one stretch by one judge: once for all of it, and piece by piece.
#pragma once

#include <vector>

#include "passage/bends.h"
#include "passage/course.h"
#include "passage/judge.h"
#include "passage/site_rules.h"

namespace rimehaul::passage {

/// Holds references: judge and stretch must outlive it.
class StretchJudge {
 public:
  StretchJudge(const Judge& judge, const Stretch& stretch);

  [[nodiscard]] double allowed_share() const { return course_.allowed_share; }

  /// What does not change along the stretch: the trail's attributes, direction, driver, load,
  /// weather; and its tightest bend. Every finding bears its place.
  [[nodiscard]] std::vector<Finding> judge_whole() const;
  /// The marks that touch a part of the stretch. Every finding bears its place.
  [[nodiscard]] std::vector<Finding> judge_marks(geo::Span part, units::Instant when) const;
  /// What the hours of a stay on it come to: those of the trail and of the driver, and orders.
  [[nodiscard]] std::vector<Finding> judge_stay(Stay stay) const;
  /// One footfall: ground, snow, stopping, zones and avalanches, with the speed that all of these
  /// and the bend there leave. Slower than walking pace is refused.
  [[nodiscard]] PlaceJudgement judge_piece(const Footfall& footfall, const SnowThere& snow) const;

 private:
  [[nodiscard]] Finding judge_exposure(const Footfall& footfall, snow::SnowState state) const;
  /// What depends on the snow there, beside the ground checks.
  void judge_in_snow(const Footfall& footfall, snow::SnowState state,
                     std::vector<Finding>& found) const;

  const Judge* judge_;
  const Stretch* stretch_;
  const trails::Trail* trail_;
  Course course_;
  DrivenBend bend_;
  units::Metres reach_;              ///< from the line to the rig's side, the line's error added
  std::vector<trails::Zone> zones_;  ///< that may touch the stretch
};

/// What holds along a line of this trail for a judge's rig.
[[nodiscard]] Course course_of(const Judge& judge, const trails::Trail& trail,
                               std::vector<MarkOnStretch> marks);

/// How far the drawn line may be off, for looking at ground; one that makes no sense counts as 0
/// here, and closes the trail by its attributes.
[[nodiscard]] units::Metres line_error_of(const trails::Trail& trail);

/// The ground that a rig may stand on along a stretch, the line's error counted. Neither load nor
/// snow changes it.
[[nodiscard]] std::vector<Footfall> ground_under(const Scene& scene, const rig::Rig& rig,
                                                 const Stretch& stretch);

}  // namespace rimehaul::passage
