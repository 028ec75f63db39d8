// The judge: one leg, one rig, one snow, one hour. The one entry that everything else asks.
#pragma once

#include <memory>
#include <vector>

#include "hazard/exposure.h"
#include "passage/footfall.h"
#include "passage/judgement.h"
#include "passage/scene.h"
#include "snow/snow.h"

namespace rimehaul::passage {

/// A stretch of one trail to be judged, driven one way.
struct Stretch {
  std::size_t trail = 0;  ///< index into Network::trails
  geo::Span span{};       ///< by chainage along the trail as drawn
  trails::Way way = trails::Way::as_drawn;
  geo::Polyline line;  ///< in driving direction
};

/// What a turn from the end of one stretch into the start of the next comes to.
struct TurnJudgement {
  Verdict verdict = Verdict::closed;
  Finding binding;
};

/// The question search and audit ask; tests bring their own answers.
class LegJudge {
 public:
  virtual ~LegJudge() = default;
  [[nodiscard]] virtual LegJudgement judge(trails::LegId leg, units::Instant entry) const = 0;
  /// From the end of one leg into the start of the next, which must share the junction.
  [[nodiscard]] virtual TurnJudgement judge_turn(trails::LegId from, trails::LegId to,
                                                 units::Instant entry) const = 0;
};

/// Judges one rig in one scene and snow. Holds references: scene, rig and snow must outlive it.
class Judge : public LegJudge {
 public:
  Judge(const Scene& scene, const rig::Rig& rig, const snow::SnowAt& snow);

  [[nodiscard]] LegJudgement judge(trails::LegId leg, units::Instant entry) const override;
  [[nodiscard]] TurnJudgement judge_turn(trails::LegId from, trails::LegId to,
                                         units::Instant entry) const override;

  /// A stretch over ground that somebody else has measured (the re-walk brings exact planes).
  [[nodiscard]] LegJudgement judge_over(const Stretch& stretch,
                                        const std::vector<Footfall>& footfalls,
                                        units::Instant entry) const;
  /// Every finding at one footfall of a stretch: what `explain` shows.
  [[nodiscard]] std::vector<Finding> findings_at(const Stretch& stretch, const Footfall& footfall,
                                                 units::Instant when) const;
  /// Turning and off-tracking along a line of given width, for bends within it and for joints.
  [[nodiscard]] std::vector<Finding> judge_bends(const geo::Polyline& line,
                                                 std::optional<units::Metres> width) const;

  [[nodiscard]] Stretch stretch_of(trails::LegId leg) const;
  [[nodiscard]] const Scene& scene() const { return *scene_; }
  [[nodiscard]] const rig::Rig& rig() const { return *rig_; }
  [[nodiscard]] const snow::SnowAt& snow() const { return *snow_; }

 private:
  const Scene* scene_;
  const rig::Rig* rig_;
  const snow::SnowAt* snow_;
  rig::Weighed weighed_;
  std::optional<units::Slope> tolerance_;
  hazard::SteepGround steep_dry_;
  hazard::SteepGround steep_wet_;
};

/// An interval of load, both ends judged and every judged step between them open.
struct LoadInterval {
  units::Kilograms from;
  units::Kilograms to;
};

/// Which load is varied.
enum class LoadPlace { bed, towed };

/// Loads between 0 and the rating for which a leg is open, judged every `step`; nothing is assumed
/// monotone. An interval holds judged loads only.
[[nodiscard]] std::vector<LoadInterval> open_loads(const Judge& judge, trails::LegId leg,
                                                   LoadPlace place, units::Kilograms step,
                                                   units::Instant entry);

}  // namespace rimehaul::passage
