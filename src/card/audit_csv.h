// The slope audit's exceedances as a table for a spreadsheet: one row each, units in column names.
#pragma once

#include <string>

#include "card/audit_report.h"

namespace rimehaul::card {

/// Demands and shares are rounded up in their last digit, capacities and the allowed share down. A
/// cell is empty where there is no such number.
[[nodiscard]] std::string audit_csv(const AuditReport& report);

}  // namespace rimehaul::card
