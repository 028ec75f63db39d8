#include "card/snow_runs.h"

namespace rimehaul::card {

std::vector<SnowRun> snow_runs_of(const passage::LegJudgement& leg) {
  std::vector<SnowRun> runs;
  for (const passage::PieceDrive& piece : leg.pieces) {
    if (runs.empty() || runs.back().states != piece.snow) {
      runs.push_back({piece.span, piece.snow});
    }
    runs.back().span.to = piece.span.to;
  }
  return runs;
}

}  // namespace rimehaul::card
