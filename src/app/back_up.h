// The verb `backup`: a verified copy of what is kept.
#pragma once

#include "app/options.h"
#include "app/outside.h"

namespace rimehaul::app {

[[nodiscard]] Status back_up(const BackupOptions& options, const Outside& outside);

}  // namespace rimehaul::app
