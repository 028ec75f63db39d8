// A site's own grip: the [[grip]] tables of rules.toml.
#pragma once

#include <vector>

#include "ports/toml/table_reader.h"
#include "snow/grip.h"

namespace rimehaul::ports::toml {

/// All entries without a fault. Two for one state, and a wetter one that grips more than a drier
/// one of its surface, are faults.
[[nodiscard]] std::vector<snow::MeasuredGrip> read_grip(TableReader& top);

}  // namespace rimehaul::ports::toml
