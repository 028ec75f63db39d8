// Everything that is asked of one stretch by one judge: once for all of it, and piece by piece.
#include "passage/stretch_judge.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "passage/avalanche.h"
#include "passage/crew_rules.h"
#include "passage/day_rules.h"
#include "passage/drive.h"
#include "passage/footing.h"
#include "passage/order_rules.h"
#include "passage/single_lane.h"
#include "passage/snow_under.h"
#include "passage/visibility.h"
#include "passage/zone_rules.h"

namespace rimehaul::passage {

using units::Metres;
using units::MetresPerSecond;

namespace {

/// Parts of lines need some length; a place is looked at with a hair on each side.
constexpr Metres kHair{0.01};

geo::Polyline part_of(const geo::Polyline& line, geo::Span span) {
  return line.part({span.from - kHair, span.to + kHair});
}

std::vector<Finding> judge_load(const rig::Rig& rig, const rig::Weighed& weighed) {
  std::vector<Finding> found{judge_payload(rig, weighed), judge_seats(rig)};
  if (rig.trailer.has_value()) {
    found.push_back(judge_towed_mass(rig, weighed));
    found.push_back(judge_trailer_payload(rig));
  } else if (!(rig.load.towed <= units::Kilograms{0})) {
    found.push_back(refusal(Check::trailer_payload, "a towed load, but no trailer to carry it"));
  }
  return found;
}

/// Whether stopping within sight allows what something else does not.
bool stops_in_time(const std::vector<Finding>& findings, double allowed_share) {
  return std::ranges::any_of(findings, [&](const Finding& finding) {
    return finding.check == Check::stopping && stand_of(finding, allowed_share) == Stand::passes;
  });
}

}  // namespace

StretchJudge::StretchJudge(const Judge& judge, const Stretch& stretch)
    : judge_{&judge},
      stretch_{&stretch},
      trail_{&judge.scene().network.trails[stretch.trail]},
      course_{course_of(judge, *trail_, marks_on(judge.scene().network, stretch))},
      bend_{driven_bend(judge.rig(), stretch.line, trail_->width, judge.allowed_share())},
      reach_{line_error_of(*trail_) + judge.rig().carrier.overall_width / 2} {
  const rig::Rig& rig = judge.rig();
  if (rig.trailer.has_value()) {
    reach_ = std::max(reach_, line_error_of(*trail_) + rig.trailer->overall_width / 2);
  }
  zones_ = zones_around(judge.scene().network.zones, stretch.line, reach_ + kHair);
}

std::vector<Finding> StretchJudge::judge_whole() const {
  const Scene& scene = judge_->scene();
  const snow::DayWeather& weather = judge_->snow().weather();
  std::vector<Finding> found = judge_load(judge_->rig(), judge_->weighed());
  found.push_back(judge_trail_attributes(*trail_));
  found.push_back(judge_direction(*trail_, stretch_->way));
  found.push_back(judge_single_lane(scene.network, *stretch_, scene.rules));
  found.push_back(judge_driver_level(judge_->rig(), scene.rules));
  found.push_back(judge_passengers(judge_->rig(), scene.rules));
  found.push_back(judge_alone(judge_->rig(), scene.rules, course_.marks));
  found.push_back(judge_visibility(weather, *trail_, scene.rules));
  found.push_back(judge_wind(weather, *trail_, scene.rules));
  found.push_back(judge_rain(weather, scene.rules));
  found.push_back(judge_tow_out(scene.rules, weather.site));
  std::ranges::copy(bend_.findings, std::back_inserter(found));
  return found;
}

std::vector<Finding> StretchJudge::judge_stay(Stay stay) const {
  const Rules& rules = judge_->scene().rules;
  std::vector<Finding> found = judge_orders(trail_->name, judge_->rig().name, stay, rules);
  found.push_back(judge_hours(*trail_, stay, rules));
  found.push_back(judge_driver_hours(judge_->rig(), stay, rules));
  return found;
}

std::vector<Finding> StretchJudge::judge_marks(geo::Span part, units::Instant when) const {
  std::vector<Finding> found;
  for (const MarkOnStretch& placed : course_.marks) {
    if (placed.span.to < part.from || placed.span.from > part.to) {
      continue;
    }
    found.push_back(
        judge_mark(*placed.mark, judge_->scene().rules,
                   {judge_->weighed().total(), reach_, when, judge_->snow().weather().site}));
    found.back().at = std::clamp(placed.span.from, Metres{0}, stretch_->line.length());
  }
  return found;
}

Finding StretchJudge::judge_exposure(const Footfall& footfall, snow::SnowState state) const {
  const hazard::Exposure exposure =
      judge_->steep_ground(state.wetness)
          .exposure_of(stretch_->line, {footfall.span, line_error_of(*trail_)}, zones_);
  return judge_avalanche(exposure, judge_->snow().weather().bulletin_level, state.wetness,
                         judge_->scene().rules);
}

void StretchJudge::judge_in_snow(const Footfall& footfall, snow::SnowState state,
                                 std::vector<Finding>& found) const {
  const Rules& rules = judge_->scene().rules;
  found.push_back(judge_exposure(footfall, state));
  found.push_back(judge_passengers_in_snow(judge_->rig(), rules, state));
  for (const MarkOnStretch& placed : course_.marks) {
    const bool elsewhere =
        placed.span.to < footfall.span.from || placed.span.from > footfall.span.to;
    if (placed.mark->kind == trails::MarkKind::creek_bridge && !elsewhere) {
      found.push_back(judge_creek_bridge(*placed.mark, rules, state));
    }
  }
}

PlaceJudgement StretchJudge::judge_piece(const Footfall& footfall, const SnowThere& snow) const {
  PlaceJudgement judged = judge_place(course_, footfall, snow);
  judged.findings.push_back(
      judge_grooming(*trail_, judge_->scene().rules, judge_->snow().weather().site, snow.when));
  if (snow.state.has_value()) {
    judge_in_snow(footfall, *snow.state, judged.findings);
  } else {
    const bool bulletin = judge_->snow().weather().bulletin_level.has_value();
    judged.findings.push_back(
        unknown(Check::avalanche, bulletin ? snow_missing(course_, footfall) : kNoBulletin));
  }
  if (zones_.empty()) {
    judged.findings.push_back(kept(Check::zone, "no zone comes near"));
  } else {
    ZoneJudgement zones = judge_zones(zones_, part_of(stretch_->line, footfall.span), reach_);
    judged.findings.push_back(std::move(zones.finding));
    judged.speed = judged.speed.has_value() ? std::optional{lower_of(*judged.speed, zones.speed)}
                                            : std::nullopt;
  }
  if (judged.speed.has_value()) {
    const Metres radius = std::max(footfall.radius, judge_->rig().carrier.turning_radius);
    judged.speed = lower_of(*judged.speed, speed_of_bend(radius));
    const bool at_walking_pace = *judged.speed >= judge_->scene().rules.walking_pace;
    if (!at_walking_pace && stops_in_time(judged.findings, course_.allowed_share)) {
      judged.findings.push_back(
          refusal(Check::stopping, "power, bends or limits leave less than walking pace"));
    }
  }
  return judged;
}

Course course_of(const Judge& judge, const trails::Trail& trail, std::vector<MarkOnStretch> marks) {
  const Rules& rules = judge.scene().rules;
  return {.scene = judge.scene(),
          .rig = judge.rig(),
          .weighings = judge.weighings(),
          .tolerance = judge.tolerance(),
          .allowed_share =
              allowed_share_for(rules, judge.rig().driver_level).value_or(rules.allowed_share),
          .sight = sight_along(trail, rules, judge.snow().weather()),
          .marks = std::move(marks),
          .last_weather = judge.snow().weather().site.last_weather,
          .in_new_snow = sinkage_in_new_snow(judge.snow().weather())};
}

Metres line_error_of(const trails::Trail& trail) {
  const Metres given = trail.line_error.value_or(Metres{0});
  return given >= Metres{0} && std::isfinite(given.value()) ? given : Metres{0};
}

std::vector<Footfall> ground_under(const Scene& scene, const rig::Rig& rig,
                                   const Stretch& stretch) {
  return footfalls(scene, stretch.line, rig, line_error_of(scene.network.trails[stretch.trail]));
}

}  // namespace rimehaul::passage
