// What holds along the whole of one line, and the judgement of single places on it.
#pragma once

#include <optional>
#include <vector>

#include "passage/footfall.h"
#include "passage/footing.h"
#include "passage/mark_rules.h"
#include "passage/weighing.h"

namespace rimehaul::passage {

/// One line for one rig. References must outlive it.
struct Course {
  const Scene& scene;
  const rig::Rig& rig;
  const std::vector<WeighedOut>& weighings;
  std::optional<units::Slope> tolerance;  ///< nothing: the heights' error is not known
  double allowed_share = 0.0;
  units::Metres sight;
  std::vector<MarkOnStretch> marks;            ///< by chainage along the line
  std::optional<units::Instant> last_weather;  ///< as in the day's report
  std::optional<units::Metres> in_new_snow;    ///< how deep one sinks in it; nothing: not told
};

/// The snow at a footfall, and when.
struct SnowThere {
  std::optional<snow::SnowState> state;
  units::Instant when;
};

/// What is not known where no height is: the snow, too, is told by height.
inline constexpr const char* kNoHeightsHere = "heights of the ground here";
inline constexpr const char* kNoSnowHere = "snow at this place and hour";
inline constexpr const char* kNoNewSnow = "depth of new snow since the last grooming";
/// What is not known where nobody has said what the snow is like; in `footfall`'s place.
[[nodiscard]] std::string snow_missing(const Course& course, const Footfall& footfall);

/// One footfall judged by the ground checks.
struct PlaceJudgement {
  std::vector<Finding> findings;
  std::optional<Lie> carrier;                   ///< nothing: not known
  std::optional<units::MetresPerSecond> speed;  ///< nothing: not known
};

/// Heights, snow, ground checks, stopping and, with a trailer, towing in wet snow; of each the
/// worse of the tank as loaded and empty. Where a survey stands for all the ground that a body may
/// touch, it replaces the heights; where it stands for some of it, both count.
[[nodiscard]] PlaceJudgement judge_place(const Course& course, const Footfall& footfall,
                                         const SnowThere& snow);

/// The ground under carrier and trailer, by the heights or by the surveys that stand there; without
/// a trailer the same twice. Nothing: not known.
struct Lies {
  std::optional<Lie> carrier;
  std::optional<Lie> trailer;
};
[[nodiscard]] Lies lies_at(const Course& course, const Footfall& footfall, units::Instant when);

/// What the ground checks look at there; nothing where the ground or the snow's grip is not known.
/// References of the course must outlive it.
[[nodiscard]] std::optional<Footing> footing_at(const Course& course, const Footfall& footfall,
                                                const SnowThere& snow, Tank tank);

/// Every side of the box is a finite number.
[[nodiscard]] bool is_known(const terrain::AttitudeBox& box);

/// The lower of two speeds; not a number when either is not.
[[nodiscard]] units::MetresPerSecond lower_of(units::MetresPerSecond lhs,
                                              units::MetresPerSecond rhs);

}  // namespace rimehaul::passage
