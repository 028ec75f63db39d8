// The judge: what it works out once, and how it turns a leg of the network into ground and
// findings.
#include "passage/judge.h"

#include <algorithm>
#include <cmath>

#include "passage/avalanche.h"
#include "passage/bends.h"
#include "passage/stretch_judge.h"
#include "passage/turning_moments.h"

namespace rimehaul::passage {

using units::Metres;
using units::Slope;

namespace {

Metres narrower_gauge(const rig::Rig& rig) {
  return rig.trailer.has_value() ? std::min(rig.carrier.gauge, rig.trailer->gauge)
                                 : rig.carrier.gauge;
}

/// How far the policy of the day looks for steep ground. Without a level nothing passes anyway.
Metres reach_of(const Rules& rules, std::optional<int> bulletin_level) {
  const int level = bulletin_level.value_or(0);
  const bool known = level >= 1 && level <= static_cast<int>(rules.bulletin.size());
  return known ? rules.bulletin.at(static_cast<std::size_t>(level - 1)).keep_off : Metres{0};
}

hazard::SteepGround steep_ground_in(const Scene& scene, snow::Wetness wetness,
                                    std::optional<Slope> tolerance, std::optional<int> level) {
  return {scene.heights,
          {.start_slope = start_slope_for(wetness, scene.rules),
           .reach = reach_of(scene.rules, level),
           .tolerance = tolerance.value_or(Slope::from_ratio(std::nan("")))}};
}

}  // namespace

Judge::Judge(const Scene& scene, const rig::Rig& rig, const snow::SnowAt& snow)
    : scene_{&scene},
      rig_{&rig},
      snow_{&snow},
      weighings_{weighings_of(scene.rules.grip, rig)},
      tolerance_{slope_tolerance(scene, narrower_gauge(rig))},
      steep_dry_{
          steep_ground_in(scene, snow::Wetness::dry, tolerance_, snow.weather().bulletin_level)},
      steep_wet_{steep_ground_in(scene, snow::Wetness::slush, tolerance_,
                                 snow.weather().bulletin_level)} {}

Judge Judge::with_rig(const rig::Rig& rig) const {
  if (slope_tolerance(*scene_, narrower_gauge(rig)) != tolerance_) {
    return Judge{*scene_, rig, *snow_};
  }
  Judge other{*this};
  other.rig_ = &rig;
  other.weighings_ = weighings_of(scene_->rules.grip, rig);
  return other;
}

Judge Judge::with_snow(const snow::SnowAt& snow) const {
  if (snow.weather().bulletin_level != snow_->weather().bulletin_level) {
    return Judge{*scene_, *rig_, snow};
  }
  Judge other{*this};
  other.snow_ = &snow;
  return other;
}

Stretch Judge::stretch_of(trails::LegId leg) const {
  const trails::Leg& there = scene_->network.legs.at(static_cast<std::size_t>(leg));
  return {.trail = there.trail, .span = there.span, .way = there.way, .line = there.line};
}

LegAtBest Judge::at_best(trails::LegId leg) const {
  // A judgement adds up its pieces, so its sums may come out lower by rounding.
  constexpr double kRoundedDown = 1.0 - 1e-9;
  const Metres length = scene_->network.legs.at(static_cast<std::size_t>(leg)).line.length();
  const units::Seconds time = length / rig_->carrier.top_speed * kRoundedDown;
  constexpr double kSecondsPerHour = 3600.0;
  const double idle_l = rig_->carrier.idle_consumption.value() * time.value() / kSecondsPerHour;
  return {.time = time, .fuel = units::Litres{idle_l}};
}

LegJudgement Judge::judge(trails::LegId leg, units::Instant entry) const {
  const Stretch stretch = stretch_of(leg);
  return judge_over(stretch, ground_under(*scene_, *rig_, stretch), entry);
}

std::vector<units::Instant> Judge::turning_moments(trails::LegId leg, units::Period during) const {
  return turning_moments_of_trail({*scene_, *rig_, *snow_},
                                  scene_->network.legs.at(static_cast<std::size_t>(leg)).trail,
                                  during);
}

// From and to, as they are driven.
// NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
std::vector<units::Instant> Judge::turning_moments(trails::LegId from, trails::LegId to,
                                                   units::Period during) const {
  const auto trail_of = [&](trails::LegId leg) {
    return scene_->network.legs.at(static_cast<std::size_t>(leg)).trail;
  };
  return turning_moments_of_turn({*scene_, *rig_, *snow_},
                                 {.before = trail_of(from), .after = trail_of(to)}, during);
}

std::vector<Finding> Judge::judge_bends(const geo::Polyline& line,
                                        std::optional<Metres> width) const {
  return driven_bend(*rig_, line, width, allowed_share()).findings;
}

double Judge::allowed_share() const {
  return allowed_share_for(scene_->rules, rig_->driver_level).value_or(scene_->rules.allowed_share);
}

const hazard::SteepGround& Judge::steep_ground(snow::Wetness wetness) const {
  return releases_wet(wetness) ? steep_wet_ : steep_dry_;
}

}  // namespace rimehaul::passage
