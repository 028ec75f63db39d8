// The grade limits of a rig as canonical JSON.
#pragma once

#include <string>

#include "card/limits_report.h"

namespace rimehaul::ports::json {

[[nodiscard]] std::string limits_json(const card::LimitsReport& report);

}  // namespace rimehaul::ports::json
