#include "audit/piece_findings.h"

#include <algorithm>
#include <utility>

#include "passage/snow_under.h"

namespace rimehaul::audit {

using passage::Check;
using passage::Finding;
using units::Metres;

namespace {

bool is_bend(const Finding& finding) {
  return finding.check == Check::turning || finding.check == Check::off_tracking;
}

}  // namespace

PieceFindings::PieceFindings(const passage::Judge& judge, const MeasuredLeg& leg,
                             std::vector<units::Instant> hours)
    : judge_{&judge}, leg_{&leg}, hours_{std::move(hours)}, asked_{judge, leg.stretch} {
  for (Finding& finding : asked_.judge_whole()) {
    (is_bend(finding) ? placed_ : whole_).push_back(std::move(finding));
  }
}

std::vector<std::optional<snow::SnowState>> PieceFindings::states_at(
    const passage::Footfall& footfall) const {
  std::vector<std::optional<snow::SnowState>> states;
  for (const units::Instant hour : hours_) {
    const passage::SnowQuestion question{
        judge_->snow(), leg_->stretch.line, judge_->tolerance(), hour,
        passage::is_groomed(judge_->scene().network.trails[leg_->stretch.trail])};
    for (const auto& state : passage::snow_under(footfall, question)) {
      if (std::ranges::find(states, state) == states.end()) {
        states.push_back(state);
      }
    }
  }
  return states;
}

std::vector<Finding> PieceFindings::at(std::size_t index) const {
  const passage::Footfall& footfall = leg_->footfalls[index];
  std::vector<Finding> found;
  for (const auto& state : states_at(footfall)) {
    std::ranges::move(asked_.judge_piece(footfall, {state, hours_.front()}).findings,
                      std::back_inserter(found));
  }
  std::ranges::move(asked_.judge_marks(footfall.span, hours_.front()), std::back_inserter(found));
  std::ranges::copy(whole_, std::back_inserter(found));
  const bool last = index + 1 == leg_->footfalls.size();
  for (const Finding& bend : placed_) {
    if (footfall.span.from <= bend.at && (bend.at < footfall.span.to || last)) {
      found.push_back(bend);
    }
  }
  for (Finding& finding : found) {
    finding.at = footfall.span.from;
  }
  return found;
}

}  // namespace rimehaul::audit
