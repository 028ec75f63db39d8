// The verb `board`: what is open today between which stations.
#pragma once

#include "app/options.h"

namespace rimehaul::app {

/// The board itself is the answer, so it ends with `yes` whatever is closed.
[[nodiscard]] Status board(const BoardOptions& options, const Outside& outside);

}  // namespace rimehaul::app
