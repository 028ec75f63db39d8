// Where answers may go: never over a file that the command reads, and each to a place of its own.
#pragma once

namespace CLI {
class App;
}  // namespace CLI

namespace rimehaul::app {

/// As the name of a file to write: standard output, in place of the text.
inline constexpr const char* kOnStandardOutput = "-";

/// Looks at a parsed command before anything is judged or written. Throws WrongUsage where an
/// answer would go over a file of the site, a file given beside it, or another answer.
void expect_free_places(const CLI::App& verb);

}  // namespace rimehaul::app
