// What of TOML is handed to the parser: no text of several lines, and letters beyond ASCII in
// quotes and comments alone.
#pragma once

#include <string_view>

#include "ports/toml/text_file.h"

namespace rimehaul::ports::toml {

/// Throws BadInput with line and column where text is UTF-16, where text of several lines begins,
/// where a quote stands within a word, or where a letter beyond ASCII stands outside of quotes and
/// comments. TOML has no use for one there, and the parser takes some of them (U+00A1 to U+0499 for
/// one) for what its tables never hold.
void expect_plain_toml(std::string_view text, const TextFile& file);

}  // namespace rimehaul::ports::toml
