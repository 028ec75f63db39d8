#include "audit/slope_audit.h"

#include <algorithm>
#include <array>
#include <optional>
#include <utility>

#include "audit/exceedance_runs.h"
#include "audit/piece_findings.h"
#include "base/require.h"

namespace rimehaul::audit {

using passage::Finding;
using passage::Stand;
using trails::LegId;
using trails::Way;
using units::Metres;

namespace {

/// Chainages of a leg's line as chainages of its trail as drawn.
geo::Span on_trail(const passage::Stretch& stretch, const geo::Span& span) {
  if (stretch.way == Way::as_drawn) {
    return {stretch.span.from + span.from, stretch.span.from + span.to};
  }
  return {stretch.span.to - span.to, stretch.span.to - span.from};
}

Metres middle_of(const geo::Span& span) {
  return span.from + (span.to - span.from) / 2;
}

/// What a load takes of its ratings is the same everywhere.
bool is_of_load(passage::Check check) {
  using enum passage::Check;
  return check == payload || check == trailer_payload || check == towed_mass || check == seats;
}

/// What binds at a place; a load that keeps within what is allowed tells nothing of the ground.
const Finding& binding_of(const std::vector<Finding>& findings, double allowed_share) {
  const std::size_t none = findings.size();
  std::size_t binding = none;
  for (std::size_t i = 0; i < findings.size(); ++i) {
    const bool of_place =
        !is_of_load(findings[i].check) || exceeds(passage::stand_of(findings[i], allowed_share));
    if (of_place && (binding == none || passage::binds_before(findings[i], findings[binding]))) {
      binding = i;
    }
  }
  base::require(binding != none, "every place is judged");
  return findings[binding];
}

/// The share of a check among findings, as the worst of them has it.
std::optional<double> share_of(passage::Check check, const std::vector<Finding>& findings) {
  const Finding* worst = nullptr;
  for (const Finding& finding : findings) {
    const bool asked = finding.check == check && finding.refused.empty();
    if (asked && (worst == nullptr || passage::binds_before(finding, *worst))) {
      worst = &finding;
    }
  }
  return worst != nullptr ? worst->share : std::nullopt;
}

/// Where a piece of the trail comes from.
struct Origin {
  std::size_t leg = 0;
  std::size_t footfall = 0;
};

class TrailWalk {
 public:
  TrailWalk(const MeasuredTrail& trail, const AuditJudges& judges, units::Instant when)
      : trail_{trail}, judges_{judges}, when_{when}, runs_{trail.which.trail, trail.which.way} {
    audit_.which = trail.which;
  }

  TrailAudit walk() && {
    for (std::size_t leg = 0; leg < trail_.legs.size(); ++leg) {
      if (leg > 0) {
        judge_joint(leg);
      }
      walk_leg(leg);
    }
    for (const GradedPiece& piece : audit_.pieces) {
      audit_.lengths.add(piece);
    }
    for (const Run& run : runs_.runs()) {
      audit_.exceedances.push_back(placed(run.told, run.worst_piece.number));
    }
    const bool forward = trail_.which.way == Way::as_drawn;
    std::ranges::stable_sort(audit_.exceedances, [&](const auto& one, const auto& other) {
      return forward ? one.span.from < other.span.from : one.span.to > other.span.to;
    });
    keep_tightest();
    return std::move(audit_);
  }

 private:
  void walk_leg(std::size_t index) {
    const MeasuredLeg& leg = trail_.legs[index];
    const passage::LegJudgement judged =
        judges_.judge.judge_over(leg.stretch, leg.footfalls, when_);
    hours_.push_back(judged.hours.asked);
    const PieceFindings asked{judges_.judge, leg, hours_.back()};
    const std::size_t first = origins_.size();
    told_.fill(false);
    for (std::size_t i = 0; i < leg.footfalls.size(); ++i) {
      note(Origin{index, i}, asked.at(i), asked.allowed_share());
    }
    for (const Finding& finding : judged.findings) {
      const Stand stand = passage::stand_of(finding, asked.allowed_share());
      if (exceeds(stand) && !told_.at(static_cast<std::size_t>(finding.check))) {
        close_all_from(first, finding, asked.allowed_share());
      }
    }
  }

  /// What closes a leg though none of its footfalls tells: the hours that the whole drive keeps or
  /// not, snow that turns on the way.
  void close_all_from(std::size_t first, const Finding& finding, double allowed_share) {
    const Stand stand = passage::stand_of(finding, allowed_share);
    for (std::size_t i = first; i < audit_.pieces.size(); ++i) {
      GradedPiece& piece = audit_.pieces[i];
      runs_.offer({i, piece.span}, finding, stand);
      const Band band = band_of(finding, allowed_share);
      if (band > piece.band) {
        piece = {.span = piece.span,
                 .band = band,
                 .share = finding.share,
                 .check = finding.check,
                 .waits = false};
      }
      piece.waits = false;
    }
    std::erase_if(open_, [&](const Run& run) { return run.worst_piece.number >= first; });
  }

  void note(const Origin& origin, const std::vector<Finding>& found, double allowed_share) {
    const MeasuredLeg& leg = trail_.legs[origin.leg];
    const PieceOfTrail piece{origins_.size(),
                             on_trail(leg.stretch, leg.footfalls[origin.footfall].span)};
    origins_.push_back(origin);
    bool asks = false;
    for (const Finding& finding : found) {
      const Stand stand = passage::stand_of(finding, allowed_share);
      asks = asks || stand == Stand::asks;
      if (exceeds(stand)) {
        runs_.offer(piece, finding, stand);
        told_.at(static_cast<std::size_t>(finding.check)) = true;
      }
    }
    const Finding& binding = binding_of(found, allowed_share);
    const Stand stand = passage::stand_of(binding, allowed_share);
    audit_.pieces.push_back({.span = piece.span,
                             .band = band_of(binding, allowed_share),
                             .share = binding.share,
                             .check = binding.check,
                             .waits = asks && !exceeds(stand)});
    if (!exceeds(stand) && binding.share.has_value() && *binding.share > 0.0) {
      open_.push_back({piece,
                       {.trail = trail_.which.trail,
                        .way = trail_.which.way,
                        .on = On::trail,
                        .span = piece.span,
                        .at = middle_of(piece.span),
                        .place = {},
                        .finding = binding,
                        .stand = stand,
                        .found_share = {}}});
    }
  }

  /// A rig that drives straight on stands on both legs at once, and takes the bend between them.
  void judge_joint(std::size_t after) {
    const LegId from = trail_.legs[after - 1].leg;
    const LegId to = trail_.legs[after].leg;
    const double allowed = judges_.judge.allowed_share();
    const passage::Stretch& stretch = trail_.legs[after].stretch;
    const Metres at = stretch.way == Way::as_drawn ? stretch.span.from : stretch.span.to;
    std::optional<std::vector<Finding>> measured;
    for (const Finding& finding : judges_.judge.judge_turn(from, to, when_).findings) {
      const Stand stand = passage::stand_of(finding, allowed);
      if (!exceeds(stand)) {
        continue;
      }
      if (!measured.has_value()) {
        measured = judges_.as_measured.judge_turn(from, to, when_).findings;
      }
      audit_.exceedances.push_back({.trail = trail_.which.trail,
                                    .way = trail_.which.way,
                                    .on = On::joint,
                                    .span = {at, at},
                                    .at = at,
                                    .place = stretch.line.points().front(),
                                    .finding = finding,
                                    .stand = stand,
                                    .found_share = share_of(finding.check, *measured)});
    }
  }

  /// The place of the worst piece, and what is found there without errors.
  [[nodiscard]] AuditedPlace placed(AuditedPlace told, std::size_t piece) {
    const Origin& origin = origins_[piece];
    const MeasuredLeg& leg = trail_.legs[origin.leg];
    const passage::Footfall& footfall = leg.footfalls[origin.footfall];
    told.at = middle_of(on_trail(leg.stretch, footfall.span));
    told.place = leg.stretch.line.at(middle_of(footfall.span));
    if (told.finding.share.has_value()) {
      told.found_share = share_of(told.finding.check, measured_at(origin));
    }
    return told;
  }

  /// Runs of several checks are often worst at one piece, so the last is kept.
  [[nodiscard]] const std::vector<Finding>& measured_at(const Origin& origin) {
    if (!as_measured_.has_value() || measured_origin_.leg != origin.leg) {
      as_measured_.emplace(judges_.as_measured, trail_.legs[origin.leg], hours_[origin.leg]);
      measured_.clear();
    }
    if (measured_.empty() || measured_origin_.footfall != origin.footfall) {
      measured_ = as_measured_->at(origin.footfall);
    }
    measured_origin_ = origin;
    return measured_;
  }

  void keep_tightest() {
    std::vector<AuditedPlace> places;
    places.reserve(open_.size());
    for (const Run& run : open_) {
      places.push_back(run.told);
      places.back().place =
          judges_.judge.scene().network.trails[trail_.which.trail].line.at(places.back().at);
    }
    for (AuditedPlace& place : tightest_of(std::move(places))) {
      const auto open =
          std::ranges::find_if(open_, [&](const Run& run) { return run.told.span == place.span; });
      audit_.tightest.push_back(placed(std::move(place), open->worst_piece.number));
    }
  }

  const MeasuredTrail& trail_;
  const AuditJudges& judges_;
  units::Instant when_;
  TrailAudit audit_;
  ExceedanceRuns runs_;
  std::vector<Origin> origins_;
  std::vector<Run> open_;
  std::optional<PieceFindings> as_measured_;
  Origin measured_origin_;
  std::vector<Finding> measured_;
  std::vector<std::vector<units::Instant>> hours_;  ///< of each leg walked
  std::array<bool, passage::kCheckCount> told_{};   ///< checks that exceed on the present leg
};

}  // namespace

TrailAudit audit_trail(const MeasuredTrail& trail, const AuditJudges& judges, units::Instant when) {
  return TrailWalk{trail, judges, when}.walk();
}

}  // namespace rimehaul::audit
