// Where along a leg which snow was judged.
#pragma once

#include <vector>

#include "passage/judgement.h"

namespace rimehaul::card {

/// Consecutive pieces of a leg that were judged in the same states of snow.
struct SnowRun {
  geo::Span span;  ///< of the leg
  std::vector<snow::SnowState> states;
};

/// In driving order; a leg of whose ground nothing is known has none.
[[nodiscard]] std::vector<SnowRun> snow_runs_of(const passage::LegJudgement& leg);

}  // namespace rimehaul::card
