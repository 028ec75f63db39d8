// The day board of many rigs as canonical JSON, and what a signed one says when it is read again.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "card/day_table.h"

namespace rimehaul::ports::json {

[[nodiscard]] std::string day_table_json(const card::DayTable& table);

/// A route on a signed board, as far as a card asks for it.
struct SignedRoute {
  std::string name;
  std::string closed_by_hand;  ///< empty: not
  std::string permitted;       ///< empty: nobody took the decision that it waits for
  passage::Verdict as_reported = passage::Verdict::closed;
  std::string reason;  ///< of that verdict
};

/// Its routes; nothing when the text is not what day_table_json writes.
[[nodiscard]] std::optional<std::vector<SignedRoute>> signed_routes(std::string_view board);

}  // namespace rimehaul::ports::json
