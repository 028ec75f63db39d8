// The site's bulletin policy applied to one piece of trail.
#include "passage/avalanche.h"

#include <cmath>
#include <cstddef>
#include <string>

namespace rimehaul::passage {

namespace {

using units::amount;
using units::Metres;

constexpr Metres kNoDistance{0.0};

/// The policy's step for a level from 1 to 5; nothing for any other.
const BulletinStep* step_of(const Rules& rules, std::optional<int> level) {
  const int steps = static_cast<int>(rules.bulletin.size());
  if (!level || *level < 1 || *level > steps) {
    return nullptr;
  }
  return &rules.bulletin[static_cast<std::size_t>(*level - 1)];
}

/// Distance that is proven; on release ground itself, or where an expert drew its runout, none.
Metres proven_distance(const hazard::Exposure& exposure, units::Slope start_slope) {
  const bool own_slope_is_safe = *exposure.own_slope < start_slope;
  if (!own_slope_is_safe || exposure.in_release_area || exposure.in_runout) {
    return kNoDistance;
  }
  return *exposure.to_steep_ground;
}

std::string too_near(const hazard::Exposure& exposure) {
  if (exposure.in_release_area) {
    return "in a release area";
  }
  return exposure.in_runout ? "in a runout" : "too near ground that may release";
}

bool is_known(std::optional<units::Slope> slope) {
  return slope && std::isfinite(slope->ratio());
}

bool is_known(std::optional<Metres> distance) {
  return distance && std::isfinite(distance->value());
}

/// Distance to ground that may release; where none was met, as far as was looked.
units::Amount distance_amount(const hazard::Exposure& exposure, Metres proven) {
  units::Amount distance = amount(proven);
  if (exposure.nothing_steep_within_reach && proven > kNoDistance) {
    distance.known = units::Known::at_least;
  }
  return distance;
}

Finding without_inputs(const BulletinStep& step, units::Amount distance, const std::string& why) {
  Finding finding = held_to(Check::avalanche, amount(step.keep_off), distance, why);
  // A policy that keeps no distance still does not allow the ground itself.
  const bool on_safe_ground = distance.value > 0.0;
  if (!on_safe_ground && finding.refused.empty()) {
    finding.share.reset();
    finding.refused = why;
  }
  if (!finding.refused.empty() && step.decision_may_permit) {
    finding.refused.clear();
    finding.share = 0.0;
    finding.asks = "to drive " + why;
  }
  return finding;
}

}  // namespace

bool releases_wet(snow::Wetness wetness) {
  return wetness != snow::Wetness::dry;
}

units::Slope start_slope_for(snow::Wetness wetness, const Rules& rules) {
  return releases_wet(wetness) ? rules.start_slope_wet : rules.start_slope_dry;
}

Finding judge_avalanche(const hazard::Exposure& exposure, std::optional<int> bulletin_level,
                        snow::Wetness wetness, const Rules& rules) {
  const BulletinStep* step = step_of(rules, bulletin_level);
  if (step == nullptr) {
    return unknown(Check::avalanche, kNoBulletin);
  }
  if (step->all_closed) {
    return refusal(Check::avalanche, "the site drives nothing at this bulletin level");
  }
  const bool rules_known = std::isfinite(step->keep_off.value()) && step->keep_off >= kNoDistance;
  if (!rules_known) {
    return unknown(Check::avalanche, kNoKeepOff);
  }
  if (!is_known(exposure.own_slope) || !is_known(exposure.to_steep_ground)) {
    return unknown(Check::avalanche, kNoHeightsAround);
  }
  const units::Slope start_slope = start_slope_for(wetness, rules);
  const Metres distance = proven_distance(exposure, start_slope);
  const bool looked_far_enough = distance >= step->keep_off;
  if (exposure.nothing_steep_within_reach && distance > kNoDistance && !looked_far_enough) {
    return unknown(Check::avalanche, "ground further off than was looked at");
  }
  const units::Amount far = distance_amount(exposure, distance);
  Finding finding = without_inputs(*step, far, too_near(exposure));
  finding.inputs.add("level", units::count_of(*bulletin_level), Origin::snow_report)
      .add("own slope", amount(*exposure.own_slope), Origin::heights)
      .add("start slope", amount(start_slope), Origin::rules)
      .add("keep off", amount(step->keep_off), Origin::rules)
      .add("distance", far, Origin::heights);
  return finding;
}

}  // namespace rimehaul::passage
