// What the slope audit measures before it judges, and how it picks the tightest places afterwards.
#include <algorithm>
#include <cstdint>
#include <utility>

#include "audit/slope_audit.h"
#include "passage/stretch_judge.h"

namespace rimehaul::audit {

using trails::LegId;
using trails::Way;
using units::Metres;

std::vector<Way> allowed_ways(const trails::Trail& trail) {
  if (trail.direction == trails::AllowedDirection::forward) {
    return {Way::as_drawn};
  }
  if (trail.direction == trails::AllowedDirection::backward) {
    return {Way::against};
  }
  return {Way::as_drawn, Way::against};
}

MeasuredTrail measure(const passage::Scene& scene, const rig::Rig& rig, const TrailWay& which) {
  MeasuredTrail measured{.which = which, .legs = {}};
  const auto& legs = scene.network.legs;
  for (std::uint32_t i = 0; i < legs.size(); ++i) {
    const trails::Leg& leg = legs[i];
    if (leg.trail != which.trail || leg.way != which.way) {
      continue;
    }
    passage::Stretch stretch{
        .trail = leg.trail, .span = leg.span, .way = leg.way, .line = leg.line};
    std::vector<passage::Footfall> footfalls = passage::ground_under(scene, rig, stretch);
    measured.legs.push_back(
        {.leg = LegId{i}, .stretch = std::move(stretch), .footfalls = std::move(footfalls)});
  }
  const bool forward = which.way == Way::as_drawn;
  std::ranges::sort(measured.legs, [&](const MeasuredLeg& one, const MeasuredLeg& other) {
    return forward ? one.stretch.span.from < other.stretch.span.from
                   : one.stretch.span.from > other.stretch.span.from;
  });
  return measured;
}

passage::Scene without_errors(const passage::Scene& scene) {
  passage::Scene bare = scene;
  bare.rules.confidence_k = 0.0;
  if (bare.trust.sub_cell.has_value()) {
    bare.trust.sub_cell = units::Slope::from_ratio(0);
  }
  return bare;
}

bool tighter(const AuditedPlace& lhs, const AuditedPlace& rhs) {
  return lhs.finding.share.value_or(0.0) > rhs.finding.share.value_or(0.0);
}

bool near_each_other(const AuditedPlace& lhs, const AuditedPlace& rhs) {
  constexpr Metres kNear{50};
  const Metres apart = lhs.at > rhs.at ? lhs.at - rhs.at : rhs.at - lhs.at;
  return lhs.trail == rhs.trail && apart < kNear;
}

std::vector<AuditedPlace> tightest_of(std::vector<AuditedPlace> places) {
  std::ranges::stable_sort(places, tighter);
  std::vector<AuditedPlace> kept;
  for (AuditedPlace& place : places) {
    const bool told = std::ranges::any_of(
        kept, [&](const AuditedPlace& other) { return near_each_other(place, other); });
    if (!told && kept.size() < kTightestShown) {
      kept.push_back(std::move(place));
    }
  }
  return kept;
}

}  // namespace rimehaul::audit
