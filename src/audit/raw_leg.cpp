#include "audit/raw_leg.h"

#include "base/require.h"
#include "passage/stretch_judge.h"

namespace rimehaul::audit {

using trails::Way;
using units::Metres;

std::variant<RawLeg, std::string> find_raw_leg(const trails::Network& network,
                                               const PromisedLeg& promised) {
  const auto index = network.trail_named(promised.trail);
  if (!index.has_value()) {
    return "there is no trail '" + promised.trail + "'";
  }
  const trails::Trail& trail = network.trails[*index];
  const geo::Span span = promised.span;
  const bool on_trail =
      Metres{0} <= span.from && span.from < span.to && span.to <= trail.line.length() + kTouching;
  if (!on_trail) {
    return "its chainages do not lie on trail '" + promised.trail + "'";
  }
  const geo::Polyline as_drawn = trail.line.part(span);
  return RawLeg{.stretch = {.trail = *index,
                            .span = span,
                            .way = promised.way,
                            .line = promised.way == Way::as_drawn ? as_drawn : as_drawn.reversed()},
                .line_error = passage::line_error_of(trail)};
}

bool touch(const Joint& joint) {
  return geo::distance(joint.before.stretch.line.points().back(),
                       joint.after.stretch.line.points().front()) <= kTouching;
}

bool turns_back(const Joint& joint) {
  return joint.before.stretch.trail == joint.after.stretch.trail &&
         joint.before.stretch.way != joint.after.stretch.way;
}

Run joined(std::span<const RawLeg> legs) {
  base::require(!legs.empty(), "a run has no legs");
  std::vector<geo::MapPoint> points;
  std::vector<std::size_t> first_points;
  for (const RawLeg& leg : legs) {
    const auto more = leg.stretch.line.points();
    const bool repeats = !points.empty() && points.back() == more.front();
    first_points.push_back(points.size() - (repeats ? 1 : 0));
    points.insert(points.end(), more.begin() + (repeats ? 1 : 0), more.end());
  }
  Run run{.line = geo::Polyline{points}, .starts = {}, .line_errors = {}};
  for (std::size_t i = 0; i < legs.size(); ++i) {
    run.starts.push_back(run.line.chainage(first_points[i]));
    run.line_errors.push_back(legs[i].line_error);
  }
  return run;
}

}  // namespace rimehaul::audit
