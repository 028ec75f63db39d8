// Reads the rules about people, weather, grooming and help from rules.toml.
#pragma once

#include "passage/rules.h"
#include "ports/toml/table_reader.h"

namespace rimehaul::ports::toml {

/// Lays what the top table says of wind, rain, grooming, single lanes, creek bridges, passengers,
/// driving alone, straps, calls and towing out over the rules given.
void read_day_rules(TableReader& top, passage::Rules& rules);

}  // namespace rimehaul::ports::toml
