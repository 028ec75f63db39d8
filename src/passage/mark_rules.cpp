// Marks on a stretch of trail: what closes it there, and where a survey replaces the heights.
#include "passage/mark_rules.h"

#include <algorithm>
#include <cmath>

namespace rimehaul::passage {

using trails::Mark;
using trails::MarkKind;
using units::Metres;
using units::Slope;

namespace {

std::string name_of(const Mark& mark) {
  return std::string{trails::words_for(mark.kind)} + " '" + mark.name + "'";
}

bool is_built(MarkKind kind) {
  return kind == MarkKind::bench || kind == MarkKind::bridge;
}

bool is_size(Slope slope) {
  return slope.ratio() >= 0.0 && std::isfinite(slope.ratio());
}

Finding judge_status(const Mark& mark) {
  if (!mark.status.has_value()) {
    return unknown(Check::mark, "today's status of " + name_of(mark));
  }
  return *mark.status == trails::DailyStatus::clear
             ? kept(Check::mark)
             : refusal(Check::mark, name_of(mark) + " is not clear today");
}

Finding judge_setback(const Mark& mark, const Rules& rules) {
  if (!mark.room.has_value()) {
    return unknown(Check::mark, "setback from " + name_of(mark));
  }
  Finding finding = *mark.room >= rules.setback
                        ? kept(Check::mark)
                        : refusal(Check::mark, "too near to " + name_of(mark));
  finding.inputs.add("setback", units::amount(*mark.room), Origin::mark)
      .add("least setback", units::amount(rules.setback), Origin::rules);
  return finding;
}

Finding judge_survey(const Mark& mark, units::Instant when) {
  if (!mark.survey.has_value()) {
    return unknown(Check::mark, "survey of " + name_of(mark));
  }
  const trails::Survey& survey = *mark.survey;
  if (!is_size(survey.steepest_grade) || !is_size(survey.steepest_cross) ||
      !is_size(survey.standard_deviation)) {
    return unknown(Check::mark, "surveyed slopes of " + name_of(mark));
  }
  if (!survey.inspected_since_weather) {
    return refusal(Check::mark, name_of(mark) + " was not inspected since the last weather");
  }
  return survey.surveyed <= when
             ? kept(Check::mark)
             : refusal(Check::mark, name_of(mark) + " bears a survey of a later date");
}

Finding judge_bridge_mass(const Mark& mark, units::Kilograms mass) {
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

Finding judge_mark(const Mark& mark, const Rules& rules, Crossing crossing) {
  if (trails::needs_daily_status(mark.kind)) {
    return judge_status(mark);
  }
  if (mark.kind == MarkKind::cornice || mark.kind == MarkKind::drop) {
    return judge_setback(mark, rules);
  }
  if (!is_built(mark.kind)) {
    return kept(Check::mark);
  }
  Finding survey = judge_survey(mark, crossing.when);
  if (mark.kind == MarkKind::bench) {
    return survey;
  }
  Finding load = judge_bridge_mass(mark, crossing.mass);
  return binds_before(survey, load) ? survey : load;
}

std::optional<Lie> surveyed_lie(const Mark& mark, const Rules& rules, units::Instant when) {
  if (!is_built(mark.kind) || stand_of(judge_survey(mark, when), 1.0) != Stand::passes) {
    return std::nullopt;
  }
  const Slope grade = mark.survey->steepest_grade;
  const Slope cross = mark.survey->steepest_cross;
  const terrain::AttitudeBox found{grade.reversed(), grade, cross.reversed(), cross};
  const double error = rules.confidence_k * mark.survey->standard_deviation.ratio();
  return Lie{found, found.widened(Slope::from_ratio(error))};
}

}  // namespace rimehaul::passage
