// Reads what a snow report says of marks, grooming and the tow-out rig.
#pragma once

#include "ports/toml/table_reader.h"
#include "snow/site_status.h"

namespace rimehaul::ports::toml {

/// `[[status]]`, `[[groomed]]`, `last_weather` and `tow_out_ready` of the top table of a report
/// that was written when it was `observed`.
[[nodiscard]] snow::SiteStatus read_site_status(TableReader& top,
                                                std::optional<units::Instant> observed);

}  // namespace rimehaul::ports::toml
