// The snow where a question's way would set out.
#pragma once

#include <optional>

#include "passage/scene.h"
#include "search/route.h"

namespace rimehaul::search {

/// At the first station at the departure; nothing where heights or snow are unknown. The aspect is
/// not asked for: what was observed for one aspect alone does not count.
[[nodiscard]] std::optional<snow::SnowState> snow_at_start(const passage::Scene& scene,
                                                           const snow::SnowAt& snow,
                                                           const RouteQuestion& question);

}  // namespace rimehaul::search
