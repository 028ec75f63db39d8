// What is wrong with a command line, in one line that names what was probably meant.
#pragma once

#include <string>

#include "app/command_line.h"

namespace CLI {
class ParseError;
}  // namespace CLI

namespace rimehaul::app {

/// What to say of a command line that could not be parsed. The state of the parser tells more than
/// its error does: what it did not know, and all that it still needs.
[[nodiscard]] std::string usage_fault(CommandLine& line, const CLI::ParseError& error);

}  // namespace rimehaul::app
