#include "card/explanation.h"

#include <algorithm>
#include <cstdint>
#include <utility>

#include "base/require.h"
#include "card/explained_sources.h"
#include "card/notices.h"
#include "card/words.h"
#include "passage/snow_under.h"
#include "passage/stretch_judge.h"

namespace rimehaul::card {

namespace {

using passage::Judge;

const trails::Leg& leg_of(const Judge& judge, trails::LegId id) {
  return judge.scene().network.legs[static_cast<std::uint32_t>(id)];
}

/// The leg as drawn that holds a place of a trail, to a millimetre: cuts and lengths are sums of
/// the same numbers in another order.
trails::LegId leg_at(const Judge& judge, const TrailPlace& place) {
  const units::Metres slack{1e-3};
  const auto& legs = judge.scene().network.legs;
  for (std::uint32_t i = 0; i < legs.size(); i += 2) {
    const trails::Leg& leg = legs[i];
    if (leg.trail == place.trail && leg.span.from - slack <= place.at &&
        place.at <= leg.span.to + slack) {
      return trails::LegId{i};
    }
  }
  base::require(/*holds=*/false, "the place to be explained lies on no leg");
  return {};
}

std::size_t footfall_at(const std::vector<passage::Footfall>& footfalls, units::Metres at) {
  base::require(!footfalls.empty(), "a leg has pieces");
  const auto found = std::ranges::find_if(
      footfalls, [&](const passage::Footfall& footfall) { return at <= footfall.span.to; });
  return found == footfalls.end() ? footfalls.size() - 1
                                  : static_cast<std::size_t>(found - footfalls.begin());
}

/// The verdict on findings, with the loads under which it would be another.
ExplainedVerdict verdict_on(const std::vector<passage::Finding>& findings, const Judge& judge,
                            const passage::OpenWith& open) {
  ExplainedVerdict told;
  told.verdict = passage::verdict_of(findings, judge.allowed_share());
  const bool closed = told.verdict == passage::Verdict::closed;
  if (closed && passage::load_may_open(findings, judge.allowed_share())) {
    told.loads = passage::loads_that_open(judge.rig(), open);
    told.verdict = passage::verdict_with_loads(told.verdict, told.loads);
  }
  if (told.verdict == passage::Verdict::restricted) {
    for (const passage::Finding& finding : findings) {
      told.decision += told.decision.empty() || finding.asks.empty() ? "" : "; ";
      told.decision += finding.asks;
    }
  }
  return told;
}

ExplainedLeg explain_leg(const Judge& judge, trails::LegId id,
                         const passage::LegJudgement& judged) {
  const passage::LegOpenWith open{judge, id, judged.hours.asked.front()};
  return {verdict_on(judged.findings, judge, open), judged.bind(), judged.length};
}

/// One place on a leg with all that is asked of it.
class PlaceTeller {
 public:
  PlaceTeller(const Judge& judge, const passage::Stretch& stretch,
              const passage::Footfall& footfall)
      : judge_{judge},
        stretch_{stretch},
        footfall_{footfall},
        trail_{judge.scene().network.trails[stretch.trail]},
        course_{
            passage::course_of(judge, trail_, passage::marks_on(judge.scene().network, stretch))} {}

  [[nodiscard]] passage::Lies ground(units::Instant when) const {
    return passage::lies_at(course_, footfall_, when);
  }

  [[nodiscard]] std::vector<std::optional<snow::SnowState>> snow(
      const passage::HoursOnLeg& hours) const {
    std::vector<std::optional<snow::SnowState>> met;
    for (const units::Instant when : hours.asked) {
      const passage::SnowQuestion question{judge_.snow(), stretch_.line, judge_.tolerance(), when,
                                           passage::is_groomed(trail_)};
      for (const auto& state : passage::snow_under(footfall_, question)) {
        if (std::ranges::find(met, state) == met.end()) {
          met.push_back(state);
        }
      }
    }
    return met;
  }

  [[nodiscard]] ExplainedFinding explained(passage::PlaceFinding found) const {
    ExplainedFinding explained;
    explained.stand = passage::stand_of(found.finding, course_.allowed_share);
    explained.formula =
        found.finding.formula.empty()
            ? passage::formula_of(found.finding.check, passage::towing_of(judge_.rig()))
            : found.finding.formula;
    explained.source = source_of(found.finding, judge_.rig());
    explained.snow = found.snow;
    explained.when = found.when;
    explained.besides =
        passage::besides(found.finding, {course_, trail_, judge_.snow().weather(),
                                         footing(found.snow, found.when, found.finding.tank)});
    explained.finding = std::move(found.finding);
    return explained;
  }

  /// Once for every snow and tank that one of these came out in.
  [[nodiscard]] std::vector<SharedNumbers> shared(
      const std::vector<ExplainedFinding>& findings) const {
    std::vector<SharedNumbers> shared;
    for (const ExplainedFinding& one : findings) {
      const passage::Tank tank = one.finding.tank;
      const bool is_new =
          one.snow && std::ranges::none_of(shared, [&](const SharedNumbers& numbers) {
            return numbers.snow == *one.snow && numbers.tank == tank;
          });
      const auto there = is_new ? footing(one.snow, one.when, tank) : std::nullopt;
      if (there) {
        shared.push_back({*one.snow, tank, passage::shared_workings(*there)});
      }
    }
    return shared;
  }

 private:
  [[nodiscard]] std::optional<passage::Footing> footing(const std::optional<snow::SnowState>& snow,
                                                        units::Instant when,
                                                        passage::Tank tank) const {
    return passage::footing_at(course_, footfall_, {snow, when}, tank);
  }

  const Judge& judge_;
  const passage::Stretch& stretch_;
  const passage::Footfall& footfall_;
  const trails::Trail& trail_;
  passage::Course course_;
};

void mark_binding(std::vector<ExplainedFinding>& findings) {
  const auto binding =
      std::ranges::min_element(findings, passage::binds_before, &ExplainedFinding::finding);
  if (binding != findings.end()) {
    binding->binds = true;
  }
}

ExplainedWay explain_way(const Judge& judge, trails::LegId id, units::Metres at,
                         units::Instant when, WhatIf asked) {
  const passage::Stretch stretch = judge.stretch_of(id);
  const auto footfalls = passage::ground_under(judge.scene(), judge.rig(), stretch);
  const std::size_t index = footfall_at(footfalls, at);
  const passage::Footfall& footfall = footfalls[index];
  const passage::LegJudgement judged = judge.judge_over(stretch, footfalls, when);
  const PlaceTeller teller{judge, stretch, footfall};
  ExplainedWay way;
  way.way = stretch.way;
  way.from = name_of(judge.scene().network, leg_of(judge, id).from);
  way.to = name_of(judge.scene().network, leg_of(judge, id).to);
  way.at = at;
  way.heading = footfall.heading;
  way.piece = footfall.span;
  way.ground = teller.ground(when);
  way.snow = teller.snow(judged.hours);
  std::vector<passage::Finding> findings;
  for (passage::PlaceFinding& found : judge.findings_at(stretch, footfall, judged.hours)) {
    findings.push_back(found.finding);
    way.findings.push_back(teller.explained(std::move(found)));
  }
  mark_binding(way.findings);
  way.shared = teller.shared(way.findings);
  way.verdict =
      verdict_on(findings, judge, passage::PlaceOpenWith{judge, {stretch, footfalls, index}, when});
  if (asked == WhatIf::yes) {
    way.what_if = what_if(judge, {stretch, footfall, judged.hours});
  }
  way.leg = explain_leg(judge, id, judged);
  return way;
}

/// All that may be met on any of the ways, each once.
std::vector<std::optional<snow::SnowState>> snow_on(const std::vector<ExplainedWay>& ways) {
  std::vector<std::optional<snow::SnowState>> met;
  for (const ExplainedWay& way : ways) {
    for (const auto& state : way.snow) {
      if (std::ranges::find(met, state) == met.end()) {
        met.push_back(state);
      }
    }
  }
  return met;
}

std::string snow_words(const std::vector<std::optional<snow::SnowState>>& met) {
  std::string text;
  for (const auto& state : met) {
    text += (text.empty() ? "" : "; ") + (state ? words::snow_state(*state) : "unknown");
  }
  return text.empty() ? "unknown" : text;
}

}  // namespace

Explanation explain(const Judge& judge, const TrailPlace& place, Directions directions,
                    units::Instant when, WhatIf what_if) {
  const passage::Scene& scene = judge.scene();
  const trails::LegId drawn = leg_at(judge, place);
  const trails::Leg& leg = leg_of(judge, drawn);
  const units::Metres forward_at = place.at - leg.span.from;
  Explanation explanation;
  explanation.site = scene.site_name;
  explanation.trail = scene.network.trails[place.trail].name;
  explanation.at = place.at;
  explanation.place = scene.network.trails[place.trail].line.at(place.at);
  explanation.map_frame = scene.frame.horizontal_name;
  explanation.height = scene.heights.at(explanation.place);
  explanation.rig = judge.rig().name;
  explanation.snow_told_by = judge.snow().told_by();
  explanation.when = when;
  explanation.local_clock = scene.rules.local_clock;
  explanation.allowed_share =
      passage::allowed_share_for(scene.rules, judge.rig().driver_level).value_or(0.0);
  explanation.tolerance = judge.tolerance();
  explanation.confidence_k = scene.rules.confidence_k;
  explanation.sigma = terrain::gradient_sigma(scene.heights.frame(), scene.trust);
  if (directions != Directions::backward) {
    explanation.ways.push_back(explain_way(judge, drawn, forward_at, when, what_if));
  }
  if (directions != Directions::forward) {
    explanation.ways.push_back(explain_way(judge, trails::opposite_of(drawn),
                                           leg.line.length() - forward_at, when, what_if));
  }
  const auto met = snow_on(explanation.ways);
  explanation.snow = snow_words(met);
  explanation.sources = sources_of(judge, met);
  return explanation;
}

}  // namespace rimehaul::card
