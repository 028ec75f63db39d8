// Text from outside: is it UTF-8, and how is it shown when it is not.
#pragma once

#include <string>
#include <string_view>

namespace rimehaul::ports::gdal {

/// Whether every letter is UTF-8 in its shortest form: no half letters, no surrogates.
[[nodiscard]] bool is_utf8(std::string_view text);

/// One line that any screen or file can show: as base/one_line.h keeps it; in text that is not
/// UTF-8 every byte beyond ASCII is a question mark.
[[nodiscard]] std::string printable(std::string_view text);

/// The same, of at most 200 bytes: what is longer ends in three dots. For names that a file gives.
[[nodiscard]] std::string short_line(std::string_view text);

}  // namespace rimehaul::ports::gdal
