// The verb `explain`: every check at one place of a trail.
#pragma once

#include "app/options.h"

namespace rimehaul::app {

/// `yes` whenever the place could be explained, whatever the verdict there.
[[nodiscard]] Status explain(const ExplainOptions& options, const Outside& outside);

}  // namespace rimehaul::app
