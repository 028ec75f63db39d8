// routes.toml: the routes that a site keeps under names.
#pragma once

#include <vector>

#include "base/fault.h"
#include "day/named_route.h"
#include "ports/toml/text_file.h"

namespace rimehaul::ports::toml {

/// Reads the routes; one with a fault is left out. Whether its stations and its rig are there is
/// for others to see. Throws BadInput only when the file cannot be read, is no TOML or of a newer
/// schema.
[[nodiscard]] base::Reading<std::vector<day::NamedRoute>> read_routes(const TextFile& file);

}  // namespace rimehaul::ports::toml
