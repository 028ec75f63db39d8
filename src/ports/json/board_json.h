// The day board as canonical JSON.
#pragma once

#include <string>

#include "card/board_report.h"
#include "ports/json/object.h"

namespace rimehaul::ports::json {

/// What one cell of any board comes to.
[[nodiscard]] Object board_cell_json(const card::BoardRow& row);

[[nodiscard]] std::string board_json(const card::BoardReport& report);

}  // namespace rimehaul::ports::json
