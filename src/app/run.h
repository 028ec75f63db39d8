// One command from its arguments to its exit status.
#pragma once

#include <string>
#include <vector>

#include "app/outside.h"
#include "app/status.h"

namespace rimehaul::app {

/// Runs one command; `arguments` without the program's name. Every failure has been told on
/// `outside.err`, one line each, when this returns; nothing is thrown.
[[nodiscard]] Status run(const std::vector<std::string>& arguments, const Outside& outside);

}  // namespace rimehaul::app
