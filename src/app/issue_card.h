// The verb `card`: the driver's card of a named route, from the board that was signed.
#pragma once

#include "app/options.h"

namespace rimehaul::app {

/// Issues the card and keeps it, or says in one line why the board does not allow it
/// (`honest_no`).
[[nodiscard]] Status issue_card(const CardOptions& options, const Outside& outside);

}  // namespace rimehaul::app
