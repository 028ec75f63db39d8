// Text that stays on its line: no letter in it steers a terminal, breaks a line or turns the
// direction of writing.
#pragma once

#include <string>
#include <string_view>

namespace rimehaul::base {

/// Whether UTF-8 text holds a control character (U+0000 to U+001F, U+007F to U+009F), a separator
/// of lines (U+2028, U+2029) or a mark that turns the direction of writing (U+202A to U+202E,
/// U+2066 to U+2069).
[[nodiscard]] bool has_controls(std::string_view text);

/// Text for people, as every file that people write may hold it: 1 to 200 bytes without controls,
/// and not blanks alone.
[[nodiscard]] bool is_one_line(std::string_view text);

/// The same text with each of them as a blank.
[[nodiscard]] std::string one_line(std::string_view text);

}  // namespace rimehaul::base
