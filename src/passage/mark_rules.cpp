// Marks on a stretch of trail: what closes it there, and where a survey replaces the heights.
#include "passage/mark_rules.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace rimehaul::passage {

using trails::Mark;
using trails::MarkKind;
using units::Metres;
using units::Slope;

namespace {

std::string name_of(const Mark& mark) {
  return std::string{trails::words_for(mark.kind)} + " '" + mark.name + "'";
}

bool is_size(Slope slope) {
  return slope.ratio() >= 0.0 && std::isfinite(slope.ratio());
}

Finding judge_status(const Mark& mark, const Crossing& crossing) {
  const std::optional<bool> clear = crossing.status.is_clear(mark.name, crossing.when);
  if (clear.has_value() && !*clear) {
    return refusal(Check::mark, name_of(mark) + " is not clear today");
  }
  return clear.has_value() || !trails::needs_daily_status(mark.kind)
             ? kept(Check::mark, "told clear, or of a kind that needs no telling")
             : unknown(Check::mark, "today's status of " + name_of(mark));
}

Finding judge_setback(const Mark& mark, const Rules& rules, Metres reach) {
  if (!mark.room.has_value()) {
    return unknown(Check::mark, "setback from " + name_of(mark));
  }
  const Metres least = mark.kind == MarkKind::cornice ? rules.cornice_setback : rules.setback;
  Finding finding = held_to(Check::mark, units::amount(least), units::amount(*mark.room - reach),
                            "too near to " + name_of(mark));
  finding.inputs.add("setback of the line", units::amount(*mark.room), Origin::mark)
      .add("line to the rig's side, the line's error added", units::amount(reach), Origin::derived)
      .add("least setback", units::amount(least), Origin::rules);
  return finding;
}

/// An inspection counts when it is proven later than the last weather.
Finding judge_inspection(const Mark& mark, const SurveyAsked& asked) {
  const std::optional<units::Instant>& inspected = mark.survey->inspected;
  if (!inspected) {
    return unknown(Check::mark, "when " + name_of(mark) + " was last inspected");
  }
  if (!asked.last_weather) {
    return unknown(Check::mark,
                   "when the last weather ended, for the inspection of " + name_of(mark));
  }
  if (!(*asked.last_weather < *inspected)) {
    return refusal(Check::mark, name_of(mark) + " was not inspected since the last weather");
  }
  return *inspected <= asked.when
             ? kept(Check::mark, "surveyed, and looked at since the last weather")
             : refusal(Check::mark, name_of(mark) + " bears an inspection of a later date");
}

Finding judge_survey(const Mark& mark, const SurveyAsked& asked) {
  if (!mark.survey.has_value()) {
    return unknown(Check::mark, "survey of " + name_of(mark));
  }
  const trails::Survey& survey = *mark.survey;
  if (!is_size(survey.steepest_grade) || !is_size(survey.steepest_cross) ||
      !is_size(survey.standard_deviation)) {
    return unknown(Check::mark, "surveyed slopes of " + name_of(mark));
  }
  return survey.surveyed <= asked.when
             ? judge_inspection(mark, asked)
             : refusal(Check::mark, name_of(mark) + " bears a survey of a later date");
}

Finding judge_carried_mass(const Mark& mark, units::Kilograms mass) {
  if (!mark.most_mass.has_value()) {
    return unknown(Check::mark, "most mass on " + name_of(mark));
  }
  Finding finding = compare(Check::mark, units::amount(mass), units::amount(*mark.most_mass));
  finding.inputs.add("mass of the rig", units::amount(mass), Origin::load)
      .add("most mass", units::amount(*mark.most_mass), Origin::mark);
  return finding;
}

}  // namespace

std::vector<MarkOnStretch> marks_on(const trails::Network& network, const Stretch& stretch) {
  std::vector<MarkOnStretch> found;
  for (const Mark& mark : network.marks) {
    // Asked as "is it proven elsewhere", so that a place that is not a number counts as here.
    const bool elsewhere = mark.trail != network.trails[stretch.trail].name ||
                           mark.span.from > stretch.span.to || mark.span.to < stretch.span.from;
    if (!elsewhere) {
      const geo::Span span =
          stretch.way == trails::Way::as_drawn
              ? geo::Span{mark.span.from - stretch.span.from, mark.span.to - stretch.span.from}
              : geo::Span{stretch.span.to - mark.span.to, stretch.span.to - mark.span.from};
      found.push_back({&mark, span});
    }
  }
  std::ranges::stable_sort(found, {}, [](const MarkOnStretch& placed) { return placed.span.from; });
  return found;
}

Finding judge_mark(const Mark& mark, const Rules& rules, const Crossing& crossing) {
  Finding worst = judge_status(mark, crossing);
  const auto also = [&worst](Finding other) {
    if (binds_before(other, worst) || tells_more(other, worst)) {
      worst = std::move(other);
    }
  };
  if (mark.kind == MarkKind::cornice || mark.kind == MarkKind::drop) {
    also(judge_setback(mark, rules, crossing.reach));
  }
  if (trails::needs_survey(mark.kind)) {
    also(judge_survey(mark, {crossing.when, crossing.status.last_weather}));
  }
  if (trails::carries_a_mass(mark.kind)) {
    also(judge_carried_mass(mark, crossing.mass));
  }
  return worst;
}

Finding judge_creek_bridge(const Mark& mark, const Rules& rules, snow::SnowState state) {
  return state.wetness <= rules.wettest_creek_bridge
             ? kept(Check::mark, "the snow is dry enough for a snow bridge")
             : refusal(Check::mark, name_of(mark) + " is not driven in snow wetter than " +
                                        snow::words_for(rules.wettest_creek_bridge));
}

std::optional<Lie> surveyed_lie(const Mark& mark, const Rules& rules, const SurveyAsked& asked) {
  if (!trails::needs_survey(mark.kind) ||
      stand_of(judge_survey(mark, asked), 1.0) != Stand::passes) {
    return std::nullopt;
  }
  const Slope grade = mark.survey->steepest_grade;
  const Slope cross = mark.survey->steepest_cross;
  const terrain::AttitudeBox found{grade.reversed(), grade, cross.reversed(), cross};
  const double error = rules.confidence_k * mark.survey->standard_deviation.ratio();
  return Lie{found, found.widened(Slope::from_ratio(error))};
}

}  // namespace rimehaul::passage
