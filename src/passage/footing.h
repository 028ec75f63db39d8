// What a ground check looks at: the rig weighed out, the snow's grip, and how the ground may tilt.
#pragma once

#include <limits>
#include <vector>

#include "passage/finding.h"
#include "passage/rules.h"
#include "rig/rig.h"
#include "snow/grip.h"
#include "terrain/attitude.h"

namespace rimehaul::passage {

/// One place for one rig. The boxes are already widened by k sigma and the sub-cell term. Without a
/// trailer, `trailer` equals `carrier` and no check reads it. References must outlive the footing.
struct Footing {
  const rig::Rig& rig;
  const rig::Weighed& weighed;
  const snow::GripRow& grip;
  const Rules& rules;
  terrain::AttitudeBox carrier;
  terrain::AttitudeBox trailer;
  units::Metres in_new_snow{0};  ///< how deep one sinks in the day's new snow
};

/// How much deeper the low side of a body may sink than the other, and who says so: the rules, the
/// site's measured snow, or the day's new snow, whichever is the most. NaN where one of them is.
struct LowSide {
  units::Metres deeper;
  Origin origin = Origin::rules;
};
/// `body`: roll-over of the carrier, or of the trailer.
[[nodiscard]] LowSide low_side_of(const Footing& footing, Check body);

// Every function gives an upper bound of its share over both boxes, at the worst corner of each
// term. The formulas, symbols, sources and worked examples stand on the pages that facts_of(check)
// names.

[[nodiscard]] Finding judge_climb_rating(const Footing& footing);
[[nodiscard]] Finding judge_descent_rating(const Footing& footing);
[[nodiscard]] Finding judge_cross_rating(const Footing& footing);
[[nodiscard]] Finding judge_trailer_rating(const Footing& footing);
[[nodiscard]] Finding judge_climb_traction(const Footing& footing);
[[nodiscard]] Finding judge_engine_power(const Footing& footing);
[[nodiscard]] Finding judge_descent_hold(const Footing& footing);
[[nodiscard]] Finding judge_parking_hold(const Footing& footing);
[[nodiscard]] Finding judge_carrier_roll_over(const Footing& footing);
[[nodiscard]] Finding judge_trailer_roll_over(const Footing& footing);
[[nodiscard]] Finding judge_carrier_side_slip(const Footing& footing);
[[nodiscard]] Finding judge_trailer_side_slip(const Footing& footing);
[[nodiscard]] Finding judge_jackknife(const Footing& footing);
[[nodiscard]] Finding judge_hitch_vertical(const Footing& footing);

/// All of the above, in the order of Check; those that need a trailer only with one.
[[nodiscard]] std::vector<Finding> judge_ground(const Footing& footing);

/// Where a rig must be able to stop.
struct StopWithin {
  units::Metres sight;   ///< the least that counts
  units::Metres radius;  ///< of the bend there; above 0
  /// What something else allows: a higher speed is looked for no further than two steps on.
  units::MetresPerSecond at_most{std::numeric_limits<double>::infinity()};
};

/// Stopping at walking pace within the sight, by a brake used no harder than leaves side slip,
/// roll-over and jackknife of the slowing rig within the allowed share, the bend counted; and the
/// highest speed at which all of that holds within the allowed share of the sight (0 when it does
/// not at walking pace). Where the steady rig already exceeds one of those checks, which closes the
/// place by itself, both are judged by the brake alone.
struct Stopping {
  Finding finding;
  units::MetresPerSecond speed;
};
[[nodiscard]] Stopping judge_stopping(const Footing& footing, const StopWithin& within,
                                      double allowed_share);

// Checks that depend on the load alone.
[[nodiscard]] Finding judge_towed_mass(const rig::Rig& rig, const rig::Weighed& weighed);
[[nodiscard]] Finding judge_payload(const rig::Rig& rig, const rig::Weighed& weighed);
[[nodiscard]] Finding judge_trailer_payload(const rig::Rig& rig);
[[nodiscard]] Finding judge_seats(const rig::Rig& rig);

}  // namespace rimehaul::passage
