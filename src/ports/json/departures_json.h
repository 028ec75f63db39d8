// Windows of departure as JSON.
#pragma once

#include "day/departure_hours.h"
#include "ports/json/object.h"

namespace rimehaul::ports::json {

/// {"from_utc":...,"to_utc":...,"late_s":900.0,"windows":[{"from_utc":...,"to_utc":...}]}, and
/// "back" and "turn_round_s" where there is a way back. Both ends are in a window.
[[nodiscard]] Object departures_json(const day::Departures& departures);

}  // namespace rimehaul::ports::json
