// A command line as a shell takes it apart.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace rimehaul::app {

/// The words of a line, quotes and backslashes resolved (POSIX.1-2017, XCU 2.2). The last one is
/// the word that the end of the line stands in, empty after a blank.
[[nodiscard]] std::vector<std::string> words_of_line(std::string_view line);

/// The line as it stands, cut where it may be broken: an option and its value stay together, as do
/// the words before the first option.
[[nodiscard]] std::vector<std::string> pieces_of_line(std::string_view line);

}  // namespace rimehaul::app
