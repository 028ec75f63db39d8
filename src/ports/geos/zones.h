// The outlines of zones, checked and where it is safe mended.
#pragma once

#include <vector>

#include "base/fault.h"
#include "trails/features.h"

namespace rimehaul::ports::geos {

/// Zones whose outlines are valid. One that is not is mended and doubted, and may fall into several
/// of its name; a forbidden one, or one of which no area is left, is refused: nobody may guess
/// where a forbidden zone ends.
[[nodiscard]] base::Reading<std::vector<trails::Zone>> valid_zones(
    const std::vector<trails::Zone>& zones);

}  // namespace rimehaul::ports::geos
