// Reads the forecast in a snow report.
#pragma once

#include "ports/toml/table_reader.h"
#include "snow/snow.h"

namespace rimehaul::ports::toml {

/// `[forecast]` with its hours, of a report whose moments are read already; nothing when there is
/// none. Its hours follow each other without a gap, and one of them holds the observation.
[[nodiscard]] std::optional<snow::Forecast> read_forecast(TableReader& top,
                                                          const snow::SnowReport& report);

}  // namespace rimehaul::ports::toml
