// What may stand at the end of a half-typed command line: answered by the parser's own options, and
// for names by the site.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "app/command_line.h"

namespace rimehaul::app {

struct Completion {
  enum class Kind { words, files, folders };
  Kind kind = Kind::words;
  std::vector<std::string> words;  ///< those that begin with what is typed; none for files, folders
};

/// `typed`: the line from the program's name to the cursor. Never throws: what cannot be known is
/// not offered.
[[nodiscard]] Completion complete(const CommandLine& line, std::string_view typed);

/// For the shell's function: the kind on the first line, then a word on each. `last` is the part of
/// the word at the cursor that the shell will replace, where it breaks words at other letters too.
struct AtCursor {
  std::string_view typed;
  std::string_view last;
};
[[nodiscard]] std::string completion_text(const CommandLine& line, AtCursor at);

}  // namespace rimehaul::app
