// The day board as canonical JSON.
#pragma once

#include <string>

#include "card/board_report.h"

namespace rimehaul::ports::json {

[[nodiscard]] std::string board_json(const card::BoardReport& report);

}  // namespace rimehaul::ports::json
