// The day board's snows, judged on as many cores as there are.
#pragma once

#include <span>

#include "day/day_board.h"

namespace rimehaul::app {

/// As day::board_of answers, to the last digit. Throws what it throws. Several workers at once tell
/// the question's watcher.
[[nodiscard]] day::DayBoard board_on_cores(std::span<const day::BoardSnow> columns,
                                           const day::BoardQuestion& question);

}  // namespace rimehaul::app
