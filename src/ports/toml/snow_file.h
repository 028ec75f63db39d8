// snow.toml: what an observer found this morning.
#pragma once

#include "base/fault.h"
#include "ports/toml/text_file.h"
#include "snow/snow.h"

namespace rimehaul::ports::toml {

/// Reads a snow report. With any fault it has no bands, so that it speaks of no place: a band that
/// cannot be read might be the worst one. Throws BadInput only when the file cannot be read, is no
/// TOML or of a newer schema.
[[nodiscard]] base::Reading<snow::SnowReport> read_snow_report(const TextFile& file);

}  // namespace rimehaul::ports::toml
