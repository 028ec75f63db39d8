// The verb `snow`: the snow of the day at one place, hour by hour.
#pragma once

#include "app/options.h"

namespace rimehaul::app {

/// `yes` whenever the snow there was observed, whatever it comes to. Keeps the report where asked.
[[nodiscard]] Status snow_day(const SnowDayOptions& options, const Outside& outside);

}  // namespace rimehaul::app
