// Reads the trials of a grip entry: what was pulled, stopped and held on the site's own snow.
#pragma once

#include "ports/toml/table_reader.h"
#include "snow/grip.h"

namespace rimehaul::ports::toml {

/// Fills in what the entry's trials come to and adds how to its source. Complains of a trial too
/// short to say anything, one that comes to no possible number, and a number said twice.
void read_trials(TableReader& in, snow::MeasuredGrip& entry);

}  // namespace rimehaul::ports::toml
