#include "passage/single_lane.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace rimehaul::passage {

using trails::MarkKind;
using units::Metres;

namespace {

bool lets_pass(MarkKind kind) {
  return kind == MarkKind::passing_place || kind == MarkKind::turning_room ||
         kind == MarkKind::radio_gate;
}

bool is_known(const geo::Span& span) {
  return std::isfinite(span.from.value()) && std::isfinite(span.to.value());
}

/// The parts of a trail where rigs can pass or are let in one at a time, in order, and its end.
std::vector<geo::Span> passing_spans(const trails::Network& network, std::size_t trail) {
  const Metres length = network.trails[trail].line.length();
  std::vector<geo::Span> spans{geo::Span{length, length}};
  for (const trails::Mark& mark : network.marks) {
    if (mark.trail == network.trails[trail].name && lets_pass(mark.kind) && is_known(mark.span)) {
      spans.push_back(mark.span);
    }
  }
  std::ranges::sort(spans, {}, &geo::Span::from);
  return spans;
}

}  // namespace

Metres longest_run_without_passing(const trails::Network& network, const Stretch& stretch) {
  const trails::Trail& trail = network.trails[stretch.trail];
  const bool one_way = trail.direction && *trail.direction != trails::AllowedDirection::both;
  if (one_way || trail.lanes.value_or(1) >= 2) {
    return Metres{0};
  }
  Metres longest{0};
  Metres passed{0};
  for (const geo::Span& span : passing_spans(network, stretch.trail)) {
    const bool is_entered = passed < stretch.span.to && span.from > stretch.span.from;
    if (is_entered) {
      longest = std::max(longest, span.from - passed);
    }
    passed = std::max(passed, span.to);
  }
  return longest;
}

Finding judge_single_lane(const trails::Network& network, const Stretch& stretch,
                          const Rules& rules) {
  if (!rules.longest_single_lane.has_value()) {
    return kept(Check::single_lane, "the rules set no most");
  }
  const Metres longest = longest_run_without_passing(network, stretch);
  Finding finding =
      held_to(Check::single_lane, units::amount(longest), units::amount(*rules.longest_single_lane),
              "a single lane driven both ways with nowhere to pass");
  finding.inputs.add("longest run without passing", units::amount(longest), Origin::trail)
      .add("longest allowed", units::amount(*rules.longest_single_lane), Origin::rules);
  return finding;
}

}  // namespace rimehaul::passage
