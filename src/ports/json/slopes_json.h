// The rasters of slopes that were written, as canonical JSON.
#pragma once

#include <string>

#include "card/slopes_report.h"

namespace rimehaul::ports::json {

[[nodiscard]] std::string slopes_json(const card::SlopesReport& report);

}  // namespace rimehaul::ports::json
