// The snow of a day at one place as JSON.
#pragma once

#include <string>

#include "card/snow_day.h"

namespace rimehaul::ports::json {

/// Canonical, as canonical_json of a card is.
[[nodiscard]] std::string snow_day_json(const card::SnowDay& day);
[[nodiscard]] std::string snow_record_json(const card::SnowRecord& record);

}  // namespace rimehaul::ports::json
