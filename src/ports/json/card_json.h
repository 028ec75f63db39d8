// JSON of the project's plain data: canonical (keys sorted, no white space), units in the keys.
#pragma once

#include <string>

#include "card/route_card.h"

namespace rimehaul::ports::json {

/// The card's canonical JSON: UTF-8, keys sorted by byte, no white space, numbers in the shortest
/// form that reads back the same. The same card gives the same bytes.
[[nodiscard]] std::string canonical_json(const card::RouteCard& card);

}  // namespace rimehaul::ports::json
