// The words for wetness, surface and levels in our files.
#pragma once

#include <array>

#include "ports/toml/table_reader.h"
#include "snow/snow.h"

namespace rimehaul::ports::toml {

/// "dry", "moist", "wet", "very_wet", "slush".
[[nodiscard]] std::array<Word<snow::Wetness>, snow::kWetnessCount> wetness_words();
/// "groomed", "fresh", "refrozen", "ice".
[[nodiscard]] std::array<Word<snow::Surface>, snow::kSurfaceCount> surface_words();

/// `wetness` and `surface` of a table; nothing when one is missing or wrong.
[[nodiscard]] std::optional<snow::SnowState> read_snow_state(TableReader& in);

}  // namespace rimehaul::ports::toml
