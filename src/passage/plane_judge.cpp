// One rig in one snow state on plane ground: everything but the place, asked slope by slope.
#include "passage/plane_judge.h"

#include <algorithm>
#include <iterator>
#include <utility>

#include "base/require.h"
#include "passage/bend.h"
#include "passage/crew_rules.h"
#include "passage/worst.h"

namespace rimehaul::passage {

using terrain::AttitudeBox;

namespace {

std::vector<Finding> findings_on_any_ground(const SlopeQuestion& question,
                                            const rig::Weighed& weighed) {
  const rig::Rig& rig = question.rig;
  std::vector<Finding> findings{judge_towed_mass(rig, weighed),
                                judge_payload(rig, weighed),
                                judge_trailer_payload(rig),
                                judge_seats(rig),
                                judge_driver_level(rig, question.rules),
                                judge_passengers(rig, question.rules),
                                judge_passengers_in_snow(rig, question.rules, question.snow)};
  if (rig.trailer.has_value()) {
    findings.push_back(judge_towing_in_wet_snow(rig, question.rules, question.snow));
  }
  return findings;
}

}  // namespace

PlaneJudge::PlaneJudge(const SlopeQuestion& question)
    : question_{question},
      weighings_{weighings_of(question.rules.grip, question.rig)},
      allowed_share_{allowed_share_for(question.rules, question.rig.driver_level).value_or(0.0)} {
  std::vector<Finding> findings = findings_on_any_ground(question_, weighings_.front().weighed);
  const bool grip_known = std::ranges::all_of(weighings_, [&](const WeighedOut& weighing) {
    return weighing.grip.row(question.snow).has_value();
  });
  if (!grip_known) {
    findings.push_back(unknown(Check::snow_known, "grip of this snow for this rig"));
  }
  // Load limits are ratings, not slopes: the allowed share is asked of them as of every check.
  const Finding& binding = findings[binding_of(findings)];
  if (stand_of(binding, allowed_share_) != Stand::passes) {
    closed_ = binding;
  }
}

std::vector<Finding> PlaneJudge::findings_over(const AttitudeBox& box) const {
  std::vector<Finding> findings;
  for (const WeighedOut& weighing : weighings_) {
    const Footing footing{.rig = question_.rig,
                          .weighed = weighing.weighed,
                          .grip = *weighing.grip.row(question_.snow),
                          .rules = question_.rules,
                          .carrier = box,
                          .trailer = box,
                          .in_new_snow = question_.in_new_snow};
    std::ranges::move(judge_ground(footing), std::back_inserter(findings));
    findings.push_back(
        judge_stopping(footing, {question_.rules.sight, kStraight}, allowed_share_).finding);
  }
  return findings;
}

Finding PlaneJudge::binding_over(const AttitudeBox& box) const {
  base::require(!closed_.has_value(), "a rig closed on any ground is not asked about slopes");
  std::vector<Finding> findings = findings_over(box);
  if (box.cross_low != units::Slope{} || box.cross_high != units::Slope{}) {
    std::vector<Finding> other_side = findings_over({.grade_low = box.grade_low,
                                                     .grade_high = box.grade_high,
                                                     .cross_low = box.cross_high.reversed(),
                                                     .cross_high = box.cross_low.reversed()});
    std::ranges::move(other_side, std::back_inserter(findings));
  }
  const std::size_t binding = binding_of(findings);
  return std::move(findings[binding]);
}

Finding PlaneJudge::binding_on(terrain::Attitude plane) const {
  return binding_over({.grade_low = plane.grade,
                       .grade_high = plane.grade,
                       .cross_low = plane.cross,
                       .cross_high = plane.cross});
}

bool PlaneJudge::passes(terrain::Attitude plane) const {
  return stand_of(binding_on(plane), allowed_share_) == Stand::passes;
}

}  // namespace rimehaul::passage
