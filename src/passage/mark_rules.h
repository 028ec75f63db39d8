// Marks on a stretch of trail: what closes it there, and where a survey replaces the heights.
#pragma once

#include <optional>
#include <vector>

#include "passage/finding.h"
#include "passage/lie.h"
#include "passage/rules.h"
#include "passage/stretch.h"
#include "snow/snow.h"

namespace rimehaul::passage {

/// A mark and where it lies by chainage along a stretch; its span may reach beyond both ends.
struct MarkOnStretch {
  const trails::Mark* mark = nullptr;
  geo::Span span;
};

/// The marks that touch a stretch, in driving order.
[[nodiscard]] std::vector<MarkOnStretch> marks_on(const trails::Network& network,
                                                  const Stretch& stretch);

/// What is asked of a mark.
struct Crossing {
  units::Kilograms mass;  ///< of the whole rig
  units::Metres reach;    ///< from the drawn line to the rig's side, the line's error added
  units::Instant when;
  const snow::SiteStatus& status;
};

/// What was said to be not clear refuses, whatever its kind. Gates, radio gates, blasting, winch
/// cables and creek bridges need today's word that they are clear; cornices and drops their setback
/// from the rig's side; benches and bridges a survey no later than `when` and an inspection after
/// the last weather, of which somebody must have said when it ended; bridges carry no more than
/// their mass. Others are kept.
[[nodiscard]] Finding judge_mark(const trails::Mark& mark, const Rules& rules,
                                 const Crossing& crossing);

/// Snow that carries over a creek is driven in snow no wetter than the rules say.
[[nodiscard]] Finding judge_creek_bridge(const trails::Mark& mark, const Rules& rules,
                                         snow::SnowState state);

/// For when a survey is asked for.
struct SurveyAsked {
  units::Instant when;
  std::optional<units::Instant> last_weather;  ///< as in the day's report
};

/// Attitudes on a bench or a bridge by its survey: steepest grade and cross-slope either way, with
/// k standard deviations as error. Nothing for other marks, and when the survey does not stand.
[[nodiscard]] std::optional<Lie> surveyed_lie(const trails::Mark& mark, const Rules& rules,
                                              const SurveyAsked& asked);

}  // namespace rimehaul::passage
