// The verb `audit`: every metre of every trail against every limit.
#pragma once

#include "app/options.h"

namespace rimehaul::app {

/// `yes` when nothing exceeds, `honest_no` with what does.
[[nodiscard]] Status audit_site(const AuditOptions& options, const Outside& outside);

}  // namespace rimehaul::app
