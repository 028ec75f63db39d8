// Names within an SVG that do not depend on what else was drawn before it.
#pragma once

#include <string>

namespace rimehaul::ports::cairo {

/// The drawing library numbers the parts of an SVG through the life of the program. The same SVG
/// with each kind of part numbered from 0 in the order of its first mention.
[[nodiscard]] std::string with_own_numbers(const std::string& svg);

}  // namespace rimehaul::ports::cairo
