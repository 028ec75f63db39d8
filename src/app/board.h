// The verb `board`: what is open today between which stations.
#pragma once

#include <vector>

#include "app/options.h"
#include "snow/snow.h"

namespace rimehaul::app {

/// Every class on every surface that the options ask for, by surface.
[[nodiscard]] std::vector<snow::SnowState> snows_asked(const BoardOptions& options);

/// The board itself is the answer, so it ends with `yes` whatever is closed.
[[nodiscard]] Status board(const BoardOptions& options, const Outside& outside);

}  // namespace rimehaul::app
