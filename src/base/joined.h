// Many texts run on as one.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace rimehaul::base {

/// "a, b, c" with ", " between.
[[nodiscard]] std::string joined(const std::vector<std::string>& parts, std::string_view between);

}  // namespace rimehaul::base
