// rigs.toml: carriers, trailers and the rigs that are made of them.
#pragma once

#include <vector>

#include "base/fault.h"
#include "ports/toml/text_file.h"
#include "rig/rig.h"

namespace rimehaul::ports::toml {

/// Reads carriers, trailers and rigs. A rig whose sheet has a fault is left out; a rating with one
/// counts as not given. The load of each rig is empty with a full tank until a command says
/// otherwise. Throws BadInput only when the file cannot be read, is no TOML or of a newer schema.
[[nodiscard]] base::Reading<std::vector<rig::Rig>> read_rigs(const TextFile& file);

}  // namespace rimehaul::ports::toml
