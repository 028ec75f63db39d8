#include "audit/exceedance_runs.h"

#include <algorithm>
#include <utility>

namespace rimehaul::audit {

void ExceedanceRuns::offer(const PieceOfTrail& piece, const passage::Finding& finding,
                           passage::Stand stand) {
  Kind kind{finding.check, stand, finding.missing + finding.refused};
  const auto known = last_.find(kind);
  const bool goes_on = known != last_.end() && known->second.piece + 1 >= piece.number;
  if (!goes_on) {
    last_.insert_or_assign(std::move(kind), Last{runs_.size(), piece.number});
    runs_.push_back({piece,
                     {.trail = trail_,
                      .way = way_,
                      .on = On::trail,
                      .span = piece.span,
                      .at = {},
                      .place = {},
                      .finding = finding,
                      .stand = stand,
                      .found_share = {}}});
    return;
  }
  known->second.piece = piece.number;
  Run& run = runs_[known->second.run];
  run.told.span = {std::min(run.told.span.from, piece.span.from),
                   std::max(run.told.span.to, piece.span.to)};
  // A later piece binds only by what it finds, not by its place.
  passage::Finding here = finding;
  here.at = run.told.finding.at;
  if (passage::binds_before(here, run.told.finding)) {
    run.told.finding = finding;
    run.worst_piece = piece;
  }
}

}  // namespace rimehaul::audit
