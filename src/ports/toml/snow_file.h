// snow.toml: what an observer found this morning.
#pragma once

#include <string>

#include "base/fault.h"
#include "snow/snow.h"

namespace rimehaul::ports::toml {

/// Reads a snow report. Throws BadInput only when it cannot be read or is no TOML.
[[nodiscard]] base::Reading<snow::SnowReport> read_snow_report(const std::string& path,
                                                               const std::string& shown);

}  // namespace rimehaul::ports::toml
