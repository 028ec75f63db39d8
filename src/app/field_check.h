// The verb `field-check`: angles measured by hand, kept and held against the heights.
#pragma once

#include "app/options.h"

namespace rimehaul::app {

/// Keeps a check where one is given, and tells those kept where none is; `yes` whatever they come
/// to. `honest_no` where none is kept.
[[nodiscard]] Status field_check(const FieldCheckOptions& options, const Outside& outside);

}  // namespace rimehaul::app
