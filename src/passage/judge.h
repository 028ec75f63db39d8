// The judge: one leg, one rig, one snow, one hour. The one entry that everything else asks.
#pragma once

#include <vector>

#include "hazard/exposure.h"
#include "passage/footfall.h"
#include "passage/judgement.h"
#include "passage/scene.h"
#include "passage/stretch.h"
#include "passage/weighing.h"
#include "snow/snow.h"

namespace rimehaul::passage {

/// What a turn from the end of one stretch into the start of the next comes to.
struct TurnJudgement {
  Verdict verdict = Verdict::closed;
  Finding binding;
  std::vector<Finding> findings{};  ///< the worst of every check that applied, in order of Check
};

/// The least that a leg may take, whatever is found of its ground and snow.
struct LegAtBest {
  units::Seconds time;
  units::Litres fuel;
};

/// How a leg is driven: entered when, and how fast at most.
struct Driven {
  units::Instant entry;
  units::MetresPerSecond at_most;
};

/// The question search and audit ask; tests bring their own answers.
class LegJudge {
 public:
  virtual ~LegJudge() = default;
  /// No judgement of the leg that lets it be driven says less. Asked without looking at ground.
  [[nodiscard]] virtual LegAtBest at_best(trails::LegId leg) const = 0;
  [[nodiscard]] virtual LegJudgement judge(trails::LegId leg, units::Instant entry) const = 0;
  /// From the end of one leg into the start of the next, which must share the junction.
  [[nodiscard]] virtual TurnJudgement judge_turn(trails::LegId from, trails::LegId to,
                                                 units::Instant entry) const = 0;
  /// Moments of a period but its first, in order, each once. A judgement of the leg for one entry
  /// says the same, but for figures shown beside it, for any later entry that no such moment
  /// separates from it, neither at the hour of entry nor at any other that it was asked for
  /// (HoursOnLeg) nor when its tail leaves, all moved by as much. May name too many, never too few.
  [[nodiscard]] virtual std::vector<units::Instant> turning_moments(trails::LegId leg,
                                                                    units::Period during) const = 0;
  /// The same of a turn, which is asked for at the hour of entry alone.
  [[nodiscard]] virtual std::vector<units::Instant> turning_moments(trails::LegId from,
                                                                    trails::LegId to,
                                                                    units::Period during) const = 0;
};

/// Judges one rig in one scene and snow. Holds references: scene, rig and snow must outlive it.
///
/// A leg is driven at one speed, the lowest that any of its pieces allows, because a driver can
/// keep to one number; its time and fuel are the most that the way over the snow can take at that
/// speed, by the heights' own line (profile.h).
/// Restricted here means that a named person may decide; a leg that another load would open is
/// closed as it stands, and open_loads.h tells the intervals.
class Judge : public LegJudge {
 public:
  Judge(const Scene& scene, const rig::Rig& rig, const snow::SnowAt& snow);

  /// The same question for another rig or another snow; what it shares is not worked out again.
  [[nodiscard]] Judge with_rig(const rig::Rig& rig) const;
  [[nodiscard]] Judge with_snow(const snow::SnowAt& snow) const;

  /// At the carrier's top speed over level ground, the engine idling.
  [[nodiscard]] LegAtBest at_best(trails::LegId leg) const override;
  [[nodiscard]] LegJudgement judge(trails::LegId leg, units::Instant entry) const override;
  /// The ground where carrier and trailer stand on both legs, and the bend between them against
  /// the narrower trail. Clear ground to turn round on stands in for width and radius; turning back
  /// the way one came needs it, and level enough ground for every heading.
  [[nodiscard]] TurnJudgement judge_turn(trails::LegId from, trails::LegId to,
                                         units::Instant entry) const override;
  [[nodiscard]] std::vector<units::Instant> turning_moments(trails::LegId leg,
                                                            units::Period during) const override;
  [[nodiscard]] std::vector<units::Instant> turning_moments(trails::LegId from, trails::LegId to,
                                                            units::Period during) const override;

  /// A stretch over ground that somebody else has measured (the re-walk brings exact planes).
  [[nodiscard]] LegJudgement judge_over(const Stretch& stretch,
                                        const std::vector<Footfall>& footfalls,
                                        units::Instant entry) const;
  /// The same, driven no faster than a speed that was told before; the judgement's own speed is
  /// still what the ground allows.
  [[nodiscard]] LegJudgement judge_driven(const Stretch& stretch,
                                          const std::vector<Footfall>& footfalls,
                                          const Driven& driven) const;
  /// The worst of every check at one footfall of a stretch, in order of Check, over every snow and
  /// hour that the judgement of the whole stretch takes that footfall through: what `explain`
  /// shows. The worst of all footfalls is what the stretch was found to be.
  [[nodiscard]] std::vector<PlaceFinding> findings_at(const Stretch& stretch,
                                                      const Footfall& footfall,
                                                      const HoursOnLeg& hours) const;
  /// Turning and off-tracking along a line of given width, for bends within it and for joints.
  [[nodiscard]] std::vector<Finding> judge_bends(const geo::Polyline& line,
                                                 std::optional<units::Metres> width) const;

  [[nodiscard]] Stretch stretch_of(trails::LegId leg) const;
  [[nodiscard]] const Scene& scene() const { return *scene_; }
  [[nodiscard]] const rig::Rig& rig() const { return *rig_; }
  [[nodiscard]] const snow::SnowAt& snow() const { return *snow_; }
  /// As loaded, then with the tank empty.
  [[nodiscard]] const std::vector<WeighedOut>& weighings() const { return weighings_; }
  /// As loaded.
  [[nodiscard]] const rig::Weighed& weighed() const { return weighings_.front().weighed; }
  [[nodiscard]] const GripTable& grip() const { return weighings_.front().grip; }
  /// k sigma and the sub-cell term for the narrower of carrier and trailer.
  [[nodiscard]] std::optional<units::Slope> tolerance() const { return tolerance_; }
  /// The lower of the site's and the driver's level; the site's where the level is not known, which
  /// closes everything by itself.
  [[nodiscard]] double allowed_share() const;
  /// Steep ground as it counts in that snow.
  [[nodiscard]] const hazard::SteepGround& steep_ground(snow::Wetness wetness) const;

 private:
  const Scene* scene_;
  const rig::Rig* rig_;
  const snow::SnowAt* snow_;
  std::vector<WeighedOut> weighings_;
  std::optional<units::Slope> tolerance_;
  hazard::SteepGround steep_dry_;
  hazard::SteepGround steep_wet_;
};

}  // namespace rimehaul::passage
