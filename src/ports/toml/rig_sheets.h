// rigs.toml: carriers, trailers and the rigs that are made of them.
#pragma once

#include <string>
#include <vector>

#include "base/fault.h"
#include "rig/rig.h"

namespace rimehaul::ports::toml {

/// Reads carriers, trailers and rigs. A rig whose sheet has a fault is left out. The load of each
/// rig is empty with a full tank until a command says otherwise. `shown` is the file's name for
/// people.
[[nodiscard]] base::Reading<std::vector<rig::Rig>> read_rigs(const std::string& path,
                                                             const std::string& shown);

}  // namespace rimehaul::ports::toml
