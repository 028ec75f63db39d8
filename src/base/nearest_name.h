// Finds the name a person most likely meant, for "did you mean" lines.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace rimehaul::base {

/// The known name with the fewest single-letter changes from `typed` (Levenshtein 1966), or nothing
/// when the best needs more changes than a third of its length, rounded up. Ties: the first known.
[[nodiscard]] std::optional<std::string> nearest_name(std::string_view typed,
                                                      std::span<const std::string> known);

}  // namespace rimehaul::base
