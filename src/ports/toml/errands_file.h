// A list of errands: what is to be taken where on one round.
#pragma once

#include "base/fault.h"
#include "day/round.h"
#include "ports/toml/text_file.h"

namespace rimehaul::ports::toml {

/// Reads the round; an errand with a fault is left out. Whether its stations are there is for
/// others to see. Throws BadInput only when the file cannot be read, is no TOML or of a newer
/// schema.
[[nodiscard]] base::Reading<day::Round> read_errands(const TextFile& file);

}  // namespace rimehaul::ports::toml
