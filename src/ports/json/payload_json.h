// The loads that a way takes as canonical JSON.
#pragma once

#include <string>

#include "card/payload_report.h"

namespace rimehaul::ports::json {

[[nodiscard]] std::string payload_json(const card::PayloadReport& report);

}  // namespace rimehaul::ports::json
