// Angles measured by hand, held against the heights: how far off, and within what is judged by.
#pragma once

#include <cstddef>
#include <optional>
#include <span>

#include "passage/scene.h"
#include "rig/rig.h"
#include "terrain/attitude.h"

namespace rimehaul::audit {

/// Where a rig would stand, and which way it would face.
struct CheckedStand {
  geo::MapPoint at;
  units::Bearing heading;
};

/// What the heights say of the ground there.
struct GroundByHeights {
  terrain::Attitude found;  ///< of the least-squares plane under the carrier
  /// What the judge takes the ground for, its error counted; nothing: heights are missing under the
  /// carrier, or their error is not known.
  std::optional<terrain::AttitudeBox> judged;
};

/// The ground under a carrier whose middle stands there, with the judge's own bounds (footfalls)
/// and its own error (slope_tolerance). The place is taken as it is: no error of a line is added.
/// Nothing: the plane is not known. Requires finite coordinates.
[[nodiscard]] std::optional<GroundByHeights> ground_by_heights(const passage::Scene& scene,
                                                               const rig::Rig& rig,
                                                               const CheckedStand& stand);

/// The rig whose carrier treads the least ground, contact length times gauge, so that it looks most
/// closely; the first of those alike. Null: there is no rig.
[[nodiscard]] const rig::Rig* smallest_tread(std::span<const rig::Rig> rigs);

/// Whether a measured angle lies within what is judged by, both ends included; anything that is not
/// a number leaves it unknown.
enum class Within { yes, no, unknown };

struct JudgedSpan {
  units::Slope low;
  units::Slope high;
};

/// One angle by hand and by the heights; what is not known is not there.
struct AngleCheck {
  units::Slope measured;
  std::optional<units::Slope> found{};
  std::optional<JudgedSpan> judged{};
  std::optional<double> off_deg{};  ///< measured minus found
  Within within = Within::unknown;
};

struct FieldComparison {
  AngleCheck grade;
  AngleCheck cross;

  /// Of both angles: yes when both are, no when either is not.
  [[nodiscard]] Within within() const;
};

[[nodiscard]] FieldComparison compared(const terrain::Attitude& measured,
                                       const std::optional<GroundByHeights>& ground);

/// Of differences that are known; at least one.
struct OffTogether {
  std::size_t count = 0;
  double mean_deg = 0.0;
  double root_mean_square_deg = 0.0;
};

/// What many checks come to.
struct FieldSummary {
  std::size_t checks = 0;
  std::size_t within = 0;
  std::size_t outside = 0;  ///< the rest is unknown
  std::optional<OffTogether> grade{};
  std::optional<OffTogether> cross{};
};

[[nodiscard]] FieldSummary summary_of(std::span<const FieldComparison> checks);

}  // namespace rimehaul::audit
