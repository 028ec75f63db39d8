#include "card/explanation.h"

#include <algorithm>
#include <cstdint>

#include "base/require.h"
#include "card/figures.h"
#include "card/notices.h"
#include "card/words.h"
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

const passage::Footfall& footfall_at(const std::vector<passage::Footfall>& footfalls,
                                     units::Metres at) {
  base::require(!footfalls.empty(), "a leg has pieces");
  const auto found = std::ranges::find_if(
      footfalls, [&](const passage::Footfall& footfall) { return at <= footfall.span.to; });
  return found == footfalls.end() ? footfalls.back() : *found;
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

ExplainedLeg explain_leg(const Judge& judge, trails::LegId id, units::Instant when) {
  const passage::LegJudgement judged = judge.judge(id, when);
  return {verdict_on(judged.findings, judge, passage::LegOpenWith{judge, id, when}), judged.bind(),
          judged.length};
}

ExplainedWay explain_way(const Judge& judge, trails::LegId id, units::Metres at,
                         units::Instant when) {
  const passage::Stretch stretch = judge.stretch_of(id);
  const auto footfalls = passage::ground_under(judge.scene(), judge.rig(), stretch);
  const passage::Footfall& footfall = footfall_at(footfalls, at);
  const double allowed =
      passage::allowed_share_for(judge.scene().rules, judge.rig().driver_level).value_or(0.0);
  const std::vector<passage::Finding> findings = judge.findings_at(stretch, footfall, when);
  ExplainedWay way;
  way.way = stretch.way;
  way.from = name_of(judge.scene().network, leg_of(judge, id).from);
  way.to = name_of(judge.scene().network, leg_of(judge, id).to);
  way.at = at;
  way.heading = footfall.heading;
  way.piece = footfall.span;
  way.ground = footfall.carrier;
  way.verdict =
      verdict_on(findings, judge, passage::PlaceOpenWith{judge, {stretch, footfall}, when});
  const passage::Finding* binding = nullptr;
  for (const passage::Finding& finding : findings) {
    if (binding == nullptr || passage::binds_before(finding, *binding)) {
      binding = &finding;
    }
  }
  for (const passage::Finding& finding : findings) {
    way.findings.push_back({finding, passage::stand_of(finding, allowed), &finding == binding});
  }
  way.leg = explain_leg(judge, id, when);
  return way;
}

void add_rating(std::string_view name, const std::optional<rig::Rating>& rating,
                std::vector<std::string>& sources) {
  std::string line = std::string{name} + " rating: ";
  if (rating) {
    line += amount_text(units::amount(rating->steepest), Side::capacity) + ", " +
            rig::words_for(rating->provenance.standing) + ": " + rating->provenance.source;
  } else {
    line += "none given, so closed";
  }
  sources.push_back(line);
}

std::vector<std::string> sources_of(const Judge& judge,
                                    const std::optional<snow::SnowState>& state) {
  std::vector<std::string> sources;
  if (state) {
    if (const auto& row = judge.grip().row(*state)) {
      sources.push_back("grip of " + words::snow_state(*state) + ": " +
                        std::string{words::grip_standing(row->standing)} + ": " + row->source);
    }
  }
  const rig::Rig& rig = judge.rig();
  const rig::SlopeRatings& ratings = rig::ratings_in_force(rig);
  add_rating("climb", ratings.climb, sources);
  add_rating("descent", ratings.descent, sources);
  add_rating("cross-slope", ratings.cross, sources);
  if (rig.trailer) {
    const auto add_given = [&](std::string_view name, const std::optional<rig::Rating>& rating) {
      if (rating) {
        add_rating(name, rating, sources);
      }
    };
    add_given("trailer climb", rig.trailer->climb);
    add_given("trailer descent", rig.trailer->descent);
    add_given("trailer cross-slope", rig.trailer->cross);
  }
  return sources;
}

std::optional<snow::SnowState> snow_at(const Judge& judge, trails::LegId id, units::Metres at,
                                       units::Instant when) {
  const passage::Stretch stretch = judge.stretch_of(id);
  const auto footfalls = passage::ground_under(judge.scene(), judge.rig(), stretch);
  const passage::Footfall& footfall = footfall_at(footfalls, at);
  return footfall.height ? judge.snow().at({*footfall.height, footfall.aspect, when})
                         : std::nullopt;
}

}  // namespace

Explanation explain(const Judge& judge, const TrailPlace& place, Directions directions,
                    units::Instant when) {
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
  const auto state = snow_at(judge, drawn, forward_at, when);
  explanation.snow = state ? words::snow_state(*state) : "unknown";
  explanation.snow_told_by = judge.snow().told_by();
  explanation.when = when;
  explanation.utc_offset_minutes = scene.rules.utc_offset_minutes;
  explanation.allowed_share =
      passage::allowed_share_for(scene.rules, judge.rig().driver_level).value_or(0.0);
  explanation.tolerance = judge.tolerance();
  explanation.sources = sources_of(judge, state);
  if (directions != Directions::backward) {
    explanation.ways.push_back(explain_way(judge, drawn, forward_at, when));
  }
  if (directions != Directions::forward) {
    explanation.ways.push_back(
        explain_way(judge, trails::opposite_of(drawn), leg.line.length() - forward_at, when));
  }
  return explanation;
}

}  // namespace rimehaul::card
