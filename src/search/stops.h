// The junctions that a question's stations stand for.
#pragma once

#include <variant>
#include <vector>

#include "search/route.h"

namespace rimehaul::search {

/// In driving order, or why the question has no answer.
[[nodiscard]] std::variant<std::vector<trails::JunctionId>, NoRoute> stops_of(
    const trails::Network& network, const RouteQuestion& question);

}  // namespace rimehaul::search
