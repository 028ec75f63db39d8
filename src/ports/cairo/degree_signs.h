// Angles and temperatures as they are printed.
#pragma once

#include <string>

namespace rimehaul::ports::cairo {

/// "7.2\u00b0" for "7.2 deg" and "-5 \u00b0C" for "-5 deg C"; behind anything but a digit nothing
/// is changed.
[[nodiscard]] std::string with_degree_signs(std::string text);

}  // namespace rimehaul::ports::cairo
