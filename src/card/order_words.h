// Orders of named persons in one line each.
#pragma once

#include <string>

#include "day/orders_given.h"
#include "units/local_clock.h"

namespace rimehaul::card {

/// "order 3: Noon Run is closed, by P. Example (planner), 2026-02-01 08:00, until 2026-02-01 18:00:
/// wet slides seen"
[[nodiscard]] std::string order_words(const day::Override& order,
                                      const units::LocalClock& local_clock);

/// What it says alone: "Noon Run is closed"
[[nodiscard]] std::string order_alone(const day::Override& order);

}  // namespace rimehaul::card
