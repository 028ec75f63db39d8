// The rig sheet as canonical JSON.
#pragma once

#include <string>

#include "card/rig_sheet.h"

namespace rimehaul::ports::json {

[[nodiscard]] std::string rig_sheet_json(const card::RigSheet& sheet);

}  // namespace rimehaul::ports::json
