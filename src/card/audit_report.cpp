#include "card/audit_report.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <set>
#include <utility>

#include "card/figures.h"

namespace rimehaul::card {

using audit::Band;
using audit::GradedPiece;
using units::Metres;

namespace {

/// How bad a case is: metres closed, then how many of them over 100 % or by rule, then by rule.
std::array<Metres, 3> badness_of(const audit::BandLengths& lengths) {
  const Metres by_rule = lengths.of(Band::closed);
  const Metres beyond = by_rule + lengths.of(Band::over_whole);
  return {beyond + lengths.of(Band::to_whole), beyond, by_rule};
}

/// Whether the first is the worse: the higher band, then the larger share.
bool worse(const GradedPiece& lhs, const GradedPiece& rhs) {
  if (lhs.band != rhs.band) {
    return lhs.band > rhs.band;
  }
  return lhs.share.value_or(0.0) > rhs.share.value_or(0.0);
}

/// Of the pieces that hold a place, the one that comes out worst; null where none does.
const GradedPiece* worst_at(const std::vector<const GradedPiece*>& pieces, Metres at) {
  const GradedPiece* worst = nullptr;
  for (const GradedPiece* piece : pieces) {
    const bool holds = piece->span.from <= at && at <= piece->span.to;
    if (holds && (worst == nullptr || worse(*piece, *worst))) {
      worst = piece;
    }
  }
  return worst;
}

/// Whether a piece would be drawn as the stretch before it is: so dashes and ticks run on.
bool looks_as(const MapStretch& before, const GradedPiece& piece) {
  constexpr double kHardlySeen = 0.05;
  const double apart = std::abs(before.share.value_or(0.0) - piece.share.value_or(0.0));
  return before.band == piece.band && (piece.band >= Band::to_whole || apart < kHardlySeen);
}

/// The pieces of one trail, of both its ways.
std::vector<const GradedPiece*> pieces_of(const std::vector<audit::TrailAudit>& audits,
                                          std::size_t trail) {
  std::vector<const GradedPiece*> pieces;
  for (const audit::TrailAudit& one : audits) {
    if (one.which.trail == trail) {
      std::ranges::transform(one.pieces, std::back_inserter(pieces),
                             [](const GradedPiece& piece) { return &piece; });
    }
  }
  return pieces;
}

/// Where pieces start and end, in order. The ways cut a trail at the same places but for rounding.
std::vector<Metres> cuts_of(const std::vector<const GradedPiece*>& pieces) {
  constexpr Metres kSame{1e-3};
  std::set<Metres> cuts;
  for (const GradedPiece* piece : pieces) {
    for (const Metres at : {piece->span.from, piece->span.to}) {
      const auto near = cuts.lower_bound(at - kSame);
      if (near == cuts.end() || *near > at + kSame) {
        cuts.insert(at);
      }
    }
  }
  return {cuts.begin(), cuts.end()};
}

/// A trail cut wherever a piece of either way ends, each part as the worse way comes out.
std::vector<MapStretch> stretches_of(const std::vector<audit::TrailAudit>& audits,
                                     std::size_t trail) {
  const std::vector<const GradedPiece*> pieces = pieces_of(audits, trail);
  const std::vector<Metres> cuts = cuts_of(pieces);
  std::vector<MapStretch> stretches;
  for (std::size_t i = 1; i < cuts.size(); ++i) {
    const geo::Span span{cuts[i - 1], cuts[i]};
    const GradedPiece* worst = worst_at(pieces, span.from + (span.to - span.from) / 2);
    if (worst == nullptr) {
      continue;
    }
    if (!stretches.empty() && looks_as(stretches.back(), *worst)) {
      MapStretch& before = stretches.back();
      before.span.to = span.to;
      before.share = std::max(before.share, worst->share);
    } else {
      stretches.push_back({trail, span, worst->band, worst->share});
    }
  }
  return stretches;
}

AuditMap shares_of(const AuditedTrails& found, std::size_t trail_count) {
  AuditMap map{.audited_case = found.audited_case, .stretches = {}};
  for (std::size_t trail = 0; trail < trail_count; ++trail) {
    std::ranges::move(stretches_of(found.audits, trail), std::back_inserter(map.stretches));
  }
  return map;
}

void add_rows(const AuditedTrails& found, AuditReport& report) {
  AuditedCase& told = report.cases.at(found.audited_case);
  for (const audit::TrailAudit& trail : found.audits) {
    told.lengths.add(trail.lengths);
    told.exceedances += trail.exceedances.size();
    for (const audit::AuditedPlace& place : trail.exceedances) {
      report.exceedances.push_back({found.audited_case, place});
    }
    for (const audit::AuditedPlace& place : trail.tightest) {
      report.tightest.push_back({found.audited_case, place});
    }
  }
}

/// As audit::tightest_of, over all cases.
void keep_tightest(std::vector<AuditRow>& rows) {
  std::ranges::stable_sort(rows, [](const AuditRow& one, const AuditRow& other) {
    return audit::tighter(one.place, other.place);
  });
  std::vector<AuditRow> kept;
  for (AuditRow& row : rows) {
    const bool told = std::ranges::any_of(kept, [&](const AuditRow& other) {
      return audit::near_each_other(row.place, other.place);
    });
    if (!told && kept.size() < audit::kTightestShown) {
      kept.push_back(std::move(row));
    }
  }
  rows = std::move(kept);
}

}  // namespace

void add_cases(const std::vector<AuditedTrails>& found, AuditReport& report) {
  const AuditedTrails* worst = nullptr;
  for (const AuditedTrails& one : found) {
    add_rows(one, report);
    const auto badness = [&](const AuditedTrails& trails) {
      return badness_of(report.cases.at(trails.audited_case).lengths);
    };
    if (worst == nullptr || badness(one) > badness(*worst)) {
      worst = &one;
    }
  }
  if (worst != nullptr) {
    report.maps.push_back(shares_of(*worst, report.trails.size()));
  }
  keep_tightest(report.tightest);
}

std::vector<MapWay> ways_of(const AuditMap& map, const AuditReport& report) {
  std::vector<MapWay> ways;
  ways.reserve(map.stretches.size());
  for (const MapStretch& stretch : map.stretches) {
    const geo::Polyline part = report.trails.at(stretch.trail).line.part(stretch.span);
    const auto points = part.points();
    ways.push_back({.points = {points.begin(), points.end()},
                    .name = {},
                    .verdict = {},
                    .share = stretch.share,
                    .band = stretch.band});
  }
  return ways;
}

}  // namespace rimehaul::card
