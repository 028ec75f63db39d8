// Colour for verdicts on a terminal. The words say all; colour only helps to find them.
#pragma once

#include <string>

namespace rimehaul::app {

/// Whether what is printed to a file descriptor may be coloured: on a terminal that is not "dumb",
/// and where NO_COLOR is not set to anything.
[[nodiscard]] bool takes_colour(int descriptor);

/// Text with its verdicts coloured: those words that stand apart, at the start of a line, after a
/// colon or in a column, not those within a sentence. Nothing else changes.
[[nodiscard]] std::string coloured(const std::string& text);

}  // namespace rimehaul::app
