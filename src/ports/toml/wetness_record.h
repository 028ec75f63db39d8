// A site's own record: reports of past days, and what was seen later on each.
#pragma once

#include <vector>

#include "base/fault.h"
#include "ports/toml/text_file.h"
#include "snow/calibration.h"

namespace rimehaul::ports::toml {

/// Reads a record and the reports that it names, which lie in its folder or under it. Throws
/// BadInput when the record or a report cannot be read at all.
[[nodiscard]] base::Reading<std::vector<snow::SeenDay>> read_wetness_record(const TextFile& file);

}  // namespace rimehaul::ports::toml
