// The route card as canonical JSON: what is digested, compared and read by other programs.
#pragma once

#include <string>

#include "card/route_card.h"
#include "ports/json/object.h"

namespace rimehaul::ports::json {

/// The card's canonical JSON: UTF-8, keys sorted by byte, no white space, numbers in a short form
/// that reads back the same. The same card gives the same bytes.
[[nodiscard]] std::string canonical_json(const card::RouteCard& card);

/// The card as a part of a larger answer.
[[nodiscard]] Object card_json(const card::RouteCard& card);

}  // namespace rimehaul::ports::json
