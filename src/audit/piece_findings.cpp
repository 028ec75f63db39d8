#include "audit/piece_findings.h"

#include <algorithm>
#include <cmath>
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

/// From the nose entering to the tail leaving.
units::Seconds staying(const passage::LegJudgement& judged, const rig::Rig& rig) {
  return judged.time + passage::overall_length(rig) / judged.slowest;
}

}  // namespace

PieceFindings::PieceFindings(const passage::Judge& judge, const MeasuredLeg& leg,
                             units::Instant when)
    : judge_{&judge},
      leg_{&leg},
      when_{when},
      asked_{judge, leg.stretch},
      judged_{judge.judge_over(leg.stretch, leg.footfalls, when)},
      hours_{when} {
  for (Finding& finding : asked_.judge_whole()) {
    (is_bend(finding) ? placed_ : whole_).push_back(std::move(finding));
  }
  const units::Seconds lasting = staying(judged_, judge.rig());
  if (std::isfinite(lasting.value())) {
    hours_.push_back(units::after(when, lasting));
  }
}

std::vector<std::optional<snow::SnowState>> PieceFindings::states_at(
    const passage::Footfall& footfall) const {
  std::vector<std::optional<snow::SnowState>> states;
  for (const units::Instant hour : hours_) {
    const passage::SnowQuestion question{judge_->snow(), leg_->stretch.line, judge_->tolerance(),
                                         hour};
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
    std::ranges::move(asked_.judge_piece(footfall, {state, when_}).findings,
                      std::back_inserter(found));
  }
  std::ranges::move(asked_.judge_marks(footfall.span, when_), std::back_inserter(found));
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

std::vector<Finding> PieceFindings::only_of_whole_leg(
    const std::vector<std::vector<Finding>>& of_footfalls) const {
  std::vector<Finding> lacking;
  for (const Finding& finding : judged_.findings) {
    const auto tells = [&](const Finding& piece) {
      return piece.check == finding.check && exceeds(passage::stand_of(piece, allowed_share()));
    };
    const bool told = std::ranges::any_of(
        of_footfalls, [&](const auto& found) { return std::ranges::any_of(found, tells); });
    if (exceeds(passage::stand_of(finding, allowed_share())) && !told) {
      lacking.push_back(finding);
    }
  }
  return lacking;
}

}  // namespace rimehaul::audit
