// people.toml: who is planner, officer or driver at the site.
#pragma once

#include <vector>

#include "base/fault.h"
#include "day/people.h"
#include "ports/toml/text_file.h"

namespace rimehaul::ports::toml {

/// Reads the list; with any fault it is empty, so that nobody decides. Throws BadInput only when
/// the file cannot be read, is no TOML or of a newer schema.
[[nodiscard]] base::Reading<std::vector<day::Person>> read_people(const TextFile& file);

}  // namespace rimehaul::ports::toml
