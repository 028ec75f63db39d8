// A round of errands as JSON.
#pragma once

#include <string>

#include "card/round_report.h"

namespace rimehaul::ports::json {

/// Canonical. {"kind":"round"} with its calls and the card of every trip, or {"kind":"no_round"}
/// with the calls that it gets to and why it goes no farther.
[[nodiscard]] std::string round_json(const card::RoundReport& report);

}  // namespace rimehaul::ports::json
