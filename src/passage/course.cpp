// What holds along the whole of one line, and the judgement of single places on it.
#include "passage/course.h"

#include <algorithm>
#include <cmath>

#include "base/require.h"
#include "passage/crew_rules.h"
#include "passage/drive.h"

namespace rimehaul::passage {

using terrain::AttitudeBox;
using units::Metres;
using units::MetresPerSecond;

namespace {

Lie both(const Lie& lhs, const Lie& rhs) {
  return {lhs.found.with(rhs.found), lhs.up_to.with(rhs.up_to)};
}

/// The lie of the ground by the heights, or by the surveys that stand where the body may be.
std::optional<Lie> lie_of(const Course& course, const std::optional<AttitudeBox>& heights,
                          geo::Span body, units::Instant when) {
  std::optional<Lie> lie;
  if (heights.has_value() && is_known(*heights) && course.tolerance.has_value()) {
    lie = Lie{*heights, heights->widened(*course.tolerance)};
  }
  for (const MarkOnStretch& placed : course.marks) {
    if (placed.span.to < body.from || placed.span.from > body.to) {
      continue;
    }
    const std::optional<Lie> surveyed =
        surveyed_lie(*placed.mark, course.scene.rules, {when, course.last_weather});
    if (!surveyed.has_value()) {
      continue;
    }
    if (placed.span.from <= body.from && body.to <= placed.span.to) {
      return surveyed;
    }
    if (lie.has_value()) {
      lie = both(*lie, *surveyed);
    }
  }
  return lie;
}

Finding judge_heights(const Course& course, const Lies& lies) {
  if (lies.carrier.has_value() && lies.trailer.has_value()) {
    return kept(Check::heights_known, "no height is missing, and their error is declared");
  }
  return unknown(Check::heights_known,
                 course.tolerance.has_value()
                     ? kNoHeightsHere
                     : "error of the heights, or what may hide between their cells");
}

Finding judge_snow(const Course& course, const Footfall& footfall, const SnowThere& snow,
                   bool grip_known) {
  if (!snow.state.has_value()) {
    return unknown(Check::snow_known, snow_missing(course, footfall));
  }
  return grip_known ? kept(Check::snow_known, "somebody has said, and there is a grip for it")
                    : unknown(Check::snow_known, "grip of this snow for this rig");
}

/// The most that the box can ask of the engine sets the speed.
MetresPerSecond speed_on(const Footing& footing) {
  const units::Slope steepest = std::max(footing.carrier.grade_high, footing.trailer.grade_high);
  return speed_of_power(footing.rig.carrier, pull_needed(footing.weighed, footing.grip, steepest));
}

/// However much is in the tank.
bool grip_known(const Course& course, const SnowThere& snow) {
  return snow.state.has_value() &&
         std::ranges::all_of(course.weighings, [&](const WeighedOut& weighing) {
           return weighing.grip.row(*snow.state).has_value();
         });
}

/// Requires that lies and grip are known.
Footing footing_on(const Course& course, const Lies& lies, const WeighedOut& weighing,
                   snow::SnowState snow) {
  return {.rig = course.rig,
          .weighed = weighing.weighed,
          .grip = *weighing.grip.row(snow),
          .rules = course.scene.rules,
          .carrier = lies.carrier->up_to,
          .trailer = lies.trailer->up_to,
          .in_new_snow = course.in_new_snow.value_or(Metres{std::nan("")})};
}

/// No bend is driven tighter than the carrier turns: where the line asks that, turning refuses.
Metres radius_at(const Course& course, const Footfall& footfall) {
  return std::max(footfall.radius, course.rig.carrier.turning_radius);
}

PlaceJudgement judge_ground_and_stopping(const Footing& footing, StopWithin within,
                                         double allowed_share) {
  PlaceJudgement judged{judge_ground(footing), std::nullopt, std::nullopt};
  within.at_most = lower_of(within.at_most, speed_on(footing));
  Stopping stopping = judge_stopping(footing, within, allowed_share);
  judged.speed =
      lower_of(lower_of(stopping.speed, footing.rig.carrier.top_speed), speed_on(footing));
  judged.findings.push_back(std::move(stopping.finding));
  return judged;
}

/// Of the same checks of one place the worse, check by check; the lower of the speeds.
void keep_worse(PlaceJudgement& judged, PlaceJudgement other) {
  base::require(judged.findings.size() == other.findings.size(), "the same checks were asked");
  for (std::size_t i = 0; i < other.findings.size(); ++i) {
    if (binds_before(other.findings[i], judged.findings[i])) {
      judged.findings[i] = std::move(other.findings[i]);
    }
  }
  judged.speed = lower_of(*judged.speed, *other.speed);
}

/// Requires that lies and grip are known.
PlaceJudgement judge_on(const Course& course, const Lies& lies, snow::SnowState snow,
                        Metres radius) {
  PlaceJudgement worst;
  MetresPerSecond at_most = speed_of_bend(radius);
  for (const WeighedOut& weighing : course.weighings) {
    PlaceJudgement judged =
        judge_ground_and_stopping(footing_on(course, lies, weighing, snow),
                                  {course.sight, radius, at_most}, course.allowed_share);
    at_most = lower_of(at_most, *judged.speed);
    if (worst.findings.empty()) {
      worst = std::move(judged);
      continue;
    }
    for (Finding& finding : judged.findings) {
      finding.tank = weighing.tank;
    }
    keep_worse(worst, std::move(judged));
  }
  return worst;
}

}  // namespace

Lies lies_at(const Course& course, const Footfall& footfall, units::Instant when) {
  const Metres half_carrier = course.rig.carrier.contact_length / 2;
  const geo::Span carrier{footfall.span.from - half_carrier, footfall.span.to + half_carrier};
  Lies lies{lie_of(course, footfall.carrier, carrier, when), std::nullopt};
  lies.trailer = lies.carrier;
  if (course.rig.trailer.has_value()) {
    const Metres half_trailer = course.rig.trailer->contact_length / 2;
    const Metres lag = trailer_lag(course.rig);
    const geo::Span trailer{footfall.span.from - lag - half_trailer,
                            footfall.span.to + half_trailer};
    lies.trailer = lie_of(course, footfall.trailer, trailer, when);
  }
  return lies;
}

std::optional<Footing> footing_at(const Course& course, const Footfall& footfall,
                                  const SnowThere& snow, Tank tank) {
  const Lies lies = lies_at(course, footfall, snow.when);
  const auto weighing = std::ranges::find(course.weighings, tank, &WeighedOut::tank);
  if (weighing == course.weighings.end() || !grip_known(course, snow) ||
      !lies.carrier.has_value() || !lies.trailer.has_value()) {
    return std::nullopt;
  }
  return footing_on(course, lies, *weighing, *snow.state);
}

PlaceJudgement judge_place(const Course& course, const Footfall& footfall, const SnowThere& snow) {
  const Lies lies = lies_at(course, footfall, snow.when);
  const bool has_grip = grip_known(course, snow);
  PlaceJudgement judged;
  if (has_grip && lies.carrier.has_value() && lies.trailer.has_value()) {
    judged = judge_on(course, lies, *snow.state, radius_at(course, footfall));
  }
  judged.carrier = lies.carrier;
  judged.findings.push_back(judge_heights(course, lies));
  judged.findings.push_back(judge_snow(course, footfall, snow, has_grip));
  if (snow.state.has_value() && course.rig.trailer.has_value()) {
    judged.findings.push_back(
        judge_towing_in_wet_snow(course.rig, course.scene.rules, *snow.state));
  }
  return judged;
}

std::string snow_missing(const Course& course, const Footfall& footfall) {
  if (!footfall.height.has_value()) {
    return kNoHeightsHere;
  }
  return course.in_new_snow.has_value() ? kNoSnowHere : kNoNewSnow;
}

bool is_known(const AttitudeBox& box) {
  return std::isfinite(box.grade_low.ratio()) && std::isfinite(box.grade_high.ratio()) &&
         std::isfinite(box.cross_low.ratio()) && std::isfinite(box.cross_high.ratio());
}

MetresPerSecond lower_of(MetresPerSecond lhs, MetresPerSecond rhs) {
  if (std::isnan(lhs.value()) || std::isnan(rhs.value())) {
    return MetresPerSecond{std::nan("")};
  }
  return std::min(lhs, rhs);
}

}  // namespace rimehaul::passage
