// Angles measured by hand beside the heights as JSON.
#pragma once

#include <string>

#include "card/field_check_report.h"

namespace rimehaul::ports::json {

/// Canonical, as canonical_json of a card is.
[[nodiscard]] std::string field_checks_json(const card::FieldCheckReport& report);

}  // namespace rimehaul::ports::json
