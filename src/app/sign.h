// The verb `sign`: a named person stands for the board of the named routes.
#pragma once

#include "app/options.h"

namespace rimehaul::app {

/// Works the board out, has it signed and keeps it with what it was made from.
[[nodiscard]] Status sign(const SignOptions& options, const Outside& outside);

}  // namespace rimehaul::app
