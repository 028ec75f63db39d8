// Puts moments at which the snow may turn in order.
#pragma once

#include <vector>

#include "units/clock.h"

namespace rimehaul::snow {

/// Those of the moments that are later than the period's first and not later than its last, in
/// order, each once.
[[nodiscard]] std::vector<units::Instant> in_order_within(std::vector<units::Instant> moments,
                                                          units::Period during);

}  // namespace rimehaul::snow
