// The verb `payload`: how much may be loaded for a way.
#pragma once

#include "app/options.h"

namespace rimehaul::app {

/// `yes` when some load is open on the way; `honest_no` when none is, or there is no way.
[[nodiscard]] Status payload(const PayloadOptions& options, const Outside& outside);

}  // namespace rimehaul::app
